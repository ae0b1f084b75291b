import { describe, expect, it } from 'vitest'
import { judging } from '#geo/data/judging-figures'
import { gridLabel, gridStep, strongEvery } from '../../../src/map/ground/grid-step'
import { captionsOf, isAtWork, workLines } from '../../../src/map/layers/day-marks'
import { boxAround, placeLabels } from '../../../src/map/layers/label-placement'
import { drawn, stationNumber } from '../../../src/map/layers/plan-painters'
import { clearOfEarlier } from '../../../src/map/layers/suggested'
import { pixelsPerMetre, unitPoints, unitX, unitY } from '../../../src/map/mercator'
import { coverClass, coverWords, enough } from '../../../src/map/style'
import { station } from '../../support/orchard'

describe('grid', () => {
  it('takes the finest round step that leaves lines apart', () => {
    expect(gridStep(0.01, 'metric')).toEqual({ step: 1, metres: 1, unit: 'm' })
    expect(gridStep(0.15, 'metric')).toEqual({ step: 10, metres: 10, unit: 'm' })
    expect(gridStep(0.15, 'us')?.unit).toBe('ft')
    expect(gridStep(0.15, 'us')?.metres).toBeCloseTo(50 * 0.3048, 12)
    expect(gridStep(1e6, 'metric')).toBeNull()
  })

  it('says distances with their unit and draws whole steps stronger', () => {
    expect(gridLabel(-3, { step: 10, metres: 10, unit: 'm' })).toBe('30 m')
    expect(gridLabel(3, { step: 500, metres: 500, unit: 'm' })).toBe('1.5 km')
    expect([1, 2, 5, 10, 20, 50].map(strongEvery)).toEqual([5, 5, 2, 5, 5, 2])
  })
})

describe('numbers of suggested stations', () => {
  it('lie over no other that is numbered; what hides no number may have its own', () => {
    const places = [0, 10, 23, 24, 47].map(x => ({ x, y: 0 }))
    expect(clearOfEarlier(places, 24)).toEqual([true, false, false, true, false])
    expect(clearOfEarlier([places[0]!, { x: 0, y: 24 }, { x: 23, y: 1 }], 24)).toEqual([true, true, false])
  })
})

describe('names', () => {
  const view = { left: 0, top: 0, right: 400, bottom: 300 }
  const wish = (id: string, x: number, y: number, priority = 1) => ({
    id,
    text: id,
    width: 60,
    height: 16,
    priority,
    anchors: [
      { x, y },
      { x, y: y + 30 },
    ],
  })

  it('never lie over one another; the important one goes first and the other moves aside', () => {
    const placed = placeLabels([wish('small', 100, 100), wish('large', 110, 104, 5)], [], view)
    expect(placed.map(({ id, y }) => [id, y])).toEqual([
      ['large', 104],
      ['small', 130],
    ])
  })

  it('are left out where there is no room: off the view or under a mark', () => {
    expect(placeLabels([wish('off', 10, 100)], [], view)).toEqual([])
    expect(placeLabels([wish('under', 100, 100)], [boxAround(100, 115, 80, 80)], view)).toEqual([])
  })
})

describe('shades of coverage', () => {
  it('steps at the figures that the legend names; only enough is the darkest', () => {
    expect([0, 0.2499, 0.25, 0.5, 0.75, 0.8999, 0.9, 1].map(coverClass)).toEqual([0, 0, 1, 2, 3, 3, 4, 4])
    expect(coverWords).toHaveLength(5)
    expect(enough).toBe(judging.enough)
  })
})

describe('mercator', () => {
  it('has the corners of the unit square and doubles with the world', () => {
    expect([unitX(-180), unitX(180), unitY(0)]).toEqual([0, 1, 0.5])
    expect(unitY(85.05112878)).toBeCloseTo(0, 8)
    expect([...unitPoints(Float64Array.of(0, 0, 180, 0))]).toEqual([0.5, 0.5, 1, 0.5])
    // A 256 pixel world: 156 543 m a pixel on the equator, half that at 60 degrees.
    expect(1 / pixelsPerMetre(0, 256)).toBeCloseTo(156543.03, 1)
    expect(pixelsPerMetre(60, 256) / pixelsPerMetre(0, 256)).toBeCloseTo(2, 9)
  })
})

describe('what is drawn', () => {
  it('keeps the last good result while another is under way or failed', () => {
    expect(drawn({ status: 'running', last: 3, revision: 1 })).toBe(3)
    expect(drawn({ status: 'failed', reason: 'x', last: 2 })).toBe(2)
    expect(drawn({ status: 'idle' })).toBeNull()
  })

  it('numbers a station by its name, else by its place', () => {
    const named = (name: string) => ({ ...station('s', 0, 0), properties: { kind: 'station' as const, name } })
    expect(stationNumber(named('Nest station 5'), 0)).toBe(5)
    expect(stationNumber(named('North gate'), 2)).toBe(3)
    expect(stationNumber(undefined, 0)).toBe(1)
  })
})

describe('who works where', () => {
  const station = (id: string, females: number, shares: readonly (readonly [string, number])[]) => ({
    id,
    name: id,
    bee: 'osmia-lignaria' as const,
    females,
    work: shares.map(([to, share]) => ({ id: to, share })),
    elsewhere: 0.1,
  })
  const busy = station('busy', 40, [
    ['a', 0.4],
    ['b', 0.3],
    ['c', 0.1],
    ['d', 0.08],
    ['e', 0.02],
  ])
  const calm = station('calm', 10, [['a', 0.8]])
  const day = { day: 114, work: new Float32Array(0), plantings: [], stations: [busy, calm, station('gone', 0.3, [])] }
  const from = (id: string, lines: ReturnType<typeof workLines>) => lines.filter(line => line.from === id)

  it('is drawn for the places that most of the work goes to, wider for more females', () => {
    const lines = workLines(day, () => false)
    expect(from('busy', lines).map(({ to }) => to)).toEqual(['a', 'b', 'c'])
    expect(lines.map(({ weight }) => weight)).toEqual([1, 0.75, 0.25, 0.5].map(weight => expect.closeTo(weight, 9)))
    expect(from('gone', lines)).toEqual([])
    expect(workLines({ ...day, stations: [] }, () => false)).toEqual([])
  })

  it('is drawn whole for a selected station, but for what is next to nothing', () => {
    expect(
      from(
        'busy',
        workLines(day, id => id === 'busy'),
      ).map(({ to }) => to),
    ).toEqual(['a', 'b', 'c', 'd'])
  })

  it('is told at the stations', () => {
    expect([...captionsOf(day).values()]).toEqual(['40 at work', '10 at work', 'none at work'])
    expect(['busy', 'gone', 'elsewhere'].map(id => isAtWork(day, id))).toEqual([true, false, false])
  })
})
