import { describe, expect, test } from 'vitest'
import { valueOn } from '#geo/time/curve'
import type { BloomBand } from '../../../../src/panels/season-bands'
import { bloomLanes, bloomsByCrop, fewLanes, reachOf } from '../../../../src/panels/strip/bloom-lanes'
import type { Frost } from '../../../../src/panels/strip/season-frost'

/** A bloom that opens on `start`, is full in the middle and over after `length` days. */
function bloom(label: string, start: number, length = 10, crop: string | null = label): BloomBand {
  const middle = (length - 1) / 2
  const values = Float64Array.from({ length }, (_, i) => 1 - Math.abs(i - middle) / (middle + 1))
  const date = '2026-04-01'
  const dates = { first: date, full: date, end: date }
  return { id: label, label, kind: 'bloom', crop, bloom: dates, doubt: null, curve: { start, values } }
}

/** Five pixels a day. */
const room = { whole: { from: 60, to: 180 }, plot: 600, labelWidth: 130 }
const namesOf = (lanes: ReturnType<typeof bloomLanes>) =>
  lanes.map(({ blooms }) => blooms.map(({ band }) => band.label))

describe('lanes of bloom', () => {
  test('hold blooms that follow each other on one line, and part those that meet', () => {
    expect(namesOf(bloomLanes([bloom('Plum', 80), bloom('Apple', 120)], [], room))).toEqual([['Plum', 'Apple']])
    expect(namesOf(bloomLanes([bloom('Plum', 80), bloom('Apple', 85)], [], room))).toEqual([['Plum'], ['Apple']])
  })

  test('keep hills, names and nights of frost apart, with every bloom there once', () => {
    const blooms = [
      bloom('Cherry plum hedge', 76, 16),
      bloom('Apricot', 84, 14),
      bloom('European plum, gage, damson', 94, 13),
      bloom('Sour cherry', 101, 15),
      bloom('European pear', 102, 13),
      bloom('Apple', 106, 17),
      bloom('Late apple', 111, 17),
    ]
    const frosts = [{ crop: 'Apple', plantings: [], day: 97, minimum: -4, isSevere: true } as unknown as Frost]
    const lanes = bloomLanes(blooms, frosts, room)
    expect(namesOf(lanes).flat().sort()).toEqual(blooms.map(({ label }) => label).sort())
    // On no day are more than four of them open at once.
    expect(lanes.length).toBeLessThanOrEqual(5)
    for (const { blooms: inLane } of lanes) {
      const reaches = inLane.map(({ band }) => reachOf(band, frosts)).sort((a, b) => a.from - b.from)
      for (let i = 1; i < reaches.length; i += 1) expect(reaches[i]!.from).toBeGreaterThanOrEqual(reaches[i - 1]!.to)
    }
    expect(reachOf(blooms[5]!, frosts).from).toBe(96)
  })

  test('put a name left of its hill where the strip ends to the right of it', () => {
    const [lane] = bloomLanes([bloom('Late raspberry', 168)], [], room)
    expect(lane!.blooms[0]!.isNameBefore).toBe(true)
  })
})

test('blooms of one crop become one, as far open as the most open of them; forage stays by itself', () => {
  const blooms = [bloom('apple', 100), bloom('Late row', 106, 10, 'apple'), bloom('Clover', 100, 30, null)]
  const merged = bloomsByCrop(blooms)
  expect(merged.map(({ label }) => label)).toEqual(['apple + 1', 'Clover'])
  for (const day of [100, 104, 108, 112, 115]) {
    expect(valueOn(merged[0]!.curve, day)).toBe(
      Math.max(valueOn(blooms[0]!.curve, day), valueOn(blooms[1]!.curve, day)),
    )
  }
})

test('more lines than there is room for: the fullest stay, the others share one, none is lost', () => {
  const blooms = ['Plum', 'Pear', 'Cherry', 'Apple'].map((label, i) => bloom(label, 80 + i))
  const lanes = bloomLanes([...blooms, bloom('Quince', 140)], [], room)
  expect(namesOf(lanes)).toEqual([['Plum', 'Quince'], ['Pear'], ['Cherry'], ['Apple']])
  expect(fewLanes(lanes, 4)).toBe(lanes)
  const few = fewLanes(lanes, 2)
  expect(namesOf(few)).toEqual([
    ['Plum', 'Quince'],
    ['Pear', 'Cherry', 'Apple'],
  ])
  expect(few.map(({ label }) => label)).toEqual([null, '3 more'])
})
