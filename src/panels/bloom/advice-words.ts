import { dateText } from '#geo/time/date-text'
import type { Advice, DatedShare } from '#geo/timing/advice'
import { listed } from '#geo/wording/plain'
import { percent, points } from '../../text/words'

/** "All on 6 April 2026." or "Two batches: 60% on 6 April 2026 and 40% on 20 April 2026." */
export function batchesText(batches: readonly DatedShare[]): string {
  const [only, ...others] = batches
  if (only === undefined) return 'No date was found.'
  if (others.length === 0) return `All on ${dateText(only.date)}.`
  const parts = batches.map(({ date, share }) => `${percent(share)} on ${dateText(date)}`)
  return `${batches.length === 2 ? 'Two' : 'Three'} batches: ${listed(parts)}.`
}

/** What the dates gain over all at once with the first crop, and over the grower's own. */
export function gainText({ bees, coverage, atFirstCrop, own, isOwn, isOwnUnfed }: Advice): string {
  if (coverage === null) return ''
  const [first] = bees.flatMap(({ firstCrop }) => firstCrop ?? [])
  const over = [
    isOwn || own === null ? null : `${points(coverage - own)} against your own dates (${percent(own)})`,
    atFirstCrop === null || first === undefined
      ? null
      : `${points(coverage - atFirstCrop)} against all at once when bloom begins, with ${first.name} (${percent(atFirstCrop)})`,
  ].filter(text => text !== null)
  const gains = over.length === 0 ? '' : `That is ${listed(over)}.`
  if (isOwn) return `Your own dates are as good as any that was found. ${gains}`.trim()
  const unfed = isOwnUnfed
    ? ' Some of your own dates come before blossom near the nests is open: the first females would find nothing, so their figure is no fair measure.'
    : ''
  return `${gains}${unfed}`
}
