import type { ImportSession } from '#geo/file/open-import'
import type { Plan } from '#geo/plan/plan'
import type { Outcome } from '#geo/problem'
import type { DayReport } from '#geo/report/day'
import type { PointCloud, ReportRanges } from '#geo/report/report'
import type { Comparison } from '#geo/seasons/compare'
import type { Projection, ProjectOptions } from '#geo/seasons/project'
import type { YearRecord } from '#geo/seasons/year'
import type { Progress } from '#geo/siting/question'
import type { Suggestion } from '#geo/siting/suggestion'
import type { LngLat } from '#geo/space/plane'
import type { StockOptions, StockResult } from '#geo/stocking/programme'
import type { Prices } from '#geo/stocking/stock'
import type { Advice, AdviceOptions } from '#geo/timing/advice'
import type { CurvePoint, Wish } from '../state/boxes'
import type { Evaluation } from '../state/store'

export type { Evaluation }

/** What the engine's worker answers: plain data in, plain data out. */
export type EngineApi = {
  /** Coverage of a season with what holds plantings back; the season stays laid out for `moveStation`. */
  evaluate(plan: Plan, year: number): Outcome<Evaluation>
  /**
   * The season last evaluated, with one station elsewhere; limits are null, for they take several times as long.
   * null where no season is laid out or it does not use the station.
   */
  moveStation(id: string, at: LngLat): Evaluation | null
  /**
   * Who works where on one day of the season last evaluated, its stations where they were last moved to; null where none
   * is laid out. It goes without the plan: days are asked for many times a second.
   */
  day(day: number): DayReport | null
  cloud(plan: Plan, year: number): PointCloud
  /** null where the plan has no report. */
  ranges(plan: Plan, year: number): ReportRanges | null
  /** As `evaluate`, without limits: for a plan that is only tried out. */
  tryPlan(plan: Plan, year: number): Outcome<Evaluation>
  /** The best release dates of one to three batches, for the orchard or one station. */
  releaseAdvice(plan: Plan, year: number, options: AdviceOptions): Outcome<Advice>
  /** Fewest cocoons at the stations there are. */
  stock(plan: Plan, year: number, options: StockOptions): Outcome<StockResult>
  /** One season beside another, and why coverage changed. */
  compare(plan: Plan, from: number, to: number): Outcome<Comparison>
  /** The seasons to come. */
  project(plan: Plan, year: number, seasons: number, options: ProjectOptions): Outcome<Projection>
  /** What a season's counts say beside what was planned. */
  yearRecord(plan: Plan, year: number, options: { readonly prices?: Prices }): Outcome<YearRecord>
  /** Coverage by number of new stations with the same stock; `onPoint` is told each point as it is known. */
  curve(
    plan: Plan,
    year: number,
    wish: Wish,
    asked: { readonly most: number; readonly cocoons: number },
    onPoint: (point: CurvePoint) => void,
  ): Outcome<readonly CurvePoint[]>
  /**
   * Where stations might go. `onProgress` is told while it works, now and then with the best answer so far. With `proof` a general solver is asked to prove the
   * answer, for so many seconds at most.
   */
  suggest(
    plan: Plan,
    year: number,
    wish: Wish,
    proof: { readonly timeLimit: number } | null,
    onProgress: (progress: Progress, best: Suggestion | null) => void,
  ): Outcome<Suggestion> | Promise<Outcome<Suggestion>>
  /** Coverage of the orchard as it would be on typical days; null where there is none. */
  typicalCoverage(plan: Plan, year: number): number | null
  /** A file of another program: what it holds stays in the worker, and the page is told of it. */
  openImport: ImportSession['open']
  rewriteImport: ImportSession['rewrite']
  readImportTable: ImportSession['readTable']
  importShapes: ImportSession['shapes']
  importThings: ImportSession['things']
}

/** The same as seen from the page. */
export type AsyncEngineApi = {
  readonly [K in keyof EngineApi]: (...input: Parameters<EngineApi[K]>) => Promise<Awaited<ReturnType<EngineApi[K]>>>
}

/** One worker as the engine sees it. */
export type EnginePort = {
  readonly api: AsyncEngineApi
  /** Ends the worker, with whatever it was doing; calls under way are never answered. */
  terminate(): void
}

/** Starts a worker; `onFailure` is told, in a few words, when it could not start or died. */
export type MakePort = (onFailure: (reason: string) => void) => EnginePort
