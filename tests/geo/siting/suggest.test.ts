import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import type { Feature, Plan } from '#geo/plan/plan'
import { acceptSuggestion } from '#geo/siting/accept'
import { candidatesOf } from '#geo/siting/candidates'
import type { SuggestOptions } from '#geo/siting/question'
import { suggest } from '#geo/siting/suggest'
import type { Suggestion } from '#geo/siting/suggestion'
import { planeAt } from '#geo/space/plane'
import { isInside } from '#geo/space/shape'
import { seasonGround } from '#geo/stocking/season-ground'
import { at, block, marks, middle, planOf, row, station } from '../../support/orchard'

const plane = planeAt(middle)

async function answer(plan: Plan, options: SuggestOptions, year = 2026): Promise<Suggestion> {
  const outcome = await suggest(plan, year, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

function scenario(name: string): Plan {
  const outcome = readPlan(readFileSync(`scenarios/${name}.plan.geojson`, 'utf8'))
  if (!outcome.ok) throw new Error(name)
  return outcome.value
}

function polygon(
  id: string,
  kind: 'keepout' | 'boundary',
  [west, south, east, north]: [number, number, number, number],
): Feature {
  const ring = [at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]
  return { type: 'Feature', id, geometry: { type: 'Polygon', coordinates: [ring] }, properties: { kind } } as Feature
}

const stations = (count: number, cocoons?: number) =>
  ({ question: { kind: 'stations', count, ...(cocoons !== undefined && { cocoons }) } }) as const

describe('where stations land', () => {
  it('puts one station for one square block at its middle', async () => {
    const plan = planOf({ features: [...marks, block('block', [-50, -50, 50, 50])] })
    const { stations: found, bound, after } = await answer(plan, stations(1))
    const { x, y } = plane.toMetres(found[0]!.at)
    expect(Math.hypot(x, y)).toBeLessThan(3)
    expect(after.coverage).toBeLessThanOrEqual(bound.coverage!)
  })

  it('puts two stations for a long row at a quarter and three quarters of it', async () => {
    const plan = planOf({ features: [...marks, row('row', [-200, 0], [200, 0])] })
    // Enough bees that each serves its half of the row in full; with few, both would stand near the middle.
    const { stations: found } = await answer(plan, stations(2, 500))
    const along = found.map(each => plane.toMetres(each.at).x).sort((a, b) => a - b)
    expect(Math.abs(along[0]! + 100)).toBeLessThan(6)
    expect(Math.abs(along[1]! - 100)).toBeLessThan(6)
  })

  it('serves the planting that the grower weighs more', async () => {
    const blocks = [block('west', [-160, -30, -100, 30]), block('east', [100, -30, 160, 30])]
    const plan = planOf({ features: [...marks, ...blocks] })
    const west = await answer(plan, { ...stations(1), weights: { west: 3 } })
    const east = await answer(plan, { ...stations(1), weights: { east: 3 } })
    expect(plane.toMetres(west.stations[0]!.at).x).toBeLessThan(0)
    expect(plane.toMetres(east.stations[0]!.at).x).toBeGreaterThan(0)
    expect(west.stations[0]!.gains[0]!.id).toBe('west')
  })

  it('gives the same answer every time', async () => {
    const plan = scenario('mixed-orchard')
    expect(await answer(plan, stations(3), 2025)).toEqual(await answer(plan, stations(3), 2025))
  })
})

describe('what a suggestion tells', () => {
  const plan = planOf({
    features: [...marks, block('block', [-60, -40, 60, 40]), station('old', 0, 0)],
    stock: { old: [{ date: '2026-04-06', females: 60, males: 108 }] },
  })

  it('is in whole numbers that can be bought, and in sets', async () => {
    const { stations: found } = await answer(plan, { ...stations(2, 70), setOf: 25 })
    for (const each of found) {
      expect(each.femaleCocoons).toBe(75)
      for (const figure of [each.maleCocoons, each.tubes]) expect(Number.isInteger(figure)).toBe(true)
      expect(each.releases.reduce((sum, { females }) => sum + females, 0)).toBe(75)
      expect(each.releases.reduce((sum, { males }) => sum + (males ?? 0), 0)).toBe(each.maleCocoons)
      expect(each.releases.map(({ date }) => date)).toEqual(['2026-04-06'])
    }
  })

  it('comes true to the last digit once it is accepted, and no layout covers more than its bound', async () => {
    const found = await answer(plan, stations(2))
    const changed = acceptSuggestion(plan, found).apply(plan)
    const { evaluate } = await import('#geo/report/evaluate')
    const report = evaluate(changed, 2026)
    expect(report.ok && report.value.orchard.coverage).toBe(found.after.coverage)
    expect(found.before.coverage).toBeLessThan(found.after.coverage!)
    expect(found.after.coverage).toBeLessThanOrEqual(found.bound.coverage!)
    expect(found.bound.coverage! - found.after.coverage!).toBeLessThan(0.02)
  })

  it('keeps a station that stays at a distance, moves one and drops one', async () => {
    const near = await answer(plan, stations(1))
    const [placed] = near.stations
    expect(Math.hypot(plane.toMetres(placed!.at).x, plane.toMetres(placed!.at).y)).toBeGreaterThan(19.99)
    const edge = planOf({
      features: [...marks, block('block', [-60, -40, 60, 40]), station('old', 75, 0)],
      stock: { old: [{ date: '2026-04-06', females: 60, males: 108 }] },
    })
    const moved = await answer(edge, { ...stations(0), roles: { old: 'move' } })
    expect(moved.stations).toMatchObject([{ id: 'old', new: false, femaleCocoons: 60 }])
    expect(moved.after.coverage).toBeGreaterThan(moved.before.coverage!)
    expect(moved.cost).toBe(0)
    const dropped = await answer(edge, { ...stations(1), roles: { old: 'drop' } })
    expect(dropped.dropped).toEqual(['old'])
    const after = acceptSuggestion(edge, dropped).apply(edge)
    expect(Object.keys(after.seasons[0]!.stations!)).toEqual(['station-1'])
  })

  it('leaves a station that moves where other seasons use it', async () => {
    const far = planOf({
      features: [...marks, block('block', [-60, -40, 60, 40]), station('old', 75, 0)],
      stock: { old: [{ date: '2026-04-06', females: 60, males: 108 }] },
    })
    const [season] = far.seasons
    const two = { ...far, seasons: [{ ...season!, year: 2025 }, season!] }
    const found = await answer(two, { ...stations(0), roles: { old: 'move' } })
    const changed = acceptSuggestion(two, found).apply(two)
    expect(Object.keys(changed.seasons[0]!.stations!)).toEqual(['old'])
    expect(Object.keys(changed.seasons[1]!.stations!)).toEqual(['old-2026'])
  })

  it('says so when there is no room for all', async () => {
    const own = [at(0, 20), at(0, 25)].map((place, i) => ({
      type: 'Feature' as const,
      id: `c${i}`,
      geometry: { type: 'Point' as const, coordinates: place },
      properties: { kind: 'candidate' as const },
    }))
    const found = await answer({ ...plan, features: [...plan.features, ...own] }, stations(2))
    expect(found.stations).toHaveLength(1)
    expect(found.stations[0]!.source).toBe('own')
    expect(found.cautions).toContainEqual({ kind: 'few-places', asked: 2, placed: 1 })
  })

  it('tells an error of the plan in place of an answer', async () => {
    const outcome = await suggest(plan, 2031, stations(1))
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: 'no-season' }] })
  })
})

describe('places', () => {
  const features = [...marks, block('block', [-50, -50, 50, 50], { spacing: 1, rowSpacing: 4 })]
  const sitesOf = (plan: Plan, options = {}) => candidatesOf(seasonGround(plan, 2026), [], options).sites

  it('are outside lanes unless asked, off plants, inside the boundary and outside keepouts', () => {
    const plan = planOf({
      features: [...features, polygon('b', 'boundary', [-80, -80, 80, 80]), polygon('k', 'keepout', [50, -80, 80, 80])],
    })
    const sites = sitesOf(plan)
    expect(sites.length).toBeGreaterThan(50)
    for (const { x, y, notes } of sites) {
      expect(notes.isInLane).toBe(false)
      // Bushes a metre apart leave no room for a post between them, and lanes are for tractors.
      expect(Math.abs(x) <= 48 && Math.abs(y) <= 49).toBe(false)
      expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThan(80)
      expect(x).toBeLessThanOrEqual(50.01)
    }
    expect(sitesOf(plan, { withLanes: true }).some(({ notes }) => notes.isInLane)).toBe(true)
  })

  it('stay on a margin round the plantings where no boundary is drawn', () => {
    const sites = sitesOf(planOf({ features }))
    for (const { x, y } of sites) expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThanOrEqual(65)
    expect(sites.some(({ source }) => source === 'row-end')).toBe(true)
  })

  it('know the mud and the shelter nearby, and can be limited to them', () => {
    const hedge: Feature = {
      type: 'Feature',
      id: 'hedge',
      geometry: { type: 'LineString', coordinates: [at(-58, -60), at(-58, 60)] },
      properties: { kind: 'windbreak', name: 'West hedge' },
    }
    const plan = planOf({ features: [...features, hedge] })
    const sheltered = sitesOf(plan, { isSheltered: true })
    expect(sheltered.length).toBeGreaterThan(5)
    for (const { x, notes } of sheltered) {
      expect(notes.shelter).toMatchObject({ name: 'West hedge', side: x > -58 ? 'morning' : 'evening' })
      expect(notes.shelter!.distance).toBeLessThanOrEqual(20)
    }
    const muddy = planOf({
      features: [
        ...features,
        { ...marks[0]!, id: 'mud', geometry: { type: 'Point', coordinates: at(60, 0) } } as Feature,
      ],
    })
    for (const { x, y, notes } of sitesOf(muddy, { mudWithin: 30 })) {
      expect(notes.mud).toBeCloseTo(Math.hypot(x - 60, y), 0)
      expect(notes.mud).toBeLessThanOrEqual(30)
    }
  })

  it('change coverage little when their number is doubled', async () => {
    const plan = scenario('mixed-orchard')
    const usual = await answer(plan, stations(3), 2025)
    const dense = await answer(plan, { ...stations(3), places: { density: 2 } }, 2025)
    expect(dense.places.count).toBeGreaterThan(usual.places.count)
    expect(Math.abs(dense.after.coverage! - usual.after.coverage!)).toBeLessThan(0.005)
  })

  it.each(['allotment', 'farm', 'mixed-orchard', 'providence-apples'])(
    'of the %s plan lie on its ground and in no lane',
    async name => {
      const plan = scenario(name)
      const ground = seasonGround(plan, 2025)
      const rings = (kind: string) =>
        plan.features.flatMap(({ properties, geometry }) =>
          properties.kind === kind && geometry.type === 'Polygon'
            ? [geometry.coordinates.map(ring => ring.map(ground.plane.toMetres))]
            : [],
        )
      const { stations: found, bound, after } = await answer(plan, stations(3), 2025)
      for (const { at: place, notes } of found) {
        const metres = ground.plane.toMetres(place)
        expect(rings('boundary').some(each => isInside(each, metres))).toBe(true)
        expect(rings('keepout').some(each => isInside(each, metres))).toBe(false)
        expect(notes.isInLane).toBe(false)
      }
      expect(after.coverage).toBeLessThanOrEqual(bound.coverage!)
      expect(bound.coverage! - after.coverage!).toBeLessThan(0.03)
    },
  )
})
