import type { Plan } from '#geo/plan/plan'
import { type DailyCurve, valueOn } from '#geo/time/curve'
import { dateText } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { honest, percent } from '../../text/words'
import { type BloomBand, type SeasonBands, seasonBands } from '../season-bands'
import { femalesOn } from './flight-groups'
import { type Frost, frostsOf, frostWords } from './season-frost'
import { type FlyingBand, type FlyingDay, flyingBands, flyingOn, flyingWords } from './season-weather'

/** The season as the strip and its table show it. */
export type SeasonPicture = SeasonBands & {
  readonly flying: readonly FlyingBand[]
  readonly frosts: readonly Frost[]
  readonly units: Plan['units']
}

export function seasonPicture(plan: Plan, year: number): SeasonPicture {
  const weather = { flying: flyingBands(plan, year), frosts: frostsOf(plan, year) }
  return { ...seasonBands(plan, year), ...weather, units: plan.units }
}

/** What is said where a season holds no weather. */
export const noWeather = 'No weather is kept for the season: every day counts as a typical one.'

/** What goes on on one day. */
export type SeasonDay = {
  readonly day: number
  /** What is open, in the order of the bands. */
  readonly open: readonly { readonly label: string; readonly share: number }[]
  /** Females on the wing at all stations, each in her own species. */
  readonly females: number
  /** By the weather, for every bee in use; empty without weather. */
  readonly flying: readonly FlyingDay[]
  readonly frosts: readonly Frost[]
}

/** Less of a bloom than this is told as closed. */
const leastOpen = 0.005
/** From here on a bloom is called full. */
const full = 0.95

function seasonDay({ blooms, flights, flying, frosts }: SeasonPicture, day: number): SeasonDay {
  const open = blooms
    .map(({ label, curve }) => ({ label, share: valueOn(curve, day) }))
    .filter(({ share }) => share >= leastOpen)
  return {
    day,
    open,
    females: femalesOn(flights, day),
    flying: flyingOn(flying, day),
    frosts: frosts.filter(frost => frost.day === day),
  }
}

/** Every day from the first on which something blooms or flies to the last. */
export function seasonDays(bands: SeasonPicture): readonly SeasonDay[] {
  const days: SeasonDay[] = []
  for (let day = Math.ceil(bands.from); day <= bands.to; day += 1) days.push(seasonDay(bands, day))
  const isBusy = ({ open, females, frosts }: SeasonDay) =>
    open.length > 0 || females >= leastFemales || frosts.length > 0
  return days.slice(days.findIndex(isBusy), days.findLastIndex(isBusy) + 1)
}

const leastFemales = 0.5

/** "Apple in full bloom, plum 10% open". */
export function openText(open: SeasonDay['open']): string {
  return open
    .map(({ label, share }) => (share >= full ? `${label} in full bloom` : `${label} ${percent(share)} open`))
    .join(', ')
}

/** "24 April 2026: Apple in full bloom and plum 10% open; about 140 females at work; about 6.2 flying hours." */
export function dayInWords(bands: SeasonPicture, day: number, year: number): string {
  const { open, females, flying, frosts } = seasonDay(bands, day)
  const flowers = open.length === 0 ? 'nothing drawn is in bloom' : listed(open.map(each => openText([each])))
  const bees =
    bands.flights.length === 0
      ? ''
      : females < leastFemales
        ? '; no female at work'
        : `; about ${honest(females)} ${females < 1.5 ? 'female' : 'females'} at work`
  const weather = [flyingWords(flying), frostWords(frosts, bands.units)].filter(words => words !== null)
  return `${dateText(dateOfDay(day, year))}: ${flowers}${[bees, ...weather].join('; ')}.`
}

/**
 * How far a bloom could be open if its dates are off by as much as they may be: on every day the most that any shift of
 * it gives. null where the dates are not in doubt.
 */
export function doubtCurve({ curve, doubt }: BloomBand): DailyCurve | null {
  if (doubt === null) return null
  const { before, after } = doubt
  const peak = curve.start + curve.values.indexOf(Math.max(...curve.values))
  const start = curve.start - before
  const values = Float64Array.from({ length: curve.values.length + before + after }, (_, i) => {
    const day = start + i
    // The shift that brings full bloom nearest to the day.
    const shift = Math.min(after, Math.max(-before, day - peak))
    return valueOn(curve, day - shift)
  })
  return { start, values }
}
