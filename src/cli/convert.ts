import { plainGeoJson } from '#geo/file/geojson'
import { type Answer, answer, jsonAnswer } from './answer'
import { openedPlan, withoutFieldChecks } from './plan-file'
import { problemLines } from './problems'

/** What is drawn, as plain GeoJSON. A plan that can be opened is converted, whatever else is wrong with it. */
export function convert(text: string, { isJson }: { readonly isJson: boolean }): Answer {
  const opened = openedPlan(text)
  const { plan } = opened
  const problems = withoutFieldChecks(opened.problems)
  const content = plan === null ? null : plainGeoJson(plan)
  if (!isJson) return answer(content ?? '', problemLines(problems), problems)
  const value = { plan: plan?.name ?? null, to: 'geojson', content: content && JSON.parse(content), problems }
  return jsonAnswer(value, problems)
}
