import type { Harvest } from '#geo/seasons/record'
import { honest, rangeText, whole } from '../../text/words'

/** "129", "about 150 (120 to 190)", "at least 129, about 300 if the others hold as much". */
export function harvestText({ count, low, high, from }: Harvest): string {
  if (from === 'all') return whole(count)
  if (high === null || low === null) {
    return low === null || low === count
      ? `about ${honest(count)}`
      : `about ${honest(count)} (${whole(low)} counted, the rest as the opened tubes)`
  }
  return `about ${honest(count)} (${rangeText(low, high, whole)})`
}
