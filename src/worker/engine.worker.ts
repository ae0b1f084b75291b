import { expose, transfer } from 'comlink'
import { importSession } from '#geo/file/open-import'
import type { PackedShapes } from '#geo/file/packed-things'
import type { Plan } from '#geo/plan/plan'
import type { Outcome } from '#geo/problem'
import { pointCloud } from '#geo/report/cloud'
import { type Model, modelOf } from '#geo/report/model'
import { reportRanges } from '#geo/report/ranges'
import { compareSeasons } from '#geo/seasons/compare'
import { project } from '#geo/seasons/project'
import { yearRecord } from '#geo/seasons/year'
import { coverageCurve } from '#geo/siting/curve'
import type { SuggestOptions } from '#geo/siting/question'
import { suggest } from '#geo/siting/suggest'
import { stockFor } from '#geo/stocking/programme'
import { releaseAdvice } from '#geo/timing/release-advice'
import { withoutWeather } from '#geo/weather/flying-time'
import { keepingPlan } from './kept-plan'
import type { EngineApi, Evaluation } from './protocol'

let model: Model | null = null

function evaluationOf(season: Model, withLimits: boolean) {
  return { report: season.report({ withLimits }), coverage: season.pointCoverage() }
}

/** Lays a season out and keeps it for `moveStation`. */
function laidOut(plan: Plan, year: number, withLimits: boolean): Outcome<Evaluation> {
  model = null
  const made = modelOf(plan, year)
  if (!made.ok) return made
  const value = evaluationOf(made.value, withLimits)
  model = made.value
  return handedOver({ ok: true, value, problems: value.report.problems }, value.coverage)
}

/** Milliseconds between two words of progress: more would only queue up at the page. */
const pause = 80
/** Milliseconds until the best answer so far is told along, and between two of them: making one takes time from the search. */
const firstOfBest = 150
const pauseOfBest = 500
/** An answer on the way may take this share of the time. */
const shareOfBest = 0.2

type Told = Parameters<EngineApi['suggest']>[4]

/** Passes progress on at most every so often, and at once where a new stage begins. */
function paced(tell: Told): NonNullable<SuggestOptions['onProgress']> {
  let last = { stage: '', at: 0 }
  let nextBest = performance.now() + firstOfBest
  return (progress, best) => {
    const at = performance.now()
    // The last one is made already.
    const isDue = best !== undefined && (at >= nextBest || progress.stage === 'report')
    if (!isDue && progress.stage === last.stage && at - last.at < pause) return
    const answer = isDue ? best() : null
    const now = performance.now()
    if (isDue) nextBest = now + Math.max(pauseOfBest, (now - at) / shareOfBest)
    last = { stage: progress.stage, at: now }
    tell(progress, answer)
  }
}

/** Buffers made for one answer are handed over, not copied. */
function handedOver<T>(answer: T, array: Float32Array | Float64Array): T {
  return transfer(answer, [array.buffer as ArrayBuffer])
}

/** The file that is being brought in. */
const imported = importSession()

function listsOf({ parts, counts, positions }: PackedShapes): ArrayBuffer[] {
  return [parts, counts, positions].map(({ buffer }) => buffer as ArrayBuffer)
}

export const engineApi: EngineApi = {
  evaluate: (plan, year) => laidOut(plan, year, true),
  tryPlan: (plan, year) => laidOut(plan, year, false),
  moveStation(id, at) {
    if (!model?.moveStation(id, at)) return null
    const value = evaluationOf(model, false)
    return handedOver(value, value.coverage)
  },
  day(day) {
    const report = model?.day(day) ?? null
    return report && handedOver(report, report.work)
  },
  cloud(plan, year) {
    const cloud = pointCloud(plan, year)
    return handedOver(cloud, cloud.lngLat)
  },
  ranges: reportRanges,
  releaseAdvice,
  stock: stockFor,
  typicalCoverage(plan, year) {
    const made = modelOf(withoutWeather(plan, year), year)
    return made.ok ? made.value.report({ withLimits: false }).orchard.coverage : null
  },
  openImport: imported.open,
  rewriteImport: imported.rewrite,
  readImportTable: imported.readTable,
  importShapes(choices) {
    const shapes = imported.shapes(choices)
    return transfer(shapes, listsOf(shapes))
  },
  importThings(choices, cultivars) {
    const things = imported.things(choices, cultivars)
    return transfer(things, listsOf(things.shapes))
  },
  compare: compareSeasons,
  project,
  yearRecord,
  curve: (plan, year, { question: _, ...wish }, asked, onPoint) =>
    coverageCurve(plan, year, { ...wish, ...asked, onPoint }),
  async suggest(plan, year, wish, proof, onProgress) {
    const prove = proof && { timeLimit: proof.timeLimit, solver: await (await import('./load-highs')).solver() }
    return suggest(plan, year, { ...wish, ...(prove && { prove }), onProgress: paced(onProgress) })
  },
}

expose(keepingPlan(engineApi))
