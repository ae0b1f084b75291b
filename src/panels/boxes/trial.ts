import { useMemo } from 'react'
import type { Report } from '#geo/report/report'
import type { Suggested } from '../../state/boxes'
import { usePlanner } from '../../state/use-planner'
import { valueOfJob } from '../hooks'
import { useBoxes } from './use-boxes'

export type Trial = {
  /** Coverage of all plantings by the question's weights. */
  readonly coverage: number | null
  readonly plantings: ReadonlyMap<string, number | null>
  readonly report: Report
}

/** What the suggested stations do as they are taken and placed now, and whether that differs from the suggestion. */
export function useTrial({ wish, suggestion }: Suggested): {
  readonly trial: Trial | null
  readonly isChanged: boolean
} {
  const { moved, left } = useBoxes()
  const report = useTried() ?? null
  const trial = useMemo(
    () =>
      report && {
        report,
        coverage: weighedCoverage(report, wish.weights ?? {}),
        plantings: new Map(report.plantings.map(({ id, coverage }) => [id, coverage])),
      },
    [report, wish],
  )
  const isChanged = suggestion.stations.some(({ id }) => moved[id] !== undefined || left.includes(id))
  return { trial, isChanged }
}

/** The season as it would be with what is answered; undefined until it is counted. */
export function useTried(): Report | undefined {
  const job = usePlanner(state => state.results.trial)
  return valueOfJob(job, 0).value?.report
}

/** Coverage added up over plantings, each female counting as much as its planting's weight says. */
function weighedCoverage(
  { plantings }: Pick<Report, 'plantings'>,
  weights: Readonly<Record<string, number>>,
): number | null {
  let wanted = 0
  let served = 0
  for (const { id, coverage, wanted: all } of plantings) {
    if (coverage === null) continue
    const weight = weights[id] ?? 1
    wanted += weight * all
    served += weight * all * coverage
  }
  return wanted > 0 ? served / wanted : null
}
