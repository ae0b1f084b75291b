import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Feature, Plan } from '#geo/plan/plan'
import { modelOf } from '#geo/report/model'
import type { Report } from '#geo/report/report'
import { planeAt } from '#geo/space/plane'
import { at, block, forage, marks, middle, planOf, row, spring, station } from '../support/orchard'

const fixed = { seed: 20260424, numRuns: 60 }

function reportOf(plan: Plan): Report {
  const model = modelOf(plan, 2026)
  if (!model.ok) throw new Error(JSON.stringify(model.problems))
  return model.value.report({ withLimits: false })
}

const place = fc.record({ x: fc.integer({ min: -150, max: 150 }), y: fc.integer({ min: -150, max: 150 }) })
const batch = fc.record({ day: fc.integer({ min: 1, max: 30 }), females: fc.integer({ min: 1, max: 400 }) })
const stocked = fc.array(fc.record({ place, batches: fc.array(batch, { minLength: 1, maxLength: 3 }) }), {
  minLength: 1,
  maxLength: 4,
})
type Stocked = { place: { x: number; y: number }; batches: { day: number; females: number }[] }[]

const ground: readonly Feature[] = [
  block('early', [-60, -50, -5, 50]),
  block('late', [5, -50, 60, 50], { crop: 'pear-european' }),
  row('single', [80, -40], [80, 40], { vigour: 0.4 }),
  forage('hedge', [-70, 60, 70, 64]),
]
const bloom = {
  apple: spring,
  'pear-european': { first: '2026-04-07', full: '2026-04-12', end: '2026-04-23' },
  hedge: { first: '2026-04-01', full: '2026-04-09', end: '2026-04-20' },
}

function orchard(stations: Stocked, options: { times?: number; features?: readonly Feature[] } = {}): Plan {
  const { times = 1, features = ground } = options
  const stock = Object.fromEntries(
    stations.map(({ batches }, i) => [
      `s${i}`,
      batches.map(({ day, females }) => ({
        date: `2026-04-${String(day).padStart(2, '0')}`,
        females: females * times,
      })),
    ]),
  )
  const posts = stations.map(({ place: { x, y } }, i) => station(`s${i}`, x, y))
  return planOf({ features: [...features, ...posts, ...marks], stock, bloom })
}

// Service is held in multiples of 2^-40, so sums over a thousand points may differ by a billionth of a female.
const near = (a: number, b: number) =>
  expect(Math.abs(a - b)).toBeLessThan(1e-9 * Math.max(1, Math.abs(a), Math.abs(b)))

describe('laws of coverage', () => {
  it('shares lie between 0 and 1, and wanted = served + short by', () => {
    fc.assert(
      fc.property(stocked, stations => {
        for (const planting of reportOf(orchard(stations)).plantings) {
          for (const share of [planting.coverage!, planting.reach!]) {
            expect(share).toBeGreaterThanOrEqual(0)
            expect(share).toBeLessThanOrEqual(1)
          }
          near(planting.wanted * planting.coverage! + planting.shortBy!, planting.wanted)
        }
      }),
      fixed,
    )
  })

  it('service is linear in the batches', () => {
    fc.assert(
      fc.property(stocked, fc.integer({ min: 2, max: 5 }), (stations, times) => {
        const once = reportOf(orchard(stations))
        const more = reportOf(orchard(stations, { times }))
        once.plantings.forEach((planting, i) => {
          near(planting.supplied! * times, more.plantings[i]!.supplied!)
          expect(more.plantings[i]!.coverage!).toBeGreaterThanOrEqual(planting.coverage! - 1e-9)
        })
      }),
      fixed,
    )
  })

  it("another station never lowers coverage, and each station's service is its own", () => {
    fc.assert(
      fc.property(stocked, place, batch, (stations, where, release) => {
        const extra = [{ place: where, batches: [release] }]
        const before = reportOf(orchard(stations))
        const alone = reportOf(orchard(extra))
        const both = reportOf(orchard([...stations, ...extra]))
        both.plantings.forEach((planting, i) => {
          expect(planting.coverage!).toBeGreaterThanOrEqual(before.plantings[i]!.coverage! - 1e-12)
          near(planting.supplied!, before.plantings[i]!.supplied! + alone.plantings[i]!.supplied!)
        })
      }),
      fixed,
    )
  })

  it('of two plants alike, the nearer to a single station gets more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 140 }), fc.integer({ min: 1, max: 100 }), (distance, farther) => {
        const features = [
          row('near', [distance, 0], [distance, 1], { count: 1 }),
          row('far', [distance + farther, 0], [distance + farther, 1], { count: 1 }),
        ]
        const { plantings } = reportOf(
          orchard([{ place: { x: 0, y: 0 }, batches: [{ day: 12, females: 50 }] }], { features }),
        )
        expect(plantings[0]!.supplied!).toBeGreaterThan(plantings[1]!.supplied!)
      }),
      fixed,
    )
  })

  it('a plan carried to another place on earth keeps its figures', () => {
    fc.assert(
      fc.property(
        stocked,
        fc.integer({ min: -60, max: 60 }),
        fc.integer({ min: -179, max: 179 }),
        (stations, lat, lng) => {
          const plan = orchard(stations)
          const from = planeAt(middle)
          const to = planeAt([lng, lat])
          const carry = (coordinates: unknown): unknown => {
            const list = coordinates as readonly unknown[]
            if (typeof list[0] !== 'number') return list.map(carry)
            return to.toLngLat(from.toMetres(list as unknown as [number, number])).slice(0, 2)
          }
          const features = plan.features.map(feature => ({
            ...feature,
            geometry: { ...feature.geometry, coordinates: carry(feature.geometry.coordinates) },
          })) as Feature[]
          const here = reportOf(plan)
          const there = reportOf({ ...plan, features })
          // The middle of the box in degrees lies millimetres apart in the two, and meridians converge differently over
          // it: rows turn by up to a few hundredths of a degree. Coverage moves by far less than a thousandth.
          here.plantings.forEach((planting, i) => {
            expect(Math.abs(planting.coverage! - there.plantings[i]!.coverage!)).toBeLessThan(2e-3)
          })
        },
      ),
      { ...fixed, numRuns: 20 },
    )
  })

  it('an order of features is no figure: shuffled plantings and stations give the same', () => {
    fc.assert(
      fc.property(stocked, fc.integer(), (stations, seed) => {
        const plan = orchard(stations)
        const shuffled = [...plan.features].sort((a, b) => hash(a.id, seed) - hash(b.id, seed))
        const a = reportOf(plan)
        const b = reportOf({ ...plan, features: shuffled })
        for (const planting of a.plantings) {
          const other = b.plantings.find(({ id }) => id === planting.id)!
          // Exact sums: not one bit may depend on the order in which stations were added.
          expect(other.supplied).toBe(planting.supplied)
          expect(other.coverage).toBe(planting.coverage)
        }
      }),
      fixed,
    )
  })
})

function hash(text: string, seed: number): number {
  let value = seed | 0
  for (const letter of text) value = Math.imul(value ^ letter.charCodeAt(0), 16777619)
  return value
}

it('at() and the marks stand where they say', () => {
  const plane = planeAt(middle)
  const { x, y } = plane.toMetres(at(12, -7))
  expect(Math.hypot(x - 12, y + 7)).toBeLessThan(1e-6)
})
