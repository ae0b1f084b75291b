import { describe, expect, test } from 'vitest'
import { bees } from '#geo/data/bees'
import { crops } from '#geo/data/crops'
import { beeIds } from '#geo/data/own'
import type { Parameter } from '#geo/data/parameter'
import { activeShare } from '#geo/flight/flight'
import { isStation } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { reportRanges } from '#geo/report/ranges'
import { dayOfSeason } from '#geo/time/day'
import { cautionIn } from '../../src/text/cautions'
import { boreText } from '../../src/text/units'
import { directionText } from '../../src/text/words'
import { at, planOf, station } from '../support/orchard'
import { scenarios } from '../support/scenario-maker'
import { scenarioPlan } from '../support/scenario-reports'

/**
 * What keepers and growers take for granted. Common practice, no source: each of these is what anyone in the trade would
 * say, so figures and results that went against it would be taken for mistakes.
 */

const inch = 25.4
const foot = 0.3048

const holds = ({ low, high }: Parameter, value: number) => low <= value && value <= high
const overlaps = ({ low, high }: Parameter, from: number, to: number) => low <= to && high >= from

describe('tubes', () => {
  // Common practice, no source.
  test.each(beeIds)('five to six inches deep and five sixteenths wide suit %s', id => {
    const { depthMin, boreMin, boreMax } = bees[id].parameters
    expect(overlaps(depthMin, 5 * inch, 6 * inch)).toBe(true)
    expect(boreMin.low).toBeLessThanOrEqual((5 / 16) * inch)
    expect(boreMax.high).toBeGreaterThanOrEqual((5 / 16) * inch)
  })

  // Common practice, no source: daughters lie deep in the tube, sons near its mouth, so that a short tube costs daughters.
  test.each(['osmia-lignaria', 'osmia-bicornis'] as const)('the least depth for %s is told with its daughters', id => {
    expect(bees[id].parameters.depthMin.about).toMatch(/daughters/)
  })

  // Common practice, no source: two to six eggs a tube.
  test.each(beeIds)('two to six eggs a tube are within what is reckoned for %s', id => {
    expect(overlaps(bees[id].parameters.cellsPerTube, 2, 6)).toBe(true)
  })

  // Common practice, no source: more sons than daughters, up to twice as many.
  test.each(beeIds)('sons outnumber daughters of %s', id => {
    const { femaleShare, malesPerFemale } = bees[id].parameters
    expect(femaleShare.value).toBeLessThan(0.5)
    expect(femaleShare.value).toBeGreaterThan(1 / 3)
    expect(holds(malesPerFemale, 2)).toBe(true)
  })
})

describe('a starter set', () => {
  const plan = planOf({
    features: [
      {
        type: 'Feature',
        id: 'trees',
        geometry: { type: 'MultiPoint', coordinates: [at(0, 0), at(6, 0)] },
        properties: { kind: 'plant', crop: 'apple', spread: 3.5 },
      },
      station('box', 3, 6),
    ],
    stock: { box: [{ date: '2026-04-12', females: 4, males: 8 }] },
  })

  // Common practice, no source: ten to twelve cocoons and one small box for a garden with a tree or two.
  test('of twelve cocoons by two apple trees gives a small and sane answer', () => {
    const outcome = evaluate(plan, 2026)
    // With two trees and nothing else drawn, the last bees fly after the blossom: that too is told.
    expect(outcome.problems.map(({ code }) => code)).toEqual(['no-mud', 'tail-bare'])
    const { orchard, stations } = outcome.ok ? outcome.value : { orchard: null, stations: [] }
    const [box] = stations
    // Four daughters with the sons that the ratio asks for make up the set; one or two of them stay and fill a few tubes.
    expect(box!.femaleCocoons + box!.maleCocoons).toBe(12)
    expect(box!.females).toBeGreaterThan(1)
    expect(box!.females).toBeLessThan(3)
    expect(box!.tubesWanted).toBeGreaterThanOrEqual(3)
    expect(box!.tubesWanted).toBeLessThanOrEqual(12)
    expect(orchard!.wanted).toBeGreaterThan(0.5)
    expect(orchard!.wanted).toBeLessThan(6)
    expect(orchard!.coverage).toBeGreaterThan(0)
    expect(orchard!.coverage).toBeLessThan(1)
  })

  test('stays sane over the ranges of what is known', () => {
    const ranges = reportRanges(plan, 2026)!
    const { low, high } = ranges.stations.box!.females
    expect(low).toBeGreaterThan(0)
    expect(high).toBeLessThanOrEqual(4)
    const { coverage } = ranges.orchard
    expect(coverage!.low).toBeGreaterThanOrEqual(0)
    expect(coverage!.high).toBeGreaterThan(coverage!.low)
    expect(coverage!.high).toBeLessThan(0.9)
  })

  // Common practice, no source: two or three females to a grown apple tree.
  test('goes by two or three females a grown apple tree', () => {
    expect(holds(crops.apple!.femalesPerPlant!, 2)).toBe(true)
    expect(holds(crops.apple!.femalesPerPlant!, 3)).toBe(true)
  })
})

describe('the season of the spring bees', () => {
  // Common practice, no source: on the wing from February to early June, wherever spring begins; over by mid-June.
  test.each(['osmia-lignaria', 'osmia-cornuta', 'osmia-cornifrons'] as const)('%s is over by mid-June', id => {
    const { lag, spreadDays, nestingLife } = bees[id].parameters
    const settings = { lag: lag.value, spreadDays: spreadDays.value, nestingLife: nestingLife.value }
    const share = activeShare(settings, 400)
    const middleOfJune = dayOfSeason('2026-06-15', 2026)
    const release = (date: string) => middleOfJune - dayOfSeason(date, 2026)
    for (const date of ['2026-02-01', '2026-02-15', '2026-03-01', '2026-03-15']) {
      expect(share[release(date)], date).toBeLessThan(0.02)
    }
    // A season of three batches, the last in the middle of April: hardly any of its nesting falls after that day.
    const dates = ['2026-02-15', '2026-03-15', '2026-04-15']
    const work = (days: Float64Array) => days.reduce((sum, value) => sum + value, 0)
    const after = dates.reduce((sum, date) => sum + work(share.slice(release(date) + 1)), 0)
    expect(after / (dates.length * work(share))).toBeLessThan(0.025)
  })

  // Common practice, no source: cocoons go out when days reach 50 to 55 degrees Fahrenheit.
  test('blue orchard bees begin to work at 50 to 55 degrees Fahrenheit', () => {
    const fahrenheit = bees['osmia-lignaria'].parameters.flightFrom.value * 1.8 + 32
    expect(fahrenheit).toBeGreaterThanOrEqual(50)
    expect(fahrenheit).toBeLessThanOrEqual(55)
  })

  // Common practice, no source: a flight of four to eight weeks from each release; hardly one is left after three months.
  test.each(beeIds)('%s is at its height one to three weeks after release and gone after three months', id => {
    const { lag, spreadDays, nestingLife } = bees[id].parameters
    const share = activeShare({ lag: lag.value, spreadDays: spreadDays.value, nestingLife: nestingLife.value }, 100)
    const height = share.indexOf(Math.max(...share))
    expect(height).toBeGreaterThanOrEqual(7)
    expect(height).toBeLessThanOrEqual(21)
    expect(share[91]).toBeLessThan(0.02)
  })
})

describe('stations', () => {
  const stations = scenarios.flatMap(({ name }) => scenarioPlan(name).features.filter(isStation))

  // Common practice, no source: six to ten feet up; whoever hangs one there wants a ladder, and is told so.
  test('from six feet up are told as work with a ladder', () => {
    const [, metres] = /Higher than ([\d.]+) m\b.*ladder/.exec(cautionIn('ladder', 'metric').short) ?? []
    expect(Number(metres)).toBeLessThan(6 * foot)
    expect(Number(metres)).toBeGreaterThan(5.5 * foot)
    expect(cautionIn('ladder', 'metric').long).toMatch(/reached from the ground/)
  })

  test('six to ten feet up are told of and counted', () => {
    for (const feet of [6, 8, 10]) {
      const high = { ...station('s', 0, 0), properties: { kind: 'station', height: feet * foot } } as const
      const { ok, problems } = evaluate(planOf({ features: [high], stock: { s: [] } }), 2026)
      expect(ok).toBe(true)
      expect(problems.map(({ code }) => code)).toEqual(['station-high', 'no-mud'])
    }
  })

  // Common practice, no source: facing east, or between there and south, for the morning sun.
  test('of the example plans face the morning sun', () => {
    expect(stations.length).toBeGreaterThan(20)
    for (const { id, properties } of stations) {
      expect(properties.facing, id).toBeGreaterThanOrEqual(90)
      expect(properties.facing, id).toBeLessThanOrEqual(180)
      expect(directionText(properties.facing!), id).toMatch(/\b(east|south|south-east)\b/)
    }
  })

  // Common practice, no source: a roof that stands an inch or more over the tubes.
  test('of the example plans have a roof of an inch or more, from knee height to ten feet', () => {
    expect(boreText(inch, 'us')).toBe('1 in (25.4 mm)')
    for (const { id, properties } of stations) {
      expect(properties.overhang, id).toBeGreaterThanOrEqual(inch)
      expect(properties.height, id).toBeGreaterThan(0.5)
      expect(properties.height, id).toBeLessThanOrEqual(10 * foot)
    }
  })
})
