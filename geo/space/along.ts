import type { Metres } from './plane'
import { distance } from './shape'

/**
 * The position `along` metres from the start of a line, and `aside` metres to the right of it (less than 0: to the left).
 * Beyond its ends the first or last stretch goes on straight. null where the line has no length.
 */
export function placeAlong(line: readonly Metres[], along: number, aside: number): Metres | null {
  const stretches = line.slice(1).flatMap((to, i) => {
    const from = line[i]!
    const length = distance(from, to)
    return length > 0 ? [{ from, length, x: (to.x - from.x) / length, y: (to.y - from.y) / length }] : []
  })
  let left = along
  for (const [i, { from, length, x, y }] of stretches.entries()) {
    if (left > length && i < stretches.length - 1) {
      left -= length
      continue
    }
    return { x: from.x + left * x + aside * y, y: from.y + left * y - aside * x }
  }
  return null
}
