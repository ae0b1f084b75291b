import { compose, type Edit } from '#geo/plan/edits'
import { setReleases } from '#geo/plan/edits-seasons'
import type { Plan, Station } from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import { dateText } from '#geo/time/date-text'
import { addDays, daysBetween, type IsoDate, isIsoDate } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { bloomOf, featureById, stationSeasonOf, stationsInUse } from '../../state/selectors'
import { springDay } from '../../text/home'
import { counted } from '../../text/words'
import { titleOf } from '../titles'
import { bestReleaseAt, datedNear } from './best-release'

/** A station's batches that stand on a day far from the one that would serve it best. */
export type OffDay = {
  readonly station: Station
  readonly date: IsoDate
  readonly best: IsoDate
  /** By how many days the date is too early; below 0 = too late. */
  readonly early: number
  /** The day is the one that batches start from where no bloom is known. */
  readonly isGuess: boolean
}

/** A date nearer to the best than this is left alone, days: estimates of bloom are off by more than that. */
const nearEnough = 7

const told = ['released-early', 'released-late']

/**
 * Batches still on the guess at spring though bloom is known by now, and those of which the checks of dates say that no
 * blossom awaits them; none whose best day is not known.
 */
export function offDays(plan: Plan, year: number, problems: readonly Problem[]): readonly OffDay[] {
  const guess = springDay(plan, year)
  return stationsInUse(plan, year).flatMap(station => {
    const releases = stationSeasonOf(plan, year, station.id)?.releases ?? []
    const dates = [...new Set(releases.map(({ date }) => date))].filter(isIsoDate).sort()
    const suspect = dates.filter(
      date => (date === guess && isMerelyGuessed(plan, year, station, date)) || isTold(problems, station.id, date),
    )
    const best = suspect.length === 0 ? null : bestReleaseAt(plan, year, station)
    if (best === null) return []
    return suspect
      .map(date => ({
        station,
        date,
        best: best.date,
        early: daysBetween(date, best.date),
        isGuess: date === guess,
      }))
      .filter(({ early }) => Math.abs(early) >= nearEnough)
  })
}

/** A day that batches start from may be meant all the same, where one of several blooms near is open then. */
function isMerelyGuessed(plan: Plan, year: number, station: Station, date: IsoDate): boolean {
  const blooms = datedNear(plan, year, station).map(planting => bloomOf(plan, year, planting)!)
  const isOpen = blooms.some(({ first, end }) => addDays(date, nearEnough) >= first && date <= end)
  return !isOpen || new Set(blooms).size === 1
}

function isTold(problems: readonly Problem[], id: string, date: IsoDate): boolean {
  return problems.some(
    ({ code, severity, at, values, setAside }) =>
      told.includes(code) && severity === 'warning' && at === id && values.date === date && setAside === undefined,
  )
}

/** All of them on their best days, as one step of undo. */
export function moveToBest(plan: Plan, year: number, off: readonly OffDay[]): Edit {
  const ids = [...new Set(off.map(({ station }) => station.id))]
  const label = `Set cocoons out on the best day at ${ids.length === 1 ? titleOf(featureById(plan, ids[0]!)!) : counted(ids.length, 'station')}`
  return compose(
    label,
    ids.map(id => {
      const releases = stationSeasonOf(plan, year, id)?.releases ?? []
      const bestOf = new Map(off.filter(({ station }) => station.id === id).map(({ date, best }) => [date, best]))
      return setReleases(
        year,
        id,
        releases.map(release => ({ ...release, date: bestOf.get(release.date) ?? release.date })),
      )
    }),
  )
}

/** "Bees are set out about five weeks too early: Nest station 1 on 1 April 2026, best about 6 May 2026." */
export function offDaysSentence(off: readonly OffDay[]): string {
  const [first] = off
  if (first === undefined) return ''
  const most = off.reduce((far, each) => (Math.abs(each.early) > Math.abs(far.early) ? each : far), first)
  const isOneWay = off.every(({ early }) => early > 0 === most.early > 0)
  const way = isOneWay ? `too ${most.early > 0 ? 'early' : 'late'}` : 'off their best day'
  const upTo = off.some(({ early }) => early !== most.early) ? 'up to ' : ''
  return `Bees are set out ${upTo}${timeText(Math.abs(most.early))} ${way}: ${whereText(off)}.`
}

/** Stations told one by one as far as that stays a sentence. */
function whereText(off: readonly OffDay[]): string {
  const alike = off.every(({ date, best }) => date === off[0]!.date && best === off[0]!.best)
  const names = [...new Set(off.map(({ station }) => titleOf(station)))]
  const told = names.length > 3 ? counted(names.length, 'station') : listed(names)
  if (alike) return `${told} on ${dateText(off[0]!.date)}, best about ${dateText(off[0]!.best)}`
  if (off.length > 3) return `${told}, ${counted(off.length, 'batch', 'batches')}`
  return off
    .map(({ station, date, best }) => `${titleOf(station)} on ${dateText(date)}, best about ${dateText(best)}`)
    .join('; ')
}

const small = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

/** "about five weeks"; days below a fortnight. */
function timeText(days: number): string {
  if (days < 14) return counted(days, 'day')
  const weeks = Math.round(days / 7)
  return `about ${small[weeks - 1] ?? weeks} weeks`
}
