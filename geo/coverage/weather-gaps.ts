import type { Problem } from '../problem'
import { dateOfDay } from '../time/day'
import type { BloomPair } from './coverage'
import type { Supply } from './supply'

/** A day on which fewer of a station's females are at work than this share hardly counts, whatever its weather. */
const leastAtWork = 0.01

/** Days of flight and bloom that a season with weather says nothing of, told once for all stations. */
export function weatherGaps(
  supplies: readonly Supply[],
  { blooms, year }: { readonly blooms: readonly BloomPair[]; readonly year: number },
): readonly Problem[] {
  const open = new Set(blooms.flatMap(({ open: { start, values } }) => Array.from(values, (_, i) => start + i)))
  const unknown = new Set<number>()
  const rainless = new Set<number>()
  for (const { input, flying } of supplies) {
    if (flying === null || !(input.females > 0)) continue
    const { start, values } = input.flight
    for (const [i, females] of values.entries()) {
      const day = start + i
      const h = flying.values[day - flying.start] ?? 1
      // The flight holds the weather already; a day without flying has none to be unsure of.
      const isKnown = flying.known[day - flying.start] === 1
      if (!open.has(day) || (!isKnown && females < leastAtWork * input.females)) continue
      if (!isKnown) unknown.add(day)
      else if (
        flying.isRainKnown[day - flying.start] === 0 &&
        females > 0 &&
        females >= leastAtWork * input.females * h
      )
        rainless.add(day)
    }
  }
  return [...told('weather-gaps', unknown, year), ...told('weather-no-rain', rainless, year)]
}

function told(code: 'weather-gaps' | 'weather-no-rain', days: ReadonlySet<number>, year: number): Problem[] {
  if (days.size === 0) return []
  const first = dateOfDay(Math.min(...days), year)
  return [{ code, severity: 'note', at: '', values: { year, days: days.size, first } }]
}
