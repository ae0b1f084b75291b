import { type CsvTable, planTable } from '#geo/file/csv-tables'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import type { Plan } from '#geo/plan/plan'
import { type Answer, answer, jsonAnswer } from './answer'
import { openedPlan, withoutFieldChecks } from './plan-file'
import { problemLines } from './problems'

/** What a plan can be made into. */
export const targets = ['gpx', 'kml', 'csv', 'geojson'] as const
export type Target = (typeof targets)[number]

type Options = {
  readonly isJson: boolean
  readonly to: Target | null
  /** Which table, where it is to be CSV. */
  readonly table: CsvTable
}

/** What is drawn, for other programs. A plan that can be opened is converted, whatever else is wrong with it. */
export function convert(text: string, { isJson, to, table }: Options): Answer {
  if (to === null) throw new RangeError('nothing to convert to')
  const opened = openedPlan(text)
  const { plan } = opened
  const problems = withoutFieldChecks(opened.problems)
  const content = plan === null ? null : converted(plan, to, table)
  if (!isJson) return answer(content ?? '', problemLines(problems), problems)
  const value = {
    plan: plan?.name ?? null,
    to,
    ...(to === 'csv' ? { table } : {}),
    content: to === 'geojson' ? content && JSON.parse(content) : content,
    problems,
  }
  return jsonAnswer(value, problems)
}

function converted(plan: Plan, to: Target, table: CsvTable): string {
  switch (to) {
    case 'gpx':
      return gpxText(plan)
    case 'kml':
      return kmlText(plan)
    case 'csv':
      return planTable(plan, table)
    case 'geojson':
      return plainGeoJson(plan)
    default:
      return to satisfies never
  }
}
