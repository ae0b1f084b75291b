import type { Outcome } from '#geo/problem'
import type { PointCloud, ReportRanges } from '#geo/report/report'
import type { Evaluation } from '../../../src/state/store'

/** An evaluation that can be told apart by its supply. */
export function evaluation(supplied: number): Evaluation {
  const orchard = { wanted: 100, supplied, coverage: 0.5, reach: 1, shortBy: 0, busiestDay: null }
  const report = { plan: 'Small orchard', year: 2026, orchard, plantings: [], stations: [], problems: [] }
  return { report, coverage: new Float32Array([0.5]) }
}

export function answered(supplied: number): Outcome<Evaluation> {
  return { ok: true, value: evaluation(supplied), problems: [] }
}

export const cloud: PointCloud = { lngLat: new Float64Array([-1.7, 52.2]), plantings: [] }

export const ranges: ReportRanges = {
  orchard: {
    coverage: { low: 0.4, high: 0.6 },
    wanted: { low: 90, high: 110 },
    supplied: { low: 40, high: 60 },
    reach: { low: 0.8, high: 1 },
    shortBy: { low: 40, high: 60 },
  },
  plantings: {},
  stations: {},
  influences: [],
}
