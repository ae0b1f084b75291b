import { printAhead, unprinted } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'

/** Features printed without a pause: some milliseconds of work. */
const atOnce = 150

/** Prints what is new in a large plan by parts, so that nobody waits for its text; null where it is little. */
export function printByParts(plan: Plan): Promise<void> | null {
  const features = unprinted(plan.features)
  return features.length > atOnce ? print(features) : null
}

async function print(features: Plan['features']): Promise<void> {
  for (let start = 0; start < features.length; start += atOnce) {
    printAhead(features.slice(start, start + atOnce))
    await new Promise(resolve => setTimeout(resolve))
  }
}
