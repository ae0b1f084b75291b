import { judging } from '#geo/data/judging-figures'
import type { Comparison } from '#geo/seasons/compare'
import type { StationChange } from '#geo/seasons/station-change'
import type { OrchardYear } from '#geo/seasons/year'
import { significant } from '#geo/wording/plain'
import { grouped, percent } from '../../../text/words'

const { toldTimes } = judging

/** What the stations that were counted in both seasons show together; null where none were. */
export function likeSentence({ years, stations }: Comparison): string | null {
  const { from, to } = stations
  if (from === null || to === null) return null
  const [a, b] = years
  const same =
    from.stations === 1
      ? 'At the one station counted in both seasons'
      : `At the ${grouped(from.stations)} stations counted in both seasons`
  if (from.capped === null || to.capped === null) return `${same}, capped tubes were not counted twice.`
  const bees = `${withBees(from)} in ${a}, ${withBees(to)} in ${b}`
  return `${same}, ${grouped(from.capped)} tubes were capped in ${a} and ${grouped(to.capped)} in ${b} (female cocoons set out there: ${bees}).`
}

function withBees({ released }: OrchardYear): string {
  return grouped(released)
}

/** "Capped tubes for each female cocoon set out: 0.2 in 2024, 0.91 in 2025, 4.6 times as many." */
export function cappedEachText(
  { cappedEach, times }: StationChange,
  [from, to]: readonly [number, number],
): string | null {
  if (cappedEach.from === null || cappedEach.to === null) return null
  const figure = (value: number) => grouped(significant(value, 2))
  const changed =
    times !== null && (times >= toldTimes || times <= 1 / toldTimes) ? `, ${figure(times)} times as many` : ''
  return `Capped tubes for each female cocoon set out: ${figure(cappedEach.from)} in ${from}, ${figure(cappedEach.to)} in ${to}${changed}.`
}

/** The stations that stand out: those whose tubes for each female changed most. */
export function standOutSentence(
  changes: readonly StationChange[],
  [from, to]: readonly [number, number],
): string | null {
  const risen = changes.filter(({ times }) => times !== null && times >= toldTimes)
  const fallen = changes.filter(({ times }) => times !== null && times <= 1 / toldTimes)
  const told = risen.length >= fallen.length ? risen : fallen
  const [first, second] = told
  if (first === undefined)
    return `No station filled clearly more or fewer tubes for each female cocoon in ${to} than in ${from}.`
  const figure = (value: number | null) => grouped(significant(value!, 2))
  const one = ({ name, cappedEach }: StationChange) =>
    `${name} (${figure(cappedEach.from)} to ${figure(cappedEach.to)})`
  const names = second === undefined ? one(first) : `${one(first)} and ${one(second)}`
  return `Tubes filled for each female cocoon set out ${told === risen ? 'rose' : 'fell'} most at ${names}.`
}

/** "8% to 38%": a figure of a station in both seasons. */
export function pairText<T>(from: T | null, to: T | null, text: (value: T) => string): string {
  const shown = (value: T | null) => (value === null ? 'not counted' : text(value))
  if (from === null && to === null) return 'not counted'
  return `${shown(from)} to ${shown(to)}`
}

export function establishedText(station: StationChange): string {
  return pairText(station.from.establishment?.mid ?? null, station.to.establishment?.mid ?? null, percent)
}
