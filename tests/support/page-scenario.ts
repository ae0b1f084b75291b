import { readFileSync } from 'node:fs'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'

/** Example plans for tests of the page, where files are found from the working directory. */
export function pageScenarioText(name: string): string {
  return readFileSync(`scenarios/${name}.plan.geojson`, 'utf8')
}

export function pageScenario(name: string): Plan {
  const outcome = readPlan(pageScenarioText(name))
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}
