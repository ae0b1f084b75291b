import type { Units } from '#geo/plan/plan'
import { type KnownPoint, misfits, type Placing } from '#geo/space/placing'
import { lengthText } from '../../text/units'

/** How well a placing suits the points it was made from, and what that says. */
export function fitWords(placing: Placing, points: readonly KnownPoint[], units: Units): string {
  const off = misfits(placing, points)
  const worst = Math.max(...off)
  const mean = Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / off.length)
  // As many figures given as were asked for: the fit cannot but be exact.
  if (points.length === 2) return 'Laid. Two points always fit, so they cannot show a mistake: a third one would.'
  if (points.length === 3 && worst < 1e-6) {
    return 'Laid. Three points always fit where the picture may slant: a fourth one would show a mistake.'
  }
  const which = off.indexOf(worst) + 1
  return `Laid. The points miss by ${lengthText(mean, units)} (root mean square); the worst, point ${which} of those given, by ${lengthText(worst, units)}.`
}
