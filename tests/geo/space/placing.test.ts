import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  isPlacing,
  type KnownPoint,
  misfits,
  type Placing,
  placed,
  sidePlacing,
  similarPlacing,
  slantedPlacing,
  spotAt,
  turned,
} from '#geo/space/placing'
import { bearing, distance } from '#geo/space/shape'

const fixed = { seed: 20260612, numRuns: 200 }
const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const spot = fc.record({ u: finite(0, 2048), v: finite(0, 2048) })
/** Metres per pixel, direction and place of a picture that keeps its shape. */
const similar = fc
  .record({ scale: finite(0.005, 2), degrees: finite(-180, 180), x: finite(-900, 900), y: finite(-900, 900) })
  .map(({ scale, degrees, x, y }): Placing => {
    const angle = (degrees * Math.PI) / 180
    const right = { x: scale * Math.cos(angle), y: scale * Math.sin(angle) }
    return { origin: { x, y }, right, down: { x: right.y, y: -right.x } }
  })
const slanted = fc
  .tuple(similar, finite(0.5, 2), finite(-0.5, 0.5))
  .map(([{ origin, right, down }, stretch, lean]): Placing => {
    return { origin, right, down: { x: stretch * down.x + lean * right.x, y: stretch * down.y + lean * right.y } }
  })
/** Corners of a picture, pulled about: never near one line. */
const spread = fc.tuple(finite(0, 300), finite(0, 300), finite(0, 300), finite(0, 300)).map(([a, b, c, d]) => [
  { u: a, v: b },
  { u: 2000 - c, v: d },
  { u: 1900 - a, v: 1500 - b },
  { u: c, v: 1400 - d },
])
/** Doubles of a thousand metres hold 1e-13 m; sums over pixels squared lose some six digits of them. */
const close = 1e-6

function on(placing: Placing, spots: readonly { u: number; v: number }[]): KnownPoint[] {
  return spots.map(each => ({ spot: each, at: placed(placing, each) }))
}

describe('known points', () => {
  it('two of them give back the placing they were taken from', () => {
    fc.assert(
      fc.property(similar, spread, spot, (placing, [first, , third], anywhere) => {
        const found = similarPlacing(on(placing, [first!, third!]))!
        expect(distance(placed(found, anywhere), placed(placing, anywhere))).toBeLessThan(close)
      }),
      fixed,
    )
  })

  it('three or four of them give back a slanted one', () => {
    fc.assert(
      fc.property(slanted, spread, spot, fc.boolean(), (placing, spots, anywhere, isFour) => {
        const points = on(placing, isFour ? spots : spots.slice(0, 3))
        const found = slantedPlacing(points)!
        expect(distance(placed(found, anywhere), placed(placing, anywhere))).toBeLessThan(close)
        expect(Math.max(...misfits(found, points))).toBeLessThan(close)
      }),
      fixed,
    )
  })

  it('no small change of either fit comes nearer to points that do not agree', () => {
    const noise = fc.array(fc.tuple(finite(-3, 3), finite(-3, 3)), { minLength: 4, maxLength: 4 })
    const sum = (placing: Placing, points: readonly KnownPoint[]) =>
      misfits(placing, points).reduce((total, each) => total + each * each, 0)
    fc.assert(
      fc.property(
        similar,
        spread,
        noise,
        finite(-0.5, 0.5),
        finite(0.995, 1.005),
        (placing, spots, off, degrees, scale) => {
          const points = on(placing, spots).map(({ spot: s, at }, i) => ({
            spot: s,
            at: { x: at.x + off[i]![0], y: at.y + off[i]![1] },
          }))
          const best = similarPlacing(points)
          // Where the picture is smaller than the noise nothing can be said.
          fc.pre(best !== null)
          const least = sum(best!, points)
          const other = turned(best!, { u: 0, v: 0 }, { degrees, scale })
          expect(sum(other, points)).toBeGreaterThanOrEqual(least * (1 - 1e-9) - 1e-9)
          const free = slantedPlacing(points)
          if (free !== null) expect(sum(free, points)).toBeLessThanOrEqual(least * (1 + 1e-9) + 1e-9)
        },
      ),
      fixed,
    )
  })

  it('a north-up scan of 100 pixels to the metre lies as it should', () => {
    const points = [
      { spot: { u: 0, v: 0 }, at: { x: 10, y: 50 } },
      { spot: { u: 1000, v: 0 }, at: { x: 20, y: 50 } },
    ]
    const found = similarPlacing(points)!
    expect(placed(found, { u: 1000, v: 500 }).x).toBeCloseTo(20, 9)
    expect(placed(found, { u: 1000, v: 500 }).y).toBeCloseTo(45, 9)
  })

  it('points that say nothing give no placing', () => {
    const at = { x: 3, y: 4 }
    const one = { spot: { u: 5, v: 5 }, at }
    expect(similarPlacing([one])).toBeNull()
    expect(similarPlacing([one, one])).toBeNull()
    expect(similarPlacing([one, { spot: { u: 900, v: 5 }, at }])).toBeNull()
    const line = [0, 1, 2].map(i => ({ spot: { u: i * 100, v: i * 50 }, at: { x: i, y: i * i } }))
    expect(slantedPlacing(line)).toBeNull()
    // Seen from below: the picture would have to be turned over.
    const over = [
      { spot: { u: 0, v: 0 }, at: { x: 0, y: 0 } },
      { spot: { u: 100, v: 0 }, at: { x: 10, y: 0 } },
      { spot: { u: 0, v: 100 }, at: { x: 0, y: 10 } },
    ]
    expect(slantedPlacing(over)).toBeNull()
  })
})

it('a measured side gets its length and bearing, its middle stays, and the shape of the picture is kept', () => {
  fc.assert(
    fc.property(slanted, spread, finite(1, 500), finite(0, 359), (placing, [from, to, third], length, towards) => {
      const found = sidePlacing(placing, { from: from!, to: to!, length, bearing: towards })!
      const [a, b] = [placed(found, from!), placed(found, to!)]
      expect(distance(a, b) / length).toBeCloseTo(1, 9)
      const turn = Math.abs(bearing(a, b) - towards)
      expect(Math.min(turn, 360 - turn)).toBeLessThan(close)
      const middle = { u: (from!.u + to!.u) / 2, v: (from!.v + to!.v) / 2 }
      expect(distance(placed(found, middle), placed(placing, middle))).toBeLessThan(close)
      const ratio = (of: Placing) =>
        distance(placed(of, from!), placed(of, third!)) / distance(placed(of, from!), placed(of, to!))
      expect(ratio(found) / ratio(placing)).toBeCloseTo(1, 6)
    }),
    fixed,
  )
})

it('a spot is found again from its position', () => {
  fc.assert(
    fc.property(slanted, spot, (placing, each) => {
      const back = spotAt(placing, placed(placing, each))!
      expect(Math.hypot(back.u - each.u, back.v - each.v)).toBeLessThan(close)
      expect(isPlacing(placing)).toBe(true)
    }),
    fixed,
  )
})
