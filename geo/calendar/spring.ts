import { seasonWork } from '../data/season-work'
import { nameOf } from '../plan/plan'
import { dateOfDay } from '../time/day'
import { listed, oneLine } from '../wording/plain'
import { beeFigure, beeWord, type Context, ladderCaution } from './context'
import type { Flight } from './season-facts'
import type { Task } from './task'
import { taskUid } from './uid'
import { counted, dayText, percent, spanText } from './words'

/** The first release; `bloom` names what the day was worked out from where no release is given. */
export type Start = { readonly day: number; readonly bloom: string | null }

/** Stations up, and mud wet, before the first cocoons go out. */
export function startTasks(context: Context, start: Start, flights: readonly Flight[]): readonly Task[] {
  const { plan, year, stations } = context
  const { stationsUp, stationsUpDays, mudBefore } = seasonWork
  const when = dayText(start.day, year)
  const since =
    start.bloom === null
      ? `The first cocoons go out on ${when}.`
      : `No release is given; ${start.bloom}, the first to bloom, is met best by cocoons set out about ${when}.`
  const up = start.day - stationsUp.value
  const names = stations.map(station => oneLine(nameOf(station)) || station.id)
  const [only] = names
  // A station that is called "Nest station 1" says so itself.
  const one = only?.startsWith('Nest station') ? only : `the nest station ${only}`
  const title = names.length === 1 ? `Put up ${one}` : `Put up ${names.length || 'the'} nest stations`
  const nesting = flights[0]
  const wet =
    nesting === undefined
      ? ''
      : ` Females start to nest about ${dayText(nesting.nesting, year)}; keep it wet to the last flight, about ${dayText(lastOf(flights), year)}.`
  return [
    {
      uid: taskUid(plan, year, ['stations-up']),
      kind: 'stations-up',
      date: dateOfDay(up, year),
      end: dateOfDay(up + stationsUpDays.value - 1, year),
      title,
      why: `${since} Work begins ${spanText(stationsUp)} before, and ${counted(stationsUpDays.value, 'day')} are allowed for it: nothing may be moved once bees nest.`,
      steps: [
        ...(names.length > 1 ? [`Stations: ${listed(names)}.`] : []),
        'Fix each so that it cannot sway, under a roof, with its front to the morning sun, where it is reached from the ground.',
        'Put in clean or new tubes, and look that their backs are closed.',
      ],
      cautions: ['ladder', 'tools', 'public'],
    },
    {
      uid: taskUid(plan, year, ['mud']),
      kind: 'mud',
      date: dateOfDay(start.day - mudBefore.value, year),
      title: 'Have wet mud ready',
      why: `${since} Mud is wanted ${spanText(mudBefore)} before.${wet}`,
      steps: [
        plan.features.some(({ properties }) => properties.kind === 'mud')
          ? 'Open and wet the mud places of the plan.'
          : 'No mud place is drawn in the plan: see where bees find wet, clayey soil near each station, or make one.',
      ],
      cautions: ['water'],
    },
  ]
}

/** The rounds while bees fly, and the end of each species' flight. */
export function flightTasks(context: Context, flights: readonly Flight[]): readonly Task[] {
  const { plan, year } = context
  const { roundEvery, flightOver } = seasonWork
  const first = Math.min(...flights.map(({ nesting }) => nesting))
  const last = lastOf(flights)
  const times = Math.max(1, Math.floor((last - first) / roundEvery.value) + 1)
  const stations = flights.reduce((sum, flight) => sum + flight.stations.length, 0)
  const lags = [...new Set(flights.map(({ bee }) => bee))].map(
    bee => `${spanText(beeFigure(context, bee, 'lag'))} after release for the ${beeWord(bee)}`,
  )
  const round: Task = {
    uid: taskUid(plan, year, ['round']),
    kind: 'round',
    date: dateOfDay(first, year),
    repeats: { everyDays: roundEvery.value, times },
    title: `Round of ${counted(stations, 'station')}`,
    why: `Females are expected at work at ${counted(stations, 'station')} from about ${dayText(first, year)} (${listed(lags)}) to about ${dayText(last, year)}: ${counted(times, 'round')}, one every ${counted(roundEvery.value, 'day')}.`,
    steps: ['At each station write down capped tubes, whether the mud is wet, damage and the weather.'],
    cautions: ['stings', 'sprays', ...ladderCaution(context)],
  }
  const ends = flights.map((flight): Task => {
    const { bee, busiest, last: end, hasWeather } = flight
    const weather = hasWeather
      ? "The season's weather is in it, as far as it is known; other days count as typical."
      : 'An estimate: weather moves it.'
    const most = hasWeather ? 'of the busiest of typical days; most fly on' : 'of the busiest day,'
    return {
      uid: taskUid(plan, year, ['flight-over', bee]),
      kind: 'flight-over',
      date: dateOfDay(end.value, year),
      title: `Last flight expected: ${beeWord(bee)}`,
      why: `About this day fewer than ${percent(flightOver.value)} of the females ${most} ${dayText(busiest, year)}${hasWeather ? '. By' : ', are left at work; by'} ${percent(flightOver.high)} and ${percent(flightOver.low)} it would be ${dayText(end.low, year)} and ${dayText(end.high, year)}. ${weather}`,
      steps: ['Write down at which station the last tube was capped, and when.'],
      cautions: [],
    }
  })
  return [round, ...ends]
}

function lastOf(flights: readonly Flight[]): number {
  return Math.max(...flights.map(({ last }) => last.value))
}
