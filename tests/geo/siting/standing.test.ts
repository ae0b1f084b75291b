import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { acceptSuggestion } from '#geo/siting/accept'
import type { CandidateSite } from '#geo/siting/candidates'
import { leastCost } from '#geo/siting/least-cost'
import { moversTo } from '#geo/siting/movers'
import type { SuggestOptions } from '#geo/siting/question'
import { suggest } from '#geo/siting/suggest'
import type { Suggestion } from '#geo/siting/suggestion'
import { leastCostBound } from '#geo/siting/target-bound'
import { targetProgramme } from '#geo/siting/target-programme'
import { planeAt } from '#geo/space/plane'
import { highsSolver } from '#geo/stocking/highs-solver'
import { releaseAdvice } from '#geo/timing/release-advice'
import { at, block, marks, middle, planOf, station } from '../../support/orchard'
import { randomTarget } from '../../support/siting-instances'

const solver = highsSolver(await loadHighs())
const plane = planeAt(middle)
const prices = { station: 40, femaleCocoon: 1, maleCocoon: 0, tube: 0 }

async function answer(plan: Plan, options: SuggestOptions): Promise<Suggestion> {
  const outcome = await suggest(plan, 2026, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

/** Coverage of the plan once an answer is accepted, and the plan itself. */
function accepted(plan: Plan, found: Suggestion) {
  const changed = acceptSuggestion(plan, found).apply(plan)
  const report = evaluate(changed, 2026)
  if (!report.ok) throw new Error('no report')
  return { changed, coverage: report.value.orchard.coverage }
}

function siteAt(lng: number, lat: number): CandidateSite {
  const notes = { mud: null, shelter: null, isInLane: false }
  return { ...plane.toMetres([lng, lat]), id: '', at: [lng, lat], source: 'open', notes }
}

const april = [{ date: '2026-04-06', females: 80, males: 144 }]
const ground = [...marks, block('block', [-40, -30, 40, 30])]
/** A stocked station a good way off the block. */
const off = planOf({ features: [...ground, station('old', 60, 0)], stock: { old: april } })

describe('a station that moves', () => {
  it('for a target saves a new station, and is stocked anew at the price of that', async () => {
    const question = { kind: 'target', coverage: 0.8 } as const
    const kept = await answer(off, { question, prices })
    const moved = await answer(off, { question, prices, roles: { old: 'move' } })
    const mover = moved.stations.find(({ id }) => id === 'old')
    expect(mover).toMatchObject({ new: false, bought: true, reused: false })
    const fresh = moved.stations.filter(each => each.new).length
    const cocoons = moved.stations.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0)
    // The 80 cocoons that it has need not be bought, nor does it count as dearer for the tubes that hang there.
    expect(moved.inHand).toMatchObject([{ id: 'old', femaleCocoons: 80, maleCocoons: 144 }])
    expect(moved.cost).toBeCloseTo(40 * fresh + Math.max(0, cocoons - 80), 9)
    expect(moved.cost).toBeLessThanOrEqual(kept.cost)
    expect(moved.cost).toBeGreaterThanOrEqual(moved.bound.cost! - 1e-6)
    expect(moved.reached && kept.reached).toBe(true)
    const { changed, coverage } = accepted(off, moved)
    expect(coverage).toBe(moved.after.coverage)
    expect(changed.seasons[0]!.stations!.old!.releases!.map(({ females }) => females)).toEqual([mover!.femaleCocoons])
  })

  it('goes to the nearest place, stays where it stands if that is one, and is spared where none is left', () => {
    const sites = [at(0, 0), at(50, 0), at(200, 0)].map(([x, y], i) => ({ ...siteAt(x, y), id: `place-${i}` }))
    const standing = { ...sites[2]!, id: 'b' }
    const movers = [
      { id: 'a', ...plane.toMetres(at(60, 0)) },
      { id: 'b', ...plane.toMetres(at(200, 0)) },
      { id: 'c', ...plane.toMetres(at(90, 0)) },
    ]
    const unused = new Set(['place-0'])
    const all = [...sites.slice(0, 2), standing]
    const { moverOf, spared } = moversTo({ movers, unused, sites: all }, [0, 1, 2])
    expect([...moverOf].sort()).toEqual([
      [1, 'a'],
      [2, 'b'],
    ])
    expect(spared).toEqual(['c'])
  })

  it('takes its bees along where money or cocoons are shared out, at no cost', async () => {
    for (const question of [
      { kind: 'money', amount: 120 },
      { kind: 'cocoons', cocoons: 60, stations: 1 },
    ] as const) {
      const kept = await answer(off, { question, prices })
      const moved = await answer(off, { question, prices, roles: { old: 'move' } })
      expect(moved.after.coverage).toBeGreaterThan(kept.after.coverage!)
      expect(moved.after.coverage).toBeLessThanOrEqual(moved.bound.coverage!)
      expect(moved.stations.find(({ id }) => id === 'old')).toMatchObject({ bought: false, femaleCocoons: 80 })
      const bought = moved.stations.filter(each => each.bought)
      const cocoons = bought.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0)
      expect(moved.cost).toBeCloseTo(40 * bought.length + cocoons, 9)
      if (question.kind === 'money') expect(moved.cost).toBeLessThanOrEqual(120)
      else expect(cocoons).toBe(60)
      expect(accepted(off, moved).coverage).toBe(moved.after.coverage)
    }
  })

  it('moves even where the money buys nothing', async () => {
    const found = await answer(off, { question: { kind: 'money', amount: 5 }, prices, roles: { old: 'move' } })
    expect(found).toMatchObject({ cost: 0, stations: [{ id: 'old' }] })
    expect(found.after.coverage).toBeGreaterThan(found.before.coverage!)
  })

  it('stays, and that is said, where it has no bees to take along or other bees than a target asks for', async () => {
    const empty = planOf({ features: [...ground, station('old', 60, 0)], stock: { old: [] } })
    const roles = { old: 'move' } as const
    const told = { kind: 'not-moved', stations: ['old'] }
    const none = await answer(empty, { question: { kind: 'stations', count: 1 }, roles })
    expect(none.cautions).toContainEqual(told)
    const other = await answer(off, { question: { kind: 'target', coverage: 0.3 }, roles, bee: 'osmia-bicornis' })
    expect(other.cautions).toContainEqual(told)
    expect(other.dropped).toEqual([])
  })

  it('saves no more than the solver says it can', async () => {
    const problem = { ...randomTarget({ points: 60, sites: 12, kernel: 'typical', seed: 4 }), free: 2 }
    const proof = await solver(targetProgramme(problem), { timeLimit: 60, gap: 0.99 })
    const found = leastCost(problem)!
    expect(proof.status).toBe('proven')
    expect(found.cost).toBeGreaterThanOrEqual(proof.objective! - 1e-6)
    expect(found.cost).toBeLessThanOrEqual(proof.objective! * 1.005)
    expect(leastCostBound(problem)).toBeLessThanOrEqual(proof.objective! + 1e-6)
    expect(found.cost).toBeLessThan(leastCost({ ...problem, free: 0 })!.cost)
  })
})

describe('a station that stands unused', () => {
  const plan = planOf({ features: [...ground, station('spare', 0, 0)] })

  it('is taken where it does as well, under its own id and without the price of a station', async () => {
    const found = await answer(plan, { question: { kind: 'stations', count: 1 }, prices })
    expect(found.stations).toMatchObject([{ id: 'spare', new: false, reused: true, bought: true, source: 'station' }])
    expect(found.cost).toBe(found.stations[0]!.femaleCocoons)
    const { changed, coverage } = accepted(plan, found)
    expect(coverage).toBe(found.after.coverage)
    expect(changed.features).toEqual(plan.features)
  })

  it('is worth its price where money is spent', async () => {
    const found = await answer(plan, { question: { kind: 'money', amount: 30 }, prices })
    expect(found.stations).toMatchObject([{ id: 'spare', femaleCocoons: 30 }])
    expect(found.cost).toBeLessThanOrEqual(30)
    expect(found.after.coverage).toBeLessThanOrEqual(found.bound.coverage!)
  })

  it('is left alone where it does not stand in that year, or stands too near to one that stays', async () => {
    const spare = plan.features.find(({ id }) => id === 'spare')!
    const gone = { ...spare, properties: { kind: 'station' as const, until: 2024 } }
    const past = { ...plan, features: [...ground, gone] as Plan['features'] }
    expect((await answer(past, { question: { kind: 'stations', count: 1 } })).stations[0]!.new).toBe(true)
    const near = planOf({
      features: [...ground, station('spare', 0, 0), station('old', 5, 0)],
      stock: { old: april },
    })
    expect((await answer(near, { question: { kind: 'stations', count: 1 } })).stations[0]!.new).toBe(true)
  })
})

it('a new station has the release dates of the nearest stocked one', async () => {
  const blocks = [block('west', [-160, -30, -100, 30]), block('east', [100, -30, 160, 30])]
  const plan = planOf({
    features: [...marks, ...blocks, station('w', -90, 0), station('e', 90, 0)],
    stock: { w: april, e: [{ date: '2026-04-20', females: 80, males: 144 }] },
  })
  const { stations } = await answer(plan, { question: { kind: 'stations', count: 2 } })
  expect(stations).toHaveLength(2)
  for (const { at, releases } of stations) {
    const date = plane.toMetres(at).x < 0 ? '2026-04-06' : '2026-04-20'
    expect(releases.map(each => each.date)).toEqual([date])
  }
})

it('a new station has the advised dates where they are asked for', async () => {
  const late = planOf({
    features: [...ground, station('old', 60, 0)],
    stock: { old: [{ date: '2026-05-04', females: 80 }] },
  })
  const question = { kind: 'stations', count: 1 } as const
  const season = await answer(late, { question })
  const advised = await answer(late, { question, dates: 'advice' })
  expect(season.stations[0]!.releases.map(({ date }) => date)).toEqual(['2026-05-04'])
  const advice = releaseAdvice(late, 2026, { scope: 'orchard', batches: 3 })
  if (!advice.ok) throw new Error('no advice')
  const dates = advice.value.stations[0]!.batches.map(({ date }) => date)
  expect(advised.stations[0]!.releases.map(({ date }) => date)).toEqual(dates)
  expect(advised.after.coverage).toBeGreaterThan(season.after.coverage!)
})

describe('a proof', () => {
  // Few places of the grower's own and one small block: the solver is through in no time.
  const own = [at(0, 0), at(15, 0), at(-15, 5), at(-10, -12), at(12, 12), at(30, 0)].map((place, i) => ({
    type: 'Feature' as const,
    id: `c${i}`,
    geometry: { type: 'Point' as const, coordinates: place },
    properties: { kind: 'candidate' as const },
  }))
  const features = [...marks, block('block', [-20, -15, 20, 15], { spacing: 5, rowSpacing: 5 }), ...own]
  const small = planOf({ features: features as Plan['features'] })
  const common = { prices, tubes: 300, places: { spacing: 10 } }
  const prove = { solver, timeLimit: 60 }

  it.each([
    { kind: 'money', amount: 150 },
    { kind: 'cocoons', cocoons: 90, stations: 2 },
  ] as const)('closes the bound of $kind', async question => {
    const found = await answer(small, { question, ...common })
    const proven = await answer(small, { question, ...common, prove })
    expect(proven.bound.coverage).toBeLessThanOrEqual(found.bound.coverage! + 1e-9)
    expect(proven.after.coverage).toBeGreaterThanOrEqual(found.after.coverage! - 1e-9)
    expect(proven.after.coverage).toBeLessThanOrEqual(proven.bound.coverage!)
    // What is left is that cocoons are whole: one of about ninety.
    expect(proven.bound.coverage! - proven.after.coverage!).toBeLessThan(2 / 90)
  })

  it('of a target never makes it dearer, and reaches it', async () => {
    const question = { kind: 'target', coverage: 0.8 } as const
    const found = await answer(small, { question, ...common })
    const proven = await answer(small, { question, ...common, prove })
    expect(proven.reached).toBe(true)
    expect(proven.cost).toBeLessThanOrEqual(found.cost + 1e-9)
    expect(proven.bound.cost).toBeGreaterThanOrEqual(found.bound.cost! - 1e-6)
  })
})

it('tells the best answer so far with a bound that holds, made only when asked for', async () => {
  for (const question of [
    { kind: 'stations', count: 2 },
    { kind: 'money', amount: 200 },
    { kind: 'target', coverage: 0.6 },
  ] as const) {
    const soFar: Suggestion[] = []
    const found = await answer(off, {
      question,
      prices,
      onProgress: (_, best) => {
        if (best !== undefined && soFar.length < 2) soFar.push(best())
      },
    })
    expect(soFar.length).toBeGreaterThan(0)
    for (const { after, bound, cost, stations, reached } of soFar) {
      expect(stations.length).toBeGreaterThan(0)
      if (question.kind === 'target') {
        expect(reached).toBe(true)
        expect(cost).toBeGreaterThanOrEqual(bound.cost!)
        expect(found.cost).toBeLessThanOrEqual(cost + 1e-9)
      } else {
        expect(after.coverage).toBeLessThanOrEqual(bound.coverage!)
        expect(found.after.coverage).toBeGreaterThanOrEqual(after.coverage! - 1e-3)
      }
    }
  }
})

it('measures what thinning places costs, and not for places of the grower', async () => {
  const thinned = await answer(off, { question: { kind: 'stations', count: 2 } })
  expect(thinned.thinning!.doubled).toBeGreaterThan(1.3 * thinned.thinning!.places)
  expect(thinned.thinning!.loss).toBeGreaterThanOrEqual(0)
  expect(thinned.thinning!.loss).toBeLessThan(0.01)
  const coarse = await answer(off, { question: { kind: 'stations', count: 2 }, places: { most: 8 } })
  expect(coarse.thinning!.places).toBeLessThanOrEqual(8)
  const candidate = { ...station('c', 0, 0), properties: { kind: 'candidate' as const } }
  const plan = { ...off, features: [...off.features, candidate] as Plan['features'] }
  expect((await answer(plan, { question: { kind: 'stations', count: 1 } })).thinning).toBeNull()
})
