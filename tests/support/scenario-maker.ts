import { readFileSync, writeFileSync } from 'node:fs'
import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import { allotment } from './scenario-allotment'
import { farm } from './scenario-farm'
import { mixedOrchard } from './scenario-orchard'
import { providenceApples } from './scenario-providence'

/** The example plans in scenarios/ and what makes each. */
export const scenarios: readonly { readonly name: string; readonly years: readonly number[]; make(): Plan }[] = [
  { name: 'allotment', years: [2024, 2025], make: allotment },
  { name: 'mixed-orchard', years: [2024, 2025], make: mixedOrchard },
  { name: 'farm', years: [2024, 2025], make: farm },
  { name: 'providence-apples', years: [2025], make: providenceApples },
]

function scenarioFile(name: string): URL {
  return new URL(`../../scenarios/${name}.plan.geojson`, import.meta.url)
}

/** Text of an example plan as it is kept; with `UPDATE=1` as it is about to be, whichever test file runs first. */
export function scenarioText(name: string): string {
  const scenario = scenarios.find(each => each.name === name)
  if (process.env.UPDATE && scenario !== undefined) return writePlan(scenario.make())
  return readFileSync(scenarioFile(name), 'utf8')
}

/** Writes an example plan anew. */
export function rewriteScenario(name: string, plan: Plan): void {
  writeFileSync(scenarioFile(name), writePlan(plan))
}
