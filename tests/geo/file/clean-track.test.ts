import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { trackDefaults } from '#geo/data/track-figures'
import { cleanTrack, trackCut } from '#geo/file/clean-track'
import { straightRows } from '#geo/file/straight-rows'
import type { Track } from '#geo/file/track'
import type { LngLat, Metres } from '#geo/space/plane'
import { localFrame } from '#geo/space/ring'
import { bearing, distance } from '#geo/space/shape'

const seed = 20261125
const start: LngLat = [-1.7, 52.2]
const toLocal = localFrame(start)
const { fastest, pauseRadius, pauseTime } = trackDefaults
const unit = toLocal([start[0] + 1, start[1] + 1])
const toLngLat = ({ x, y }: Metres): LngLat => [start[0] + x / unit.x, start[1] + y / unit.y]

/** Walking pace, m/s; a fix a second. */
const pace = 1.4

/** A walk past these corners, metres, with a point a second. */
function walk(corners: readonly Metres[]): Track {
  const points: Metres[] = []
  for (let i = 1; i < corners.length; i += 1) {
    const [a, b] = [corners[i - 1]!, corners[i]!]
    const count = Math.max(1, Math.round(distance(a, b) / pace))
    for (let j = 0; j < count; j += 1)
      points.push({ x: a.x + ((b.x - a.x) * j) / count, y: a.y + ((b.y - a.y) * j) / count })
  }
  points.push(corners.at(-1)!)
  return { positions: points.map(toLngLat), times: points.map((_, i) => 1000 * i) }
}

/** Corners of a walk whose legs turn by less than a right angle, so that it never comes back upon itself. */
const corners = fc
  .array(fc.tuple(fc.double({ min: 20, max: 120, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true })), {
    minLength: 1,
    maxLength: 5,
  })
  .map(legs => {
    const path: Metres[] = [{ x: 0, y: 0 }]
    let angle = 0
    for (const [length, turn] of legs) {
      angle += turn
      const last = path.at(-1)!
      path.push({ x: last.x + length * Math.cos(angle), y: last.y + length * Math.sin(angle) })
    }
    return path
  })

const spike = fc.record({
  where: fc.nat(),
  away: fc.double({ min: 40, max: 500, noNaN: true }),
  angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
})
const pause = fc.record({
  where: fc.nat(),
  points: fc.integer({ min: pauseTime + 1, max: 90 }),
  angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
})

/** The track with one fix thrown far away between two others. */
function withSpike(
  { positions, times }: Track,
  { where, away, angle }: { where: number; away: number; angle: number },
): Track {
  const i = 1 + (where % (positions.length - 1))
  const from = toLocal(positions[i - 1]!)
  const off = toLngLat({ x: from.x + away * Math.cos(angle), y: from.y + away * Math.sin(angle) })
  const time = (times[i - 1]! + times[i]!) / 2
  return { positions: positions.toSpliced(i, 0, off), times: times.toSpliced(i, 0, time) }
}

/** The track with a stop, in which the fix wanders about a quarter of the circle a pause is known by. */
function withPause(
  { positions, times }: Track,
  { where, points, angle }: { where: number; points: number; angle: number },
): Track {
  const i = where % positions.length
  const at = toLocal(positions[i]!)
  const stop = Array.from({ length: points }, (_, j) => {
    const size = (pauseRadius / 4) * ((j % 3) / 2)
    return toLngLat({ x: at.x + size * Math.cos(angle + j), y: at.y + size * Math.sin(angle + j) })
  })
  const began = times[i]!
  return {
    positions: positions.toSpliced(i + 1, 0, ...stop),
    times: [
      ...times.slice(0, i + 1),
      ...stop.map((_, j) => began + 1000 * (j + 1)),
      ...times.slice(i + 1).map(time => time! + 1000 * points),
    ],
  }
}

/** The farthest that any point of one line is from the other line, m. */
function farthest(from: readonly LngLat[], to: readonly LngLat[]): number {
  const line = to.map(toLocal)
  return Math.max(
    ...from.map(toLocal).map(point =>
      Math.min(
        ...line.map((b, i) => {
          const a = line[Math.max(0, i - 1)]!
          const length = distance(a, b) ** 2
          const share = length === 0 ? 0 : ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / length
          const clamped = Math.min(1, Math.max(0, share))
          return distance(point, { x: a.x + clamped * (b.x - a.x), y: a.y + clamped * (b.y - a.y) })
        }),
      ),
    ),
  )
}

describe('a walked track', () => {
  it('that is clean stays as it is', () => {
    fc.assert(
      fc.property(corners, path => {
        expect(cleanTrack(walk(path))).toEqual(walk(path))
      }),
      { seed, numRuns: 60 },
    )
  })

  it('with spikes is the clean one again, to the point', () => {
    fc.assert(
      fc.property(corners, spike, (path, thrown) => {
        const track = walk(path)
        expect(cleanTrack(withSpike(track, thrown))).toEqual(track)
      }),
      { seed, numRuns: 150 },
    )
  })

  it('tells how many stops and stray points are cut', () => {
    const [corner, end] = [
      { x: 100, y: 0 },
      { x: 100, y: 80 },
    ]
    const plain = walk([{ x: 0, y: 0 }, corner, end])
    expect(trackCut(plain)).toEqual({ strays: 0, pauses: 0 })
    const stops = [30, 120].reduce((track, where) => withPause(track, { where, points: 60, angle: 1 }), plain)
    expect(trackCut(stops)).toEqual({ strays: 0, pauses: 2 })
    const thrown = withSpike(withSpike(stops, { where: 10, away: 200, angle: 2 }), { where: 105, away: 90, angle: 4 })
    expect(trackCut(thrown)).toEqual({ strays: 2, pauses: 2 })
    expect(trackCut({ positions: [], times: [] })).toEqual({ strays: 0, pauses: 0 })
  })

  it('with stops and spikes lies within the circle of a stop from the clean one', () => {
    fc.assert(
      fc.property(
        corners,
        fc.array(pause, { maxLength: 3 }),
        fc.array(spike, { maxLength: 1 }),
        (path, stops, spikes) => {
          const track = walk(path)
          const spoilt = spikes.reduce(withSpike, stops.reduce(withPause, track))
          const clean = cleanTrack(spoilt)
          expect(farthest(clean.positions, track.positions)).toBeLessThan(pauseRadius + 1e-6)
          expect(farthest(track.positions, clean.positions)).toBeLessThan(pauseRadius + 1e-6)
        },
      ),
      { seed, numRuns: 100 },
    )
  })

  it('without times loses spikes and stops as well, and keeps the sharp turns of a track of corners alone', () => {
    const track = walk([
      { x: 0, y: 0 },
      { x: 60, y: 0 },
    ])
    const bare = ({ positions }: Track): Track => ({ positions, times: positions.map(() => null) })
    expect(cleanTrack(bare(withSpike(track, { where: 20, away: 60, angle: 1 }))).positions).toEqual(track.positions)
    const stopped = cleanTrack(bare(withPause(track, { where: 20, points: 60, angle: 1 })))
    expect(stopped.positions.length).toBeLessThan(track.positions.length)
    expect(farthest(stopped.positions, track.positions)).toBeLessThan(pauseRadius)
    const turns = [
      { x: 0, y: 0 },
      { x: 0, y: 100 },
      { x: 4, y: 100 },
      { x: 4, y: 0 },
    ].map(toLngLat)
    expect(cleanTrack({ positions: turns, times: turns.map(() => null) }).positions).toEqual(turns)
  })

  it('keeps a gap: a device that was off goes on elsewhere', () => {
    const [one, two] = [
      walk([
        { x: 0, y: 0 },
        { x: 30, y: 0 },
      ]),
      walk([
        { x: 300, y: 0 },
        { x: 330, y: 0 },
      ]),
    ]
    const gap = {
      positions: [...one.positions, ...two.positions],
      times: [...one.times, ...two.times.map(time => time! + 23_000)],
    }
    expect(distance(toLocal(one.positions.at(-1)!), toLocal(two.positions[0]!))).toBeGreaterThan(fastest * 1)
    expect(cleanTrack(gap)).toEqual(gap)
  })

  it('around an area is closed, and cut off where it runs past its beginning', () => {
    const round = walk([
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 60 },
      { x: 3, y: 60 },
      { x: 3, y: -6 },
    ])
    const { positions } = cleanTrack(round, { isRing: true })
    expect(positions.at(-1)).toEqual(positions[0])
    const { x, y } = toLocal(positions[0]!)
    // The first point behind the crossing at (3, 0), at most a step off.
    expect(Math.hypot(x - 3, y)).toBeLessThan(2 * pace)
    const open = walk([
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 60 },
    ])
    expect(cleanTrack(open, { isRing: true }).positions).toEqual([...open.positions, open.positions[0]])
  })
})

describe('rows from a walk up one and down the next', () => {
  it('are as many as were walked, where and as they stand', () => {
    const field = fc.record({
      rows: fc.integer({ min: 1, max: 6 }),
      length: fc.double({ min: 40, max: 150, noNaN: true }),
      apart: fc.double({ min: 4, max: 8, noNaN: true }),
      noise: fc.double({ min: 0, max: 0.5, noNaN: true }),
    })
    fc.assert(
      fc.property(field, ({ rows, length, apart, noise }) => {
        const path = Array.from({ length: rows }, (_, i) =>
          (i % 2 === 0 ? [0, length] : [length, 0]).map(y => ({ x: i * apart, y })),
        ).flat()
        const positions = walk(path).positions.map((position, i) => {
          const { x, y } = toLocal(position)
          return toLngLat({ x: x + noise * Math.sin(12.9 * i), y })
        })
        const found = straightRows(positions)
        expect(found).toHaveLength(rows)
        for (const [i, row] of found.entries()) {
          const [from, to] = row.map(toLocal)
          // The headland's few points draw an end aside by less than what it may bend.
          for (const end of [from!, to!]) expect(Math.abs(end.x - i * apart)).toBeLessThan(3)
          expect(Math.abs(Math.abs(to!.y - from!.y) - length)).toBeLessThan(3)
          expect(Math.abs(Math.sin((bearing(from!, to!) * Math.PI) / 180))).toBeLessThan(3 / length)
        }
      }),
      { seed, numRuns: 100 },
    )
  })

  it('a line without a straight stretch comes back as it is', () => {
    const circle = Array.from({ length: 40 }, (_, i) =>
      toLngLat({ x: 4.5 * Math.cos(i / 6), y: 4.5 * Math.sin(i / 6) }),
    )
    expect(straightRows(circle)).toEqual([circle])
  })
})
