import { subscribeWithSelector } from 'zustand/middleware'
import type { StoreApi } from 'zustand/vanilla'
import { createStore } from 'zustand/vanilla'
import type { PackedShapes } from '#geo/file/packed-things'
import type { Plan } from '#geo/plan/plan'
import type { DayReport } from '#geo/report/day'
import type { PointCloud, PointCoverage, Report, ReportRanges } from '#geo/report/report'
import type { LngLat } from '#geo/space/plane'
import { type BoxesState, type CurvePoint, noBoxes, type Stocked, type Suggested } from './boxes'
import type { Found } from './found'
import type { Step } from './history'
import type { Advised, Typical } from './timing'
import { type Compared, noYears, type OtherSeason, type Projected, type YearsState } from './years'

export type Tool =
  | 'select'
  | 'box'
  | 'row'
  | 'rows'
  | 'block'
  | 'plant'
  | 'bed'
  | 'station'
  | 'forage'
  | 'mud'
  | 'keepout'
  | 'boundary'
  | 'hole'
  | 'windbreak'
  | 'tape'

export type Page = 'ground' | 'bloom' | 'coverage' | 'boxes' | 'years'

/** What is being written down on the page Years; null = its overview. */
export type YearTask = 'round' | 'takingIn' | 'opening' | 'lots' | 'shareOut' | 'fruitSet'

/** A result that is computed elsewhere, with the revision of the document that it answers. */
export type Job<T> =
  | { readonly status: 'idle' }
  | { readonly status: 'running'; readonly last: T | null; readonly revision: number }
  | { readonly status: 'ready'; readonly value: T; readonly revision: number }
  | { readonly status: 'failed'; readonly reason: string; readonly last: T | null }

export type Evaluation = { readonly report: Report; readonly coverage: PointCoverage }

export type Ground =
  | { readonly kind: 'grid' }
  | { readonly kind: 'osm' }
  | { readonly kind: 'own'; readonly url: string }

/** Figures of a suggestion; `id` is that of the suggested station or of a planting. */
export type BoxesFigure = 'wouldBe' | 'bound' | 'gain' | 'placeCocoons' | 'placeTubes' | 'cost' | 'sure'

/** Figures of the season's timing; `id` is null, or the crop whose bloom is predicted. */
export type TimingFigure = 'advisedCoverage' | 'typicalCoverage' | 'predictedBloom'

/** Figures of what was found in a season; `id` is null, or a station's. */
export type FoundFigure =
  | 'nested'
  | 'nestedShare'
  | 'cellsPerTube'
  | 'daughterShare'
  | 'lost'
  | 'harvest'
  | 'return'
  | 'stockLeft'
  | 'coverageFound'
  | 'coveredCost'
  | 'advice'
/** Figures over several seasons; `id` is null, or the planting whose change it is. */
export type YearsFigure = 'seasonChange' | 'whyChanged' | 'coverageFoundBeside' | 'ahead'

/** The figure whose working is shown; `id` null = the whole orchard's. */
export type WorkingTopic = {
  readonly figure:
    | 'coverage'
    | 'reach'
    | 'timingMatch'
    | 'wanted'
    | 'supplied'
    | 'shortBy'
    | 'busiestDay'
    | 'limit'
    | 'females'
    | 'cocoons'
    | 'tubes'
    | 'rules'
    | BoxesFigure
    | TimingFigure
    | FoundFigure
    | YearsFigure
  readonly id: string | null
}

export type DocumentState = {
  readonly plan: Plan | null
  /** The plan's id in storage; null where no plan is open. */
  readonly planId: string | null
  /** Grows with every change of the plan and never goes back, not even by undo or by opening another plan. */
  readonly revision: number
  readonly past: readonly Step[]
  readonly future: readonly Step[]
}

/** Shapes that are not in the plan yet, the words that say so, and a number: one more asks the map to show all of them. */
export type Coming = { readonly shapes: PackedShapes; readonly words: string; readonly fit: number }

export type ViewState = {
  /** The season that is looked at. */
  readonly year: number
  /** Day of season whose work the map shows; null = the season as a whole. */
  readonly day: number | null
  readonly selection: readonly string[]
  /** The picture under the map that is being placed; null = none. */
  readonly picture: string | null
  readonly tool: Tool
  readonly page: Page
  readonly yearTask: YearTask | null
  readonly shading: boolean
  readonly reachCircles: boolean
  readonly panelFolded: boolean
  /** The words beside the drawing tools. */
  readonly toolsFolded: boolean
  readonly stripFolded: boolean
  readonly sheet: 'third' | 'half' | 'full'
  readonly theme: 'paper' | 'dark' | 'sun'
  readonly ground: Ground
  readonly working: WorkingTopic | null
  readonly notice: string | null
  /** The middle of the map as it is looked at; null before it was shown. */
  readonly mapMiddle: LngLat | null
  /** The middle of the map is being pointed with: it shows a cross there. */
  readonly isAiming: boolean
  /** Where this device is while it is being looked for, and within what radius, m. */
  readonly device: { readonly at: LngLat; readonly radius: number } | null
  /** What a file would bring, shown over the plan while it is looked through. */
  readonly coming: Coming | null
  /** One more asks the map to show the whole plan. */
  readonly focusRequest: number
}

export type ResultsState = {
  readonly report: Job<Evaluation>
  readonly ranges: Job<ReportRanges>
  readonly cloud: Job<PointCloud>
  /** Who works where on the day that is looked at. */
  readonly day: Job<DayReport>
  /** The answer to the question of the page More boxes. */
  readonly suggestion: Job<Suggested>
  /** The answer where stations stay and only cocoons are asked for. */
  readonly stock: Job<Stocked>
  /** The season as it would be with the suggested stations that are taken, where they are now. */
  readonly trial: Job<Evaluation>
  /** Coverage by number of stations; while it runs, `last` holds what is there so far. */
  readonly curve: Job<readonly CurvePoint[]>
  /** The season as it would be on typical days, where it holds weather. */
  readonly typical: Job<Typical>
  /** Release dates as advised. */
  readonly advice: Job<Advised>
  /** The season as it was found, beside as it was planned. */
  readonly found: Job<Found>
  /** One season beside another, and why coverage changed. */
  readonly comparison: Job<Compared>
  /** The season that is held against the one looked at, point by point. */
  readonly otherSeason: Job<OtherSeason>
  readonly projection: Job<Projected>
}

export type SavingState = {
  readonly status: 'idle' | 'saving' | 'saved' | 'failed'
  /** Local time of day, HH:MM, of the last saving that succeeded. */
  readonly at: string | null
  /** Why it failed, in words; empty otherwise. */
  readonly reason: string
}

export type PlannerState = {
  readonly document: DocumentState
  readonly view: ViewState
  readonly results: ResultsState
  readonly boxes: BoxesState
  readonly years: YearsState
  readonly saving: SavingState
}

type Subscribe = {
  (listener: (state: PlannerState, before: PlannerState) => void): () => void
  /** Tells only of changes of what `selector` gives. */
  <T>(
    selector: (state: PlannerState) => T,
    listener: (value: T, before: T) => void,
    options?: { readonly equalityFn?: (a: T, b: T) => boolean; readonly fireImmediately?: boolean },
  ): () => void
}

export type PlannerStore = Omit<StoreApi<PlannerState>, 'subscribe'> & { readonly subscribe: Subscribe }

/** A store without a plan. `year` is the season shown before any plan was opened. */
export function createPlannerStore(year = new Date().getFullYear()): PlannerStore {
  return createStore<PlannerState>()(subscribeWithSelector(() => initialState(year)))
}

export const idleResults: ResultsState = {
  report: { status: 'idle' },
  ranges: { status: 'idle' },
  cloud: { status: 'idle' },
  day: { status: 'idle' },
  suggestion: { status: 'idle' },
  stock: { status: 'idle' },
  trial: { status: 'idle' },
  curve: { status: 'idle' },
  typical: { status: 'idle' },
  advice: { status: 'idle' },
  found: { status: 'idle' },
  comparison: { status: 'idle' },
  otherSeason: { status: 'idle' },
  projection: { status: 'idle' },
}

function initialState(year: number): PlannerState {
  return {
    document: { plan: null, planId: null, revision: 0, past: [], future: [] },
    view: {
      year,
      day: null,
      selection: [],
      picture: null,
      tool: 'select',
      page: 'ground',
      yearTask: null,
      shading: true,
      reachCircles: false,
      panelFolded: false,
      toolsFolded: false,
      stripFolded: false,
      sheet: 'half',
      theme: 'paper',
      ground: { kind: 'grid' },
      working: null,
      notice: null,
      mapMiddle: null,
      isAiming: false,
      device: null,
      coming: null,
      focusRequest: 0,
    },
    results: idleResults,
    boxes: noBoxes,
    years: noYears,
    saving: { status: 'idle', at: null, reason: '' },
  }
}
