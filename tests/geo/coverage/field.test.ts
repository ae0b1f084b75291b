import { describe, expect, it } from 'vitest'
import { type Field, fieldOf, tileInDisc } from '#geo/coverage/field'
import { Reach } from '#geo/coverage/reach'
import { runsInDisc } from '#geo/coverage/runs'
import { type Random, seededRandom } from '#geo/random'

function scattered(count: number, width: number, height: number, random: Random): Float64Array {
  return Float64Array.from({ length: 2 * count }, (_, i) => (i % 2 === 0 ? width : height) * random())
}

const random = seededRandom(4101)
const groups = [
  scattered(700, 260, 180, random),
  new Float64Array(0),
  scattered(1, 100, 100, random),
  scattered(90, 9000, 30, random),
  scattered(400, 40, 400, random),
]
const field = fieldOf(groups)

const isNear = ({ x, y }: Field, i: number, disc: { x: number; y: number; radius: number }) =>
  (x[i]! - disc.x) ** 2 + (y[i]! - disc.y) ** 2 <= disc.radius ** 2

function discs(count: number): { x: number; y: number; radius: number }[] {
  return Array.from({ length: count }, () => ({
    x: 400 * random() - 70,
    y: 500 * random() - 50,
    radius: 5 + 150 * random(),
  }))
}

describe('a field', () => {
  it('holds every point of every group once, with its place in the group', () => {
    groups.forEach((points, group) => {
      const [from, to] = [field.groupStart[group]!, field.groupStart[group + 1]!]
      expect([...field.order.slice(from, to)].sort((a, b) => a - b)).toEqual([...Array(points.length / 2).keys()])
      for (let i = from; i < to; i += 1) {
        const point = field.order[i]!
        expect([field.x[i], field.y[i]]).toEqual([points[2 * point], points[2 * point + 1]])
      }
    })
  })

  it('nests groups, rows, tiles and points in boxes that fit', () => {
    const { groupRow, groupTile, groupStart, groupBox, rowTile, rowBox, tileStart, tileBox, x, y } = field
    const tight = (from: number, to: number) => {
      const [xs, ys] = [x.slice(from, to), y.slice(from, to)]
      return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    }
    const boxOf = (boxes: Float64Array, i: number) => [...boxes.slice(4 * i, 4 * i + 4)]
    groups.forEach((_, group) => {
      expect(rowTile[groupRow[group]!]).toBe(groupTile[group])
      expect(tileStart[groupTile[group]!]).toBe(groupStart[group])
      expect(boxOf(groupBox, group)).toEqual(tight(groupStart[group]!, groupStart[group + 1]!))
    })
    for (let row = 0; row + 1 < rowTile.length; row += 1) {
      const [from, to] = [rowTile[row]!, rowTile[row + 1]!]
      expect(to).toBeGreaterThan(from)
      expect(boxOf(rowBox, row)).toEqual(tight(tileStart[from]!, tileStart[to]!))
    }
    for (let tile = 0; tile + 1 < tileStart.length; tile += 1) {
      expect(tileStart[tile + 1]!).toBeGreaterThan(tileStart[tile]!)
      expect(boxOf(tileBox, tile)).toEqual(tight(tileStart[tile]!, tileStart[tile + 1]!))
    }
  })

  it('knows tiles outside, cut by and inside a disc, the edge counted in', () => {
    const square = fieldOf([Float64Array.of(0, 0, 10, 0, 0, 10, 10, 10)])
    expect(tileInDisc(square, 0, 40, 5, 30)).toBe(1)
    expect(tileInDisc(square, 0, 40, 5, 29.9)).toBe(0)
    expect(tileInDisc(square, 0, 40, 10, Math.hypot(40, 10))).toBe(2)
    expect(tileInDisc(square, 0, 40, 10, 41)).toBe(1)
  })
})

describe('runs in a disc', () => {
  it('hold every point of the disc once, group by group, and keep apart in the scratch', () => {
    const tiles = field.tileStart.length - 1
    for (const disc of discs(60)) {
      const runs = new Uint32Array(3 * tiles)
      const marks = new Uint8Array(tiles)
      const times = new Uint8Array(field.x.length)
      let run = 0
      let scratch = 0
      groups.forEach((_, group) => {
        const end = runsInDisc(field, group, disc, run, runs, marks)
        for (; run < end; run += 1) {
          const [from, to, at] = [...runs.slice(3 * run, 3 * run + 3)] as [number, number, number]
          expect(from).toBeGreaterThanOrEqual(field.groupStart[group]!)
          expect(to).toBeLessThanOrEqual(field.groupStart[group + 1]!)
          expect(at % 4).toBe(0)
          expect(at).toBeGreaterThanOrEqual(scratch)
          scratch = at + to - from
          for (let i = from; i < to; i += 1) times[i]! += 1
        }
      })
      for (let tile = 0; tile < tiles; tile += 1) {
        for (let i = field.tileStart[tile]!; i < field.tileStart[tile + 1]!; i += 1) {
          expect(times[i]).toBe(marks[tile])
          if (isNear(field, i, disc)) expect(times[i]).toBe(1)
        }
      }
    }
  })
})

describe('reach', () => {
  const brute = (standing: readonly { x: number; y: number; radius: number }[]) =>
    groups.map((_, group) => {
      let reached = 0
      for (let i = field.groupStart[group]!; i < field.groupStart[group + 1]!; i += 1) {
        if (standing.some(disc => isNear(field, i, disc))) reached += 1
      }
      return reached
    })

  it('counts what a point-by-point count does, as discs come and go', () => {
    const reach = new Reach(field)
    const standing: { x: number; y: number; radius: number }[] = []
    for (const disc of discs(40)) {
      reach.add(disc)
      standing.push(disc)
      if (standing.length > 6) reach.remove(standing.splice(Math.floor(random() * standing.length), 1)[0]!)
      expect(groups.map((_, group) => reach.reachedOf(group))).toEqual(brute(standing))
    }
    reach.clear()
    expect(groups.map((_, group) => reach.reachedOf(group))).toEqual(brute([]))
  })

  it('counts a point on the edge, and two discs in one place twice', () => {
    const reach = new Reach(fieldOf([Float64Array.of(0, 0, 30, 40, 30, 40.001)]))
    const [one, other] = [
      { x: 0, y: 0, radius: 50 },
      { x: 0, y: 0, radius: 50 },
    ]
    reach.add(one)
    reach.add(other)
    expect(reach.reachedOf(0)).toBe(2)
    reach.remove(one)
    expect(reach.reachedOf(0)).toBe(2)
    reach.remove(other)
    expect(reach.reachedOf(0)).toBe(0)
  })
})
