import { describe, expect, it } from 'vitest'
import { bloomCurve, bloomWeight } from '#geo/bloom/bloom'
import { pointCloud } from '#geo/report/cloud'
import { closedWork, unknownWork } from '#geo/report/day'
import { type Model, modelOf } from '#geo/report/model'
import { dayOfSeason } from '#geo/time/day'
import { block, forage, planOf, row, spring, station } from '../../support/orchard'

const pear = { first: '2026-04-08', full: '2026-04-13', end: '2026-04-21' }
const plan = planOf({
  features: [
    block('apples', [0, 0, 40, 30]),
    row('pears', [-30, 0], [-30, 40], { crop: 'pear-european' }),
    row('quinces', [-60, 0], [-60, 20], { crop: 'quince' }),
    forage('bank', [50, 0, 70, 10]),
    station('west', -20, 10),
    station('spare', 10, 60),
  ],
  stock: { west: [{ date: '2026-04-06', females: 40 }], spare: [] },
  bloom: { apple: spring, 'pear-european': pear, bank: { first: '2026-05-01', full: '2026-05-10', end: '2026-06-01' } },
})

function model(): Model {
  const made = modelOf(plan, 2026)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.value
}

const on = (date: string) => dayOfSeason(date, 2026)

describe('a day of a season', () => {
  it('weighed by open flowers is on average what the season supplies against what it wants', () => {
    const season = model()
    const report = season.report({ withLimits: false })
    const { start, values } = bloomWeight(bloomCurve(spring, 2026))
    const days = Array.from(values, (_, i) => season.day(start + i).plantings.find(({ id }) => id === 'apples')!)
    const apples = report.plantings.find(({ id }) => id === 'apples')!
    const mean = days.reduce((sum, { arriving, wanted }, i) => sum + (values[i]! * arriving!) / wanted!, 0)
    expect(mean).toBeCloseTo(apples.supplied! / apples.wanted, 10)
    expect(days.reduce((sum, { wanted }) => sum + wanted!, 0)).toBeCloseTo(apples.wanted, 10)
  })

  it('tells open blossom, closed blossom and blossom of unknown days apart, in the order of the drawn points', () => {
    const { work, plantings } = model().day(on('2026-04-14'))
    const cloud = pointCloud(plan, 2026)
    const of = (id: string) => {
      const { start, end } = cloud.plantings.find(planting => planting.id === id)!
      return [...work.subarray(start, end)]
    }
    expect(work.length).toBe(cloud.lngLat.length / 2)
    expect(of('apples').every(value => value === closedWork)).toBe(true)
    expect(of('quinces').every(value => value === unknownWork)).toBe(true)
    expect(of('pears').every(value => value > 0 && value <= 1)).toBe(true)
    // The station stands nearer to the row's southern end, where it begins.
    expect(of('pears')[4]).toBeGreaterThan(of('pears').at(-1)!)
    expect(plantings.map(({ open }) => open)).toEqual([0, expect.closeTo(7 / 8, 12), null])
    expect(plantings.map(({ met }) => met)).toEqual([
      null,
      expect.closeTo(of('pears').reduce((a, b) => a + b) / 17, 6),
      null,
    ])
  })

  it('says of every station how many females are on the wing and where they work', () => {
    const [west, spare] = model().day(on('2026-05-05')).stations
    expect(west!.females).toBeGreaterThan(1)
    expect(west!.work.map(({ id }) => id).toSorted()).toEqual(['apples', 'bank'])
    expect(west!.work[0]!.share).toBeGreaterThan(west!.work[1]!.share)
    expect(west!.work.reduce((sum, { share }) => sum + share, west!.elsewhere!)).toBeCloseTo(1, 12)
    expect(spare).toMatchObject({ females: 0, work: [] })
  })

  it('knows females on the wing on days without any bloom too', () => {
    const season = model()
    expect(season.day(on('2026-04-07')).stations[0]!.females).toBeGreaterThan(0)
    expect(season.day(on('2026-04-05')).stations[0]!.females).toBe(0)
    expect(season.day(on('2026-04-03')).stations[0]).toMatchObject({ work: [], elsewhere: 1 })
  })
})
