import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bloomCurve, bloomWeight } from '#geo/bloom/bloom'
import { defaultBloom } from '#geo/bloom/defaults'
import type { TaskKind } from '#geo/calendar/task'
import { seasonTasks } from '#geo/calendar/tasks'
import { type BeeId, type BloomRegion, beeIds } from '#geo/data/own'
import { settingsFor } from '#geo/data/settings'
import { bestRelease } from '#geo/flight/flight'
import type { Bloom, Feature, Plan, Season } from '#geo/plan/plan'
import { addDays, dateOfDay, daysBetween, type IsoDate } from '#geo/time/day'
import { smallPlan, smallSeason } from '../support/builders'
import { scenarios } from '../support/scenario-maker'
import { scenarioPlan } from '../support/scenario-reports'

/** The work of a season against what keepers take for granted. Common practice, no source, unless a source is named. */

function datesOf(plan: Plan, year: number): Readonly<Record<TaskKind, readonly IsoDate[]>> {
  const outcome = seasonTasks(plan, year)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  const kinds = new Map<string, IsoDate[]>()
  for (const { kind, date } of outcome.value) kinds.set(kind, [...(kinds.get(kind) ?? []), date])
  return Object.fromEntries(kinds) as Record<TaskKind, IsoDate[]>
}

function recordedOf(plan: Plan, year: number): (kind: TaskKind) => boolean {
  const outcome = seasonTasks(plan, year)
  const tasks = outcome.ok ? outcome.value : []
  return kind => tasks.some(task => task.kind === kind && task.why.startsWith('Recorded'))
}

const settings = settingsFor({ parameters: {}, crops: {} })

/** A plan that knows nothing but where it lies: default bloom of apple, one batch on the day that suits it best. */
function plainPlan(region: BloomRegion, bee: BeeId, isSouthern = false): Plan {
  const { bloom } = defaultBloom(settings.crops.apple!, { region, year: 2026, isSouthern })!
  const { day } = bestRelease(bloomWeight(bloomCurve(bloom, 2026)), settings.bees[bee])
  const releases = [{ date: dateOfDay(day, 2026), females: 60, males: 108 }]
  const season = { year: 2026, bloom: { apple: bloom }, stations: { 'station-1': { releases } } }
  return smallPlan({ bee, bloomRegion: region, seasons: [season] })
}

describe('in a mild maritime spring', () => {
  const mild = (['maritime-northwest', 'southern-england'] as const).flatMap(region =>
    (['osmia-lignaria', 'osmia-bicornis', 'osmia-cornuta'] as const).map(bee => [region, bee] as const),
  )

  // Common practice, no source: bought and installed in January to early February; flight to late May, bees back in the
  // nest by early June; nests taken in from mid-June to early August. A week is allowed either way: years lie weeks apart.
  test.each(mild)('%s: the %s keeps to the usual months', (region, bee) => {
    const dates = datesOf(plainPlan(region, bee), 2026)
    const within = (kind: TaskKind, from: string, to: string) => {
      for (const date of dates[kind]) {
        expect(daysBetween(addDays(`2026-${from}`, -7), date), `${kind} ${date}`).toBeGreaterThanOrEqual(0)
        expect(daysBetween(date, addDays(`2026-${to}`, 7)), `${kind} ${date}`).toBeGreaterThanOrEqual(0)
      }
    }
    within('stations-up', '01-01', '02-10')
    within('flight-over', '05-20', '06-07')
    within('take-in', '06-15', '08-07')
    within('opening', '10-01', '11-30')
    within('share-out', '10-15', '12-15')
  })
})

describe.each(scenarios.flatMap(({ name, years }) => years.map(year => [name, year] as const)))(
  '%s in %i',
  (name, year) => {
    const dates = datesOf(scenarioPlan(name), year)
    const isRecorded = recordedOf(scenarioPlan(name), year)
    const dayAndMonth = (kind: TaskKind) => dates[kind].map(date => date.slice(5))

    // What is written down stands as it is: nests may be opened before the cold.
    test('keeps the order of the year', () => {
      const order = [
        'stations-up',
        'mud',
        'release',
        'round',
        'flight-over',
        'take-in',
        'cold',
        'opening',
        'share-out',
        'order',
      ]
      const firsts = (order as TaskKind[]).filter(kind => !isRecorded(kind)).map(kind => dates[kind][0]!)
      expect(firsts).toEqual([...firsts].sort())
    })

    // The sites are invented, their springs early and late: a mild valley and a plain whose bees fly from mid-March.
    test('falls into plausible months', () => {
      for (const day of dayAndMonth('stations-up')) expect(day >= '01-01' && day <= '03-10', day).toBe(true)
      for (const day of dayAndMonth('flight-over')) expect(day >= '04-15' && day <= '06-30', day).toBe(true)
      for (const day of dayAndMonth('take-in')) expect(day >= '05-25' && day <= '08-10', day).toBe(true)
      for (const day of dayAndMonth('cold')) expect(day >= '08-15' && day <= '11-10', day).toBe(true)
      for (const day of dayAndMonth('opening')) expect(day >= '10-01' || day >= '09-15', day).toBe(true)
    })

    // Mader, Spivak & Evans 2010: 100 to 200 days of cold; Bosch & Kemp 2003: no harm to 210 at up to 4 degC.
    test('leaves cocoons cold for as long as the handbook wants, to the same day next spring', () => {
      const [first] = dates.release
      const next = `${year + 1}${first!.slice(4)}`
      for (const date of dates.cold) {
        expect(daysBetween(date, next)).toBeGreaterThanOrEqual(100)
        expect(daysBetween(date, next)).toBeLessThanOrEqual(210)
      }
    })
  },
)

// Bosch & Kemp 2004: the European orchard bee is best after 90 to 150 days; a bee set out in March has longer to wait.
test('a winter that is too long for a bee is told with what suits it', () => {
  const outcome = seasonTasks(scenarioPlan('farm'), 2025)
  const cold = (outcome.ok ? outcome.value : []).filter(({ kind }) => kind === 'cold').map(({ why }) => why)
  expect(cold[0]).toMatch(/are 19\d days: more than the 90 to 150 that suit it; where autumn is cool/)
  expect(cold[1]).toMatch(/are 1[67]\d days: 120 to 180 suit it\.$/)
})

describe('south of the equator', () => {
  test('the same work falls half a year later', () => {
    const north = datesOf(plainPlan('maritime-northwest', 'osmia-lignaria'), 2026)
    const south = datesOf(plainPlan('maritime-northwest', 'osmia-lignaria', true), 2026)
    for (const kind of Object.keys(north) as TaskKind[]) {
      for (const [i, date] of north[kind].entries()) {
        // Defaults move by half a year; next spring is a calendar year on, which a leap day may stretch by one.
        expect(Math.abs(daysBetween(date, south[kind][i]!) - 183), kind).toBeLessThanOrEqual(1)
      }
    }
    expect(south['stations-up'][0]!.slice(0, 4)).toBe('2026')
    expect(south['take-in'][0]!.slice(0, 7)).toMatch(/^2026-12|2027-01/)
    expect(south.cold[0]!.slice(0, 4)).toBe('2027')
  })

  test('a plan whose dates all move, moves its calendar with them and its tasks stay what they are', () => {
    fc.assert(
      fc.property(fc.integer({ min: -60, max: 300 }), fc.constantFrom(...beeIds), (days, bee) => {
        const plan = { ...smallPlan({ seasons: [smallSeason(2026)] }), bee }
        const before = seasonTasks(plan, 2026)
        const after = seasonTasks({ ...plan, seasons: [moved(plan.seasons[0]!, days)] }, 2026)
        if (!before.ok || !after.ok) throw new Error('no tasks')
        // By kind: where two fall on one day, a leap day may change which comes first.
        const byUid = new Map(after.value.map(task => [task.uid, task.date]))
        for (const { uid, date, kind } of before.value) {
          const shift = daysBetween(date, byUid.get(uid)!)
          expect(Math.abs(shift - days), kind).toBeLessThanOrEqual(kind === 'order' ? 1 : 0)
        }
      }),
      { seed: 20260921, numRuns: 60 },
    )
  })
})

function moved(season: Season, days: number): Season {
  const bloom = Object.fromEntries(
    Object.entries(season.bloom!).map(([key, { first, full, end }]): [string, Bloom] => [
      key,
      { first: addDays(first, days), full: addDays(full, days), end: addDays(end, days) },
    ]),
  )
  const stations = Object.fromEntries(
    Object.entries(season.stations!).map(([id, use]) => [
      id,
      { ...use, releases: use.releases!.map(each => ({ ...each, date: addDays(each.date, days) })) },
    ]),
  )
  return { ...season, bloom, stations }
}

/** Stations on the other side of the world change nothing by themselves: days follow dates, not latitudes. */
test('where a plan lies does not move its days', () => {
  const south = smallPlan().features.map((feature): Feature => {
    const turned = JSON.stringify(feature.geometry.coordinates).replaceAll(/52\./g, '-41.')
    return { ...feature, geometry: { ...feature.geometry, coordinates: JSON.parse(turned) } } as Feature
  })
  expect(datesOf(smallPlan({ features: south }), 2026)).toEqual(datesOf(smallPlan(), 2026))
})
