import { trackDefaults } from '../data/track-figures'
import type { LngLat, Metres } from '../space/plane'
import { localFrame } from '../space/ring'
import { distance } from '../space/shape'

const { rowTolerance, leastRow } = trackDefaults
/** The share of a stretch's points at either end that may be of the turn from one row to the next. */
const turning = 0.15
/** Points looked at before a track is left as it is: ten times what a tidy one of the largest size needs. */
const mostSteps = 50_000_000

export type StraightOptions = { readonly tolerance?: number; readonly leastLength?: number }

/**
 * The straight stretches of a walked line as lines of two points: the line is split where it bends by more than the
 * tolerance (Douglas and Peucker 1973), each long stretch lies along the principal axis of its points but for the turns at its ends. A line without
 * such a stretch comes back as it is.
 */
export function straightRows(
  line: readonly LngLat[],
  { tolerance = rowTolerance, leastLength = leastRow }: StraightOptions = {},
): readonly (readonly LngLat[])[] {
  const first = line[0]
  if (first === undefined) return [line]
  const toLocal = localFrame(first)
  const points = line.map(toLocal)
  // One degree each way gives the frame's scale back.
  const unit = toLocal([first[0] + 1, first[1] + 1])
  const toLngLat = ({ x, y }: Metres): LngLat => [first[0] + x / unit.x, first[1] + y / unit.y]
  const bends = bendsOf(points, tolerance)
  if (bends === null) return [line]
  const rows = longStretches(points, bends, { tolerance, leastLength }).map(({ from, to, axis }) =>
    [from, to].map(end => toLngLat(onAxis(points[end]!, axis))),
  )
  return rows.length === 0 ? [line] : rows
}

/** Places in the list where the line bends, its ends among them; null where it would take too long to tell. */
function bendsOf(points: readonly Metres[], tolerance: number): readonly number[] | null {
  const bends = new Set([0, points.length - 1])
  const open: [number, number][] = [[0, points.length - 1]]
  let steps = 0
  for (let range = open.pop(); range !== undefined; range = open.pop()) {
    const [start, end] = range
    steps += end - start
    if (steps > mostSteps) return null
    let farthest = start
    let most = tolerance
    for (let i = start + 1; i < end; i += 1) {
      const away = distanceToLeg(points[i]!, points[start]!, points[end]!)
      if (away > most) {
        most = away
        farthest = i
      }
    }
    if (farthest === start) continue
    bends.add(farthest)
    open.push([start, farthest], [farthest, end])
  }
  return [...bends].sort((a, b) => a - b)
}

function distanceToLeg(point: Metres, a: Metres, b: Metres): number {
  const along = { x: b.x - a.x, y: b.y - a.y }
  const length = along.x ** 2 + along.y ** 2
  const share = length === 0 ? 0 : ((point.x - a.x) * along.x + (point.y - a.y) * along.y) / length
  const clamped = Math.min(1, Math.max(0, share))
  return distance(point, { x: a.x + clamped * along.x, y: a.y + clamped * along.y })
}

type Stretch = { readonly from: number; readonly to: number; readonly axis: Axis }

/**
 * The stretches between bends that are long enough, each as far as it goes on past them, in the order of the walk. The
 * longest have first choice, so that what they go on into is not taken for one more.
 */
function longStretches(
  points: readonly Metres[],
  bends: readonly number[],
  { tolerance, leastLength }: Required<StraightOptions>,
): readonly Stretch[] {
  const reachOf = (from: number, to: number) => distance(points[from]!, points[to]!)
  const open = bends.slice(1).map((to, i) => ({ from: bends[i]!, to }))
  const taken = new Uint8Array(points.length)
  const found: Stretch[] = []
  for (let { from, to } of open.sort((a, b) => reachOf(b.from, b.to) - reachOf(a.from, a.to))) {
    while (from < to && taken[from] === 1) from += 1
    while (to > from && taken[to] === 1) to -= 1
    if (reachOf(from, to) < leastLength) continue
    const axis = axisOf(points.slice(from, to + 1))
    const stretch = {
      from: reach(points, from, -1, { axis, tolerance }),
      to: reach(points, to, 1, { axis, tolerance }),
      axis,
    }
    taken.fill(1, stretch.from, stretch.to + 1)
    found.push(stretch)
  }
  return found.sort((a, b) => a.from - b.from)
}

type Axis = { readonly middle: Metres; readonly unit: Metres }

/** The principal axis of a stretch's points between the turns. */
function axisOf(stretch: readonly Metres[]): Axis {
  const cut = Math.floor(turning * stretch.length)
  const points = stretch.slice(cut, stretch.length - cut)
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  }
  let [xx, xy, yy] = [0, 0, 0]
  for (const { x, y } of points) {
    xx += (x - middle.x) ** 2
    xy += (x - middle.x) * (y - middle.y)
    yy += (y - middle.y) ** 2
  }
  // The axis of the greatest spread: half the angle of the doubled covariance (Pearson 1901).
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  return { middle, unit: { x: Math.cos(angle), y: Math.sin(angle) } }
}

function alongAxis({ x, y }: Metres, { middle, unit }: Axis): number {
  return (x - middle.x) * unit.x + (y - middle.y) * unit.y
}

function onAxis(point: Metres, axis: Axis): Metres {
  const along = alongAxis(point, axis)
  return { x: axis.middle.x + along * axis.unit.x, y: axis.middle.y + along * axis.unit.y }
}

/**
 * How far a stretch goes on past the place where the line was split, in the list: as long as the points stay on its axis
 * and go on along it. The split itself lies where the fixes happen to be worst, not where the row ends.
 */
function reach(
  points: readonly Metres[],
  from: number,
  step: 1 | -1,
  { axis, tolerance }: { readonly axis: Axis; readonly tolerance: number },
): number {
  const inner = alongAxis(points[from]!, axis) >= 0 ? 1 : -1
  let at = from
  for (;;) {
    const next = points[at + step]
    if (next === undefined || distance(next, onAxis(next, axis)) > tolerance / 2) return at
    if ((alongAxis(next, axis) - alongAxis(points[at]!, axis)) * inner <= 0) return at
    at += step
  }
}
