import type { Heat } from '#geo/bloom/heat'
import { type PredictedBloom, predictedBloom } from '#geo/bloom/predict'
import { setBloom } from '#geo/plan/edits-seasons'
import { type Bloom, bloomStages, isObserved, type Plan } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { listed } from '#geo/wording/plain'
import { Figure } from '../../parts/figure'
import { counted, grouped } from '../../text/words'
import { useEdit, useExplain, usePlan, useYear } from '../hooks'
import { cropTitle } from '../titles'
import { isSameBloom } from './bloom-defaults'

/** What the season's own weather, or apple as it was seen, says of a crop's bloom; null where only the calendar speaks. */
export function predictionOf(plan: Plan, year: number, crop: string): PredictedBloom | null {
  const found = predictedBloom(plan, year, crop)
  return found === null || found.basis === 'observed' || found.basis === 'calendar' ? null : found
}

/** "23 April 2026, 5 days earlier or later". */
export function predictedText({ bloom, before, after }: Pick<PredictedBloom, 'bloom' | 'before' | 'after'>): string {
  const spread =
    before === after
      ? `${counted(Math.round(before), 'day')} earlier or later`
      : `${counted(Math.round(before), 'day')} earlier or ${Math.round(after)} later`
  return `${dateText(bloom.full)}, ${spread}`
}

/** The prediction beside a crop's dates, or how far its heat has come. */
export function PredictedLine({ crop, bloom }: { readonly crop: string; readonly bloom: Bloom | null }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const explain = useExplain()
  const found = predictionOf(plan, year, crop)
  const heat = found?.heat ?? predictedBloom(plan, year, crop)?.heat ?? null
  const progress = heat === null ? null : heatText(heat)
  if (found === null) return progress === null ? null : <p className="aside-note">{progress}</p>
  const isSeen = bloom !== null && bloomStages.some(stage => isObserved(bloom, stage))
  const isUsed = isSameBloom(bloom ?? undefined, found.bloom)
  return (
    <p className="aside-note">
      {isUsed ? 'These are the predicted dates: full bloom ' : 'Predicted: full bloom '}
      <Figure
        label={`predicted full bloom of ${cropTitle(plan, crop)}`}
        onExplain={() => explain({ figure: 'predictedBloom', id: crop })}
      >
        {predictedText(found)}
      </Figure>
      , {basisText(plan, found)}.{progress === null ? '' : ` ${progress}`}{' '}
      {isUsed || isSeen ? null : (
        <button type="button" className="link" onClick={() => edit(setBloom(year, crop, { ...bloom, ...found.bloom }))}>
          Use this date
        </button>
      )}
    </p>
  )
}

/** Where a prediction comes from, in few words. */
export function basisText(plan: Plan, { basis, heat }: PredictedBloom): string {
  switch (basis) {
    case 'degree-days':
      return heat?.isRescaled ? `by its warmth, set by what you saw: ${seenText(heat)}` : 'by its warmth'
    case 'apple-observed':
      return `by days from ${cropTitle(plan, 'apple')} as you saw it`
    case 'apple-degree-days':
      return `by days from ${cropTitle(plan, 'apple')}, whose date comes from its warmth`
    case 'observed':
      return 'as you saw it'
    case 'calendar':
      return 'by the calendar of the region'
    default:
      return basis satisfies never
  }
}

/** "full bloom on 21 April 2025". */
function seenText({ seasons }: Pick<Heat, 'seasons'>): string {
  return `full bloom on ${listed(seasons.map(({ full }) => dateText(full)))}`
}

/** Why heat gives no date, and how far it has come; null where it gives one or there is nothing to count. */
function heatText({ state, sum, total, until, from }: Heat): string | null {
  const so = `${grouped(Math.round(sum))} of ${grouped(Math.round(total))} degree-days`
  switch (state) {
    case 'reached':
    case 'none':
      return null
    case 'weather':
      return until === null ? null : `Its warmth has come to ${so} by ${dateText(until)}, where the weather ends.`
    case 'gap':
      return `Its warmth cannot be counted on: too many days in a row are missing${until === null ? '' : ` after ${dateText(until)}`}.`
    case 'late':
      return `Its warmth cannot be counted: the weather begins after ${dateText(from)}.`
    default:
      return state satisfies never
  }
}
