import { coldDays, seasonWork } from '../data/season-work'
import { seasonOf } from '../plan/plan'
import { dateOfDay, dayOfSeason, isIsoDate } from '../time/day'
import { listed } from '../wording/plain'
import { beeWord, type Context, ladderCaution } from './context'
import { type Done, doneAt, recordedCold } from './recorded'
import { batchesOf, type Flight } from './season-facts'
import type { Task } from './task'
import { taskUid } from './uid'
import { counted, dayText, spanText } from './words'

/** From taking the nests in to the order for next spring. Days follow one another from each species' last flight. */
export function autumnTasks(context: Context, flights: readonly Flight[]): readonly Task[] {
  const recorded = recordedCold(context)
  const colds = flights.map(flight => ({ flight, day: recorded ?? coldDay(flight) }))
  const stations = [...new Map(flights.flatMap(flight => flight.stations).map(each => [each.id, each])).values()]
  const opened = doneAt(context, stations, 'opened', record => record.opening?.date)
  const expected = Math.max(...colds.map(({ day }) => day)) + seasonWork.openAfterCold.value
  return [
    ...flights.map(flight => takeIn(context, flight, flights.length > 1)),
    ...colds.map(({ flight, day }) => cold(context, flight, day, recorded !== null)),
    ...gatherings(context, flights, { day: opened.all ?? expected, opened }),
  ]
}

function coldDay({ last }: Flight): number {
  return last.value + seasonWork.eggToAdult.value + seasonWork.adultToCold.value
}

function takeIn(context: Context, { bee, last, stations: own }: Flight, isOneOfMany: boolean): Task {
  const { plan, year } = context
  const { takeInAfter } = seasonWork
  const done = doneAt(context, own, 'taken in', record => record.takenIn)
  const expected = `${spanText(takeInAfter)} after the last flight, about ${dayText(last.value, year)}: sooner, young larvae are shaken off their food; later, wasps and other nesters move in. If a tube was capped later than that, wait two weeks from then.`
  const stations = isOneOfMany ? ` of the ${beeWord(bee)}` : ''
  return {
    uid: taskUid(plan, year, ['take-in', bee]),
    kind: 'take-in',
    date: dateOfDay(done.all ?? last.value + takeInAfter.value, year),
    title: `Take the nests in: ${beeWord(bee)}`,
    why: whyWith(done, expected),
    steps: [
      `Take the filled tubes${stations} off gently and keep them level or mouth up, in a fine-meshed bag labelled with the station.`,
      'Keep them dry, airy and shaded. Open nothing before autumn.',
      'Leave some empty tubes out for the wild bees of summer.',
    ],
    cautions: ['stings', ...ladderCaution(context)],
  }
}

function cold(context: Context, { bee, last, firstRelease }: Flight, day: number, isRecorded: boolean): Task {
  const { plan, year } = context
  const { eggToAdult, adultToCold } = seasonWork
  const { low, high } = coldDays[bee]
  const next = nextRelease(context, bee, firstRelease)
  const length = next.day - day
  const since = isRecorded
    ? `Recorded as cold since ${dayText(day, year)}.`
    : `The last eggs, about ${dayText(last.value, year)}, are grown bees after ${spanText(eggToAdult)}, and are cooled ${spanText(adultToCold)} after that.`
  const verdict =
    length < low
      ? `fewer than the ${low} to ${high} that suit it, so set them out later`
      : length > high
        ? `more than the ${low} to ${high} that suit it; where autumn is cool, leave them outdoors in the shade for longer`
        : `${low} to ${high} suit it`
  return {
    uid: taskUid(plan, year, ['cold', bee]),
    kind: 'cold',
    date: dateOfDay(day, year),
    title: `Start the cold store: ${beeWord(bee)}`,
    why: `${since} To next year's first release, ${next.isGiven ? 'given as' : 'if it is again'} ${dayText(next.day, year)}, are ${counted(length, 'day')}: ${verdict}.`,
    steps: [
      'Open a few tubes first: dark, furred bees are ready, white or brown pupae and larvae are not; cold kills those.',
    ],
    cautions: ['fridge'],
  }
}

/** What is written down first; what was expected as long as some is left to do. */
function whyWith({ all, text }: Done, expected: string): string {
  if (all !== null) return text
  return text === '' ? expected : `${text} For the others: ${expected}`
}

function gatherings(
  context: Context,
  flights: readonly Flight[],
  { day: opening, opened }: { readonly day: number; readonly opened: Done },
): readonly Task[] {
  const { plan, year } = context
  const { openAfterCold, shareOutAfter, orderBefore } = seasonWork
  const shareOut = opening + shareOutAfter.value
  const nexts = flights.map(({ bee, firstRelease }) => nextRelease(context, bee, firstRelease))
  const next = nexts.reduce((first, each) => (each.day < first.day ? each : first))
  const wished = next.day - orderBefore.value
  const order = Math.max(wished, shareOut + 1)
  const wait = order > wished ? ' What the share-out leaves is known only now, so the order comes later than that.' : ''
  return [
    {
      uid: taskUid(plan, year, ['opening']),
      kind: 'opening',
      date: dateOfDay(opening, year),
      title: 'Opening day: open nests, sort and count cocoons',
      why: whyWith(
        opened,
        `${spanText(openAfterCold)} after ${flights.length > 1 ? 'the last cold store is started' : 'the cold store is started'}: the bees are grown and asleep.`,
      ),
      steps: [
        'For each station write down tubes opened, cells, females, males, and losses by cause: mites, flies, wasps, mould, other.',
        'Keep the lots of different stations apart.',
      ],
      cautions: ['dust', 'cleaning', 'tools'],
    },
    {
      uid: taskUid(plan, year, ['share-out']),
      kind: 'share-out',
      date: dateOfDay(shareOut, year),
      title: 'Share out the cocoons',
      why: `${spanText(shareOutAfter)} after opening day, ${dayText(opening, year)}, once all is sorted and counted.`,
      steps: ['Keep first what the own stations want next spring; share out by a rule agreed before the count.'],
      cautions: ['moving', 'fridge'],
    },
    {
      uid: taskUid(plan, year, ['order']),
      kind: 'order',
      date: dateOfDay(order, year),
      title: `Order the cocoons still wanted for ${year + 1}`,
      why: `${spanText(orderBefore)} before the first release of ${year + 1}, ${next.isGiven ? 'given as' : 'if it is again'} ${dayText(next.day, year)}.${wait}`,
      steps: [
        `Order what the count leaves open: ${listed(flights.map(({ bee }) => beeWord(bee)))}, raised as near as can be.`,
      ],
      cautions: ['species', 'moving'],
    },
  ]
}

/** The first release of next year: as its season says, else on this year's date. Days of this season. */
function nextRelease(
  { plan, year }: Context,
  bee: Flight['bee'],
  firstRelease: number,
): { readonly day: number; readonly isGiven: boolean } {
  const given =
    seasonOf(plan, year + 1) === undefined
      ? []
      : batchesOf(plan, year + 1)
          .filter(batch => batch.bee === bee && batch.release.females > 0 && isIsoDate(batch.release.date))
          .map(({ release }) => dayOfSeason(release.date, year))
  if (given.length > 0) return { day: Math.min(...given), isGiven: true }
  // The same distance from New Year: a leap day in between is no matter here.
  return { day: dayOfSeason(dateOfDay(firstRelease, year + 1), year), isGiven: false }
}
