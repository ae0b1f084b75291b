import { describe, expect, test } from 'vitest'
import type { Task, TaskKind } from '#geo/calendar/task'
import { seasonTasks } from '#geo/calendar/tasks'
import { seasonWork } from '#geo/data/season-work'
import { setBloom, setReleases } from '#geo/plan/edits-seasons'
import { setPlanMembers } from '#geo/plan/edits-settings'
import type { Plan, Release, Season, WeatherDay } from '#geo/plan/plan'
import { addDays, daysBetween, type IsoDate } from '#geo/time/day'
import { smallPlan, smallSeason, stationFeature } from '../../support/builders'

function tasksOf(plan: Plan, year = 2026): readonly Task[] {
  const outcome = seasonTasks(plan, year)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const of = (plan: Plan, kind: TaskKind): readonly Task[] => tasksOf(plan).filter(task => task.kind === kind)
const one = (plan: Plan, kind: TaskKind): Task => {
  const found = of(plan, kind)
  expect(found).toHaveLength(1)
  return found[0]!
}
const codesOf = (plan: Plan, year = 2026) => seasonTasks(plan, year).problems.map(({ code }) => code)
const withSeason = (season: Season): Plan => smallPlan({ seasons: [season] })
const withReleases = (...releases: Release[]): Plan => setReleases(2026, 'station-1', releases).apply(smallPlan())

describe('a season with everything', () => {
  const plan = smallPlan()

  test('has one task of every kind, in the order of the days', () => {
    const tasks = tasksOf(plan)
    expect(tasks.map(({ kind }) => kind)).toEqual([
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
    ])
    expect([...tasks].map(({ date }) => date)).toEqual([...tasks].map(({ date }) => date).sort())
  })

  test('counts its days from the release and the flight by the figures of the table', () => {
    const release = '2026-04-06'
    expect(one(plan, 'release').date).toBe(release)
    expect(one(plan, 'stations-up').date).toBe(addDays(release, -seasonWork.stationsUp.value))
    expect(one(plan, 'mud').date).toBe(addDays(release, -seasonWork.mudBefore.value))
    const last = one(plan, 'flight-over').date
    const takeIn = one(plan, 'take-in').date
    const cold = one(plan, 'cold').date
    const opening = one(plan, 'opening').date
    expect(daysBetween(last, takeIn)).toBe(seasonWork.takeInAfter.value)
    expect(daysBetween(last, cold)).toBe(seasonWork.eggToAdult.value + seasonWork.adultToCold.value)
    expect(daysBetween(cold, opening)).toBe(seasonWork.openAfterCold.value)
    expect(daysBetween(opening, one(plan, 'share-out').date)).toBe(seasonWork.shareOutAfter.value)
    expect(one(plan, 'order').date).toBe(addDays('2027-04-06', -seasonWork.orderBefore.value))
  })

  test('sees the flight end where one in seven of the busiest day is left', () => {
    // One batch: the busiest day is past all starts but a few; from then on exp(-t/18), and 18 ln(1/0.15) = 34.1 days.
    const days = daysBetween('2026-04-06', one(plan, 'flight-over').date)
    expect(days).toBeGreaterThan(8 + 34)
    expect(days).toBeLessThan(8 + 34 + 6)
  })

  test('walks its rounds from the first nesting to the last flight and not beyond', () => {
    const { date, repeats } = one(plan, 'round')
    expect(date).toBe('2026-04-14')
    const last = addDays(date, repeats!.everyDays * (repeats!.times - 1))
    const over = one(plan, 'flight-over').date
    expect(last <= over).toBe(true)
    expect(addDays(last, repeats!.everyDays) > over).toBe(true)
  })

  test('says why with the figures, and what is set out where', () => {
    const { title, why, steps } = one(plan, 'release')
    expect(title).toBe('Set out cocoons at North gate')
    expect(why).toContain('14 April 2026, 8 days (6 to 12) later')
    // On 14 April the clover is open, the apple (first 17 April) not yet a tenth.
    expect(why).toContain('open near then: Clover bank (to 10 June 2026)')
    expect(why).not.toContain('Apple')
    expect(steps).toEqual(['North gate: 60 female and 108 male cocoons, blue orchard bee.'])
    for (const task of tasksOf(plan)) expect(task.why, task.kind).toMatch(/^[A-Z0-9].*\d.*\.$/)
  })

  test('carries a caution wherever the work can hurt someone', () => {
    const cautions = Object.fromEntries(tasksOf(plan).map(task => [task.kind, task.cautions]))
    expect(cautions['stations-up']).toContain('ladder')
    expect(cautions.mud).toContain('water')
    expect(cautions.release).toEqual(expect.arrayContaining(['species', 'moving', 'sprays']))
    expect(cautions.round).toEqual(expect.arrayContaining(['stings', 'sprays']))
    expect(cautions['take-in']).toContain('stings')
    expect(cautions.cold).toContain('fridge')
    expect(cautions.opening).toEqual(expect.arrayContaining(['dust', 'cleaning']))
    expect(cautions.order).toContain('species')
  })

  test('goes by the next season’s releases where they are given', () => {
    const next = smallSeason(2027)
    const releases = [{ date: '2027-03-20', females: 50, males: 90 }]
    const given = smallPlan({ seasons: [...plan.seasons, { ...next, stations: { 'station-1': { releases } } }] })
    expect(one(given, 'order').date).toBe(addDays('2027-03-20', -seasonWork.orderBefore.value))
    expect(one(given, 'cold').why).toContain('given as 20 March 2027')
  })

  test('goes by the grower’s own figures', () => {
    const own = smallPlan({ parameters: { 'osmia-lignaria': { lag: 20, nestingLife: 30 } } })
    expect(one(own, 'round').date).toBe('2026-04-26')
    expect(one(own, 'flight-over').date > one(plan, 'flight-over').date).toBe(true)
    expect(one(own, 'release').why).toContain('20 days later')
  })

  test('tells the ladder at every visit of a station that is set high', () => {
    const high = plan.features.map(feature =>
      feature.id === 'station-1' && feature.properties.kind === 'station'
        ? { ...feature, properties: { ...feature.properties, height: 2.5 } }
        : feature,
    )
    const tall = smallPlan({ features: high as Plan['features'] })
    for (const kind of ['release', 'round', 'take-in'] as const) {
      expect(one(tall, kind).cautions, kind).toContain('ladder')
      expect(one(plan, kind).cautions, kind).not.toContain('ladder')
    }
  })
})

describe('releases', () => {
  const batch = (date: string, patch: Partial<Release> = {}): Release => ({ date, females: 10, males: 18, ...patch })
  const twoStations = (first: string, second: string): Plan => {
    const uses = { 'station-1': { releases: [batch(first)] }, 'station-2': { releases: [batch(second)] } }
    return withSeason({ ...smallSeason(2026), stations: uses })
  }

  test('of one day are one task', () => {
    const [task, ...more] = of(twoStations('2026-04-06', '2026-04-06'), 'release')
    expect(more).toEqual([])
    expect(task).toMatchObject({ title: 'Set out cocoons at 2 stations' })
    expect(task!.steps).toHaveLength(2)
    expect(of(twoStations('2026-04-06', '2026-04-08'), 'release').map(({ title }) => title)).toEqual([
      'Set out cocoons at North gate, batch 1 of 2',
      'Set out cocoons at station-2, batch 2 of 2',
    ])
  })

  test('without a number of males say so, and take no 0 for it', () => {
    const [task] = of(withReleases({ date: '2026-04-06', females: 60 }), 'release')
    expect(task!.steps).toEqual(['North gate: 60 female cocoons, males not said, blue orchard bee.'])
  })

  test('of no cocoons are none', () => {
    const plan = withReleases(batch('2026-04-06', { females: 0, males: 0 }))
    expect(of(plan, 'release')).toEqual([])
    expect(codesOf(plan)).toContain('calendar-no-releases')
  })

  test('of males alone make no flight of nesting females', () => {
    const plan = withReleases(batch('2026-04-06', { females: 0 }))
    expect(tasksOf(plan).map(({ kind }) => kind)).toEqual(['stations-up', 'mud', 'release'])
    expect(codesOf(plan)).toEqual(['calendar-no-females'])
  })

  test('of two species end, and are taken in and cooled, each on its own days', () => {
    const uses = {
      'station-1': { bee: 'osmia-cornuta', releases: [batch('2026-03-10')] },
      'station-2': { bee: 'osmia-bicornis', releases: [batch('2026-04-12')] },
    } as const
    const plan = withSeason({ ...smallSeason(2026), stations: uses })
    for (const kind of ['flight-over', 'take-in', 'cold'] as const) {
      const [early, late] = of(plan, kind)
      expect(early!.title).toContain('European orchard bee')
      expect(late!.title).toContain('red mason bee')
      expect(early!.date < late!.date).toBe(true)
    }
    expect(one(plan, 'opening').date > of(plan, 'cold')[1]!.date).toBe(true)
  })
})

describe('what cannot be known', () => {
  test('is told where no cocoons are set out, and what hangs on bloom is kept', () => {
    const plan = withReleases()
    expect(tasksOf(plan).map(({ kind }) => kind)).toEqual(['stations-up', 'mud'])
    expect(codesOf(plan)).toEqual(['calendar-no-releases'])
    expect(one(plan, 'stations-up').why).toContain('No release is given; Clover bank, the first to bloom,')
  })

  test('is told where no station is in use', () => {
    const plan = withSeason({ year: 2026, bloom: smallSeason(2026).bloom! })
    expect(tasksOf(plan).map(({ kind }) => kind)).toEqual(['stations-up', 'mud'])
    expect(codesOf(plan)).toEqual(['calendar-no-stations'])
    expect(one(plan, 'stations-up').title).toBe('Put up the nest stations')
  })

  test('is told where nothing has bloom dates; the days of work stand all the same', () => {
    const plan = setBloom(2025, 'apple', null).apply(smallPlan())
    const outcome = seasonTasks(plan, 2025)
    expect(outcome.problems).toMatchObject([{ code: 'calendar-no-bloom', severity: 'note' }])
    const tasks = tasksOf(plan, 2025)
    expect(tasks).toHaveLength(10)
    expect(tasks.find(({ kind }) => kind === 'release')!.why).toContain(
      'no blossom with known dates is drawn within 150 m.',
    )
  })

  test('leaves no calendar where nothing at all is known', () => {
    expect(seasonTasks(withSeason({ year: 2026 }), 2026)).toMatchObject({
      ok: false,
      problems: [{ code: 'calendar-empty', severity: 'error' }],
    })
  })

  test('is the problem of a season that is not there, or of a plan that is wrong', () => {
    expect(codesOf(smallPlan(), 2031)).toContain('no-season')
    expect(seasonTasks(withReleases(batchOn('2026-02-30')), 2026)).toMatchObject({ ok: false })
  })
})

const batchOn = (date: string): Release => ({ date, females: 10, males: 18 })

describe('what a task is known by', () => {
  const uids = (plan: Plan) => tasksOf(plan).map(({ uid }) => uid)
  const plan = withReleases(batchOn('2026-04-06'), batchOn('2026-04-20'))

  test('is its own, in the season and among seasons', () => {
    const all = [...uids(plan), ...tasksOf(plan, 2025).map(({ uid }) => uid)]
    expect(new Set(all).size).toBe(all.length)
    for (const uid of all) expect(uid).toMatch(/^nestreach-\d{4}-[a-z-]+-[0-9a-f]{16}$/)
  })

  test('stays when a batch is put off by two days, its numbers change and things get other names', () => {
    const later = { date: '2026-04-08', females: 4, males: 9, lot: 'B' }
    const moved = setReleases(2026, 'station-1', [later, batchOn('2026-04-20')]).apply(plan)
    const renamed = setPlanMembers({ name: 'Another name' }).apply(moved)
    expect(uids(renamed)).toEqual(uids(plan))
    const dates = tasksOf(renamed).map(({ date }) => date)
    expect(dates).not.toEqual(tasksOf(plan).map(({ date }) => date))
    expect(dates).toContain('2026-04-08')
  })

  test('stays for the other batches where one station’s is moved away from the rest', () => {
    const both = (date: string): Plan => {
      const uses = {
        'station-1': { releases: [batchOn('2026-04-06'), batchOn('2026-04-20')] },
        'station-2': { releases: [batchOn(date), batchOn('2026-04-20')] },
      }
      return withSeason({ ...smallSeason(2026), stations: uses })
    }
    const before = uids(both('2026-04-06'))
    const after = uids(both('2026-04-08'))
    expect(after).toEqual(expect.arrayContaining(before))
    expect(after).toHaveLength(before.length + 1)
  })

  test('is another for another plan', () => {
    const [first, ...rest] = plan.features
    const other = smallPlan({ ...plan, features: [{ ...first!, id: 'row-x' }, ...rest] })
    expect(uids(other).filter(uid => uids(plan).includes(uid))).toEqual([])
  })
})

describe('what is written down stands in place of what was expected', () => {
  const plan = smallPlan()
  const recorded = (records: Season['records'], more: readonly Season[] = []): Plan =>
    smallPlan({ seasons: [{ ...plan.seasons.find(({ year }) => year === 2026)!, records: records! }, ...more] })

  test('the day nests were taken in, and the day they were opened', () => {
    const opening = { date: '2026-10-30', cells: 60, females: 20, males: 30 }
    const done = recorded({ 'station-1': { takenIn: '2026-06-20', opening } })
    expect(one(done, 'take-in')).toMatchObject({
      date: '2026-06-20',
      uid: one(plan, 'take-in').uid,
      why: 'Recorded as taken in: North gate on 20 June 2026.',
    })
    expect(one(done, 'opening').date).toBe('2026-10-30')
    expect(one(done, 'opening').why).toMatch(/^Recorded as opened: North gate on 30 October 2026\.$/)
    expect(one(done, 'share-out').date).toBe(addDays('2026-10-30', seasonWork.shareOutAfter.value))
  })

  test('of one of two stations leaves the day for the other, and says so', () => {
    const features = [...plan.features, stationFeature('station-9', { name: 'South' }, [6, 1])]
    const season = plan.seasons.find(({ year }) => year === 2026)!
    const stations = { ...season.stations, 'station-9': season.stations!['station-1']! }
    const two = smallPlan({ features, seasons: [{ ...season, stations }] })
    const half = smallPlan({
      features,
      seasons: [{ ...season, stations, records: { 'station-1': { takenIn: '2026-06-20' } } }],
    })
    expect(one(half, 'take-in').date).toBe(one(two, 'take-in').date)
    expect(one(half, 'take-in').why).toMatch(
      /^Recorded as taken in: North gate on 20 June 2026\. For the others: 38 days/,
    )
  })

  test('the start of the cold, which next season tells, moves what follows it', () => {
    const next = { year: 2027, coldStore: { from: '2026-10-10' } }
    const cold = recorded(undefined, [next])
    expect(one(cold, 'cold').date).toBe('2026-10-10')
    expect(one(cold, 'cold').why).toMatch(/^Recorded as cold since 10 October 2026\. To next year's first release/)
    expect(one(cold, 'opening').date).toBe(addDays('2026-10-10', seasonWork.openAfterCold.value))
  })

  test('days that are none change nothing', () => {
    const odd = recorded({ 'station-1': { takenIn: '2026-06-31' as IsoDate } })
    expect(one(odd, 'take-in')).toEqual(one(plan, 'take-in'))
  })
})

describe('the last flight with weather', () => {
  const plan = smallPlan()
  const days = (from: IsoDate, count: number, max: number) =>
    Array.from({ length: count }, (_, i): WeatherDay => [addDays(from, i), 4, max, 0, 1])
  const withDays = (...weather: ReturnType<typeof days>) =>
    smallPlan({ seasons: [{ ...plan.seasons.find(({ year }) => year === 2026)!, weather: { days: weather } }] })
  const typical = one(plan, 'flight-over').date

  test('comes sooner where the last of the days are too cold to fly, later where they are fine', () => {
    const cold = one(withDays(...days(addDays(typical, -9), 30, 8)), 'flight-over')
    expect(cold.date).toBe(addDays(typical, -10))
    expect(cold.why).toContain("The season's weather is in it")
    expect(one(withDays(...days(addDays(typical, -9), 40, 27)), 'flight-over').date > typical).toBe(true)
  })

  test('does not hang on days long before', () => {
    const fine = one(withDays(...days('2026-04-14', 5, 27)), 'flight-over')
    expect(fine.date).toBe(typical)
    expect(one(withDays(...days('2026-01-01', 5, 8)), 'flight-over').why).toBe(one(plan, 'flight-over').why)
  })
})

test('a release names only blossom near its own station', () => {
  const plan = smallPlan()
  // Three hundredths of a degree north: over 3 km, out of reach of all that is drawn.
  const far = stationFeature('station-9', { name: 'Far' }, [5, 300])
  const season = plan.seasons.find(({ year }) => year === 2026)!
  const stations = { ...season.stations, 'station-9': { releases: [{ date: '2026-04-12', females: 40, males: 70 }] } }
  const tasks = tasksOf(smallPlan({ features: [...plan.features, far], seasons: [{ ...season, stations }] }))
  const [near, away] = tasks.filter(({ kind }) => kind === 'release')
  expect(near!.why).toContain('open near then: Clover bank')
  expect(away!.why).toMatch(/no blossom with known dates is drawn within 150 m\.$/)
})
