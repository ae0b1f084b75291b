import type { PlantingResult, Report } from '#geo/report/report'
import { verdictOf } from '../../text/verdict'
import { aboutCounted, counted } from '../../text/words'

/** "7 of 12 plantings get enough bees; furthest from enough: Late apple, about 38 females short." */
export function coverageSentence({ plantings }: Pick<Report, 'plantings'>): string {
  const counting = plantings.filter(({ coverage }) => coverage !== null)
  if (plantings.length === 0) return 'Nothing stands there that asks for bees.'
  if (counting.length === 0) return 'Nothing can be counted yet: no planting has bloom dates.'
  const enough = counting.filter(({ coverage }) => verdictOf(coverage) === 'yes').length
  const worst = worstOf(counting)
  const [only] = counting
  const first =
    counting.length === 1 && only
      ? enough === 1
        ? `Enough bees for ${only.name}`
        : `Not enough bees for ${only.name}`
      : enough === counting.length
        ? `All ${counting.length} plantings get enough bees`
        : `${enough === 0 ? 'None' : enough} of ${counted(counting.length, 'planting')} ${enough === 1 ? 'gets' : 'get'} enough bees`
  if (worst === null) return `${first}.`
  const short = `${aboutCounted(worst.shortBy ?? 0, 'female')} short`
  return counting.length === 1 ? `${first}: ${short}.` : `${first}; furthest from enough: ${worst.name}, ${short}.`
}

/** The planting that is short by most, if any is short and not covered enough. */
function worstOf(plantings: readonly PlantingResult[]): PlantingResult | null {
  const short = plantings.filter(({ coverage, shortBy }) => verdictOf(coverage) !== 'yes' && (shortBy ?? 0) >= 0.5)
  return short.reduce<PlantingResult | null>(
    (worst, each) => (worst === null || (each.shortBy ?? 0) > (worst.shortBy ?? 0) ? each : worst),
    null,
  )
}
