import { expose, transfer } from 'comlink'
import { pointCloud } from '#geo/report/cloud'
import { type Model, modelOf } from '#geo/report/model'
import { reportRanges } from '#geo/report/ranges'
import type { EngineApi } from './protocol'

let model: Model | null = null

function evaluationOf(laidOut: Model, withLimits: boolean) {
  return { report: laidOut.report({ withLimits }), coverage: laidOut.pointCoverage() }
}

/** Buffers made for one answer are handed over, not copied. */
function handedOver<T>(answer: T, array: Float32Array | Float64Array): T {
  return transfer(answer, [array.buffer as ArrayBuffer])
}

export const engineApi: EngineApi = {
  evaluate(plan, year) {
    model = null
    const made = modelOf(plan, year)
    if (!made.ok) return made
    const value = evaluationOf(made.value, true)
    model = made.value
    return handedOver({ ok: true, value, problems: value.report.problems }, value.coverage)
  },
  moveStation(id, at) {
    if (!model?.moveStation(id, at)) return null
    const value = evaluationOf(model, false)
    return handedOver(value, value.coverage)
  },
  cloud(plan, year) {
    const cloud = pointCloud(plan, year)
    return handedOver(cloud, cloud.lngLat)
  },
  ranges: reportRanges,
}

expose(engineApi)
