import type { Metres } from './plane'
import { distance } from './shape'

/** A spot on a picture: pixels right and down from its top left corner. */
export type Spot = { readonly u: number; readonly v: number }

/** Where a picture lies in the plane: the position of the spot (u, v) is `origin` + u `right` + v `down`. Metres per pixel. */
export type Placing = { readonly origin: Metres; readonly right: Metres; readonly down: Metres }

/** A spot whose place on the ground is known. */
export type KnownPoint = { readonly spot: Spot; readonly at: Metres }

export function placed({ origin, right, down }: Placing, { u, v }: Spot): Metres {
  return { x: origin.x + u * right.x + v * down.x, y: origin.y + u * right.y + v * down.y }
}

/** The spot that lies at a position; null where the picture has no area. */
export function spotAt({ origin, right, down }: Placing, { x, y }: Metres): Spot | null {
  const area = right.x * down.y - right.y * down.x
  const [dx, dy] = [x - origin.x, y - origin.y]
  const spot = { u: (dx * down.y - dy * down.x) / area, v: (dy * right.x - dx * right.y) / area }
  return Number.isFinite(spot.u) && Number.isFinite(spot.v) ? spot : null
}

/** Spots or positions nearer to one line than this share of their spread do not say how a picture lies. */
const leastBreadth = 1e-3

type Moments = { readonly uu: number; readonly uv: number; readonly vv: number }

function middleOf(points: readonly KnownPoint[]): { readonly spot: Spot; readonly at: Metres } {
  const mean = (of: (point: KnownPoint) => number) => points.reduce((sum, point) => sum + of(point), 0) / points.length
  return {
    spot: { u: mean(p => p.spot.u), v: mean(p => p.spot.v) },
    at: { x: mean(p => p.at.x), y: mean(p => p.at.y) },
  }
}

/**
 * The placing that turns, scales and moves a picture but keeps its shape, with the least sum of squared distances between
 * the known positions and where it puts their spots. At least two points; null where their spots, or positions, coincide.
 * Source: Umeyama 1991, without mirroring.
 */
export function similarPlacing(points: readonly KnownPoint[]): Placing | null {
  if (points.length < 2) return null
  const middle = middleOf(points)
  let spread = 0
  let along = 0
  let across = 0
  for (const { spot, at } of points) {
    // Pixels count downwards, the plane upwards: v is turned over before the two are compared.
    const [u, w] = [spot.u - middle.spot.u, middle.spot.v - spot.v]
    const [x, y] = [at.x - middle.at.x, at.y - middle.at.y]
    spread += u * u + w * w
    along += u * x + w * y
    across += u * y - w * x
  }
  const [a, b] = [along / spread, across / spread]
  // A tenth of a millimetre a pixel: nothing a picture of ground could mean.
  if (!(Math.hypot(a, b) > 1e-7)) return null
  return through(middle, { right: { x: a, y: b }, down: { x: b, y: -a } })
}

/**
 * The placing that may also stretch and slant the picture, by the same least squares. At least three points; null where
 * their spots lie on one line, or it would turn the picture over.
 */
export function slantedPlacing(points: readonly KnownPoint[]): Placing | null {
  if (points.length < 3) return null
  const middle = middleOf(points)
  const sums = { uu: 0, uv: 0, vv: 0, ux: 0, vx: 0, uy: 0, vy: 0 }
  for (const { spot, at } of points) {
    const [u, v] = [spot.u - middle.spot.u, spot.v - middle.spot.v]
    const [x, y] = [at.x - middle.at.x, at.y - middle.at.y]
    sums.uu += u * u
    sums.uv += u * v
    sums.vv += v * v
    sums.ux += u * x
    sums.vx += v * x
    sums.uy += u * y
    sums.vy += v * y
  }
  if (!(breadth(sums) > leastBreadth)) return null
  const determinant = sums.uu * sums.vv - sums.uv * sums.uv
  const solve = (up: number, vp: number) => [
    (sums.vv * up - sums.uv * vp) / determinant,
    (sums.uu * vp - sums.uv * up) / determinant,
  ]
  const [rightX, downX] = solve(sums.ux, sums.vx) as [number, number]
  const [rightY, downY] = solve(sums.uy, sums.vy) as [number, number]
  const placing = through(middle, { right: { x: rightX, y: rightY }, down: { x: downX, y: downY } })
  return isPlacing(placing) ? placing : null
}

/** Breadth of a cloud of spots across its longest direction, as a share of its length there. */
function breadth({ uu, uv, vv }: Moments): number {
  const half = (uu + vv) / 2
  const apart = Math.hypot((uu - vv) / 2, uv)
  return Math.sqrt(Math.max(0, half - apart) / (half + apart))
}

function through(middle: { spot: Spot; at: Metres }, axes: { right: Metres; down: Metres }): Placing {
  const zero = placed({ origin: { x: 0, y: 0 }, ...axes }, middle.spot)
  return { origin: { x: middle.at.x - zero.x, y: middle.at.y - zero.y }, ...axes }
}

/** Whether a picture placed so can be seen: it has an area, is not turned over, and all figures are numbers. */
export function isPlacing({ origin, right, down }: Placing): boolean {
  const area = right.y * down.x - right.x * down.y
  const isThin = area <= leastBreadth * Math.hypot(right.x, right.y) * Math.hypot(down.x, down.y)
  return !isThin && [origin.x, origin.y, area].every(Number.isFinite)
}

/** Distance of each known position from where the placing puts its spot, m. */
export function misfits(placing: Placing, points: readonly KnownPoint[]): readonly number[] {
  return points.map(({ spot, at }) => distance(placed(placing, spot), at))
}

/** Turned by degrees clockwise and scaled about the position of a spot, which stays. */
export function turned(placing: Placing, about: Spot, change: { degrees?: number; scale?: number }): Placing {
  const { degrees = 0, scale = 1 } = change
  const angle = (degrees * Math.PI) / 180
  const [cos, sin] = [scale * Math.cos(angle), scale * Math.sin(angle)]
  const turn = ({ x, y }: Metres): Metres => ({ x: cos * x + sin * y, y: cos * y - sin * x })
  const axes = { right: turn(placing.right), down: turn(placing.down) }
  return through({ spot: about, at: placed(placing, about) }, axes)
}

export function shifted(placing: Placing, by: Metres): Placing {
  return { ...placing, origin: { x: placing.origin.x + by.x, y: placing.origin.y + by.y } }
}

/** A side on a picture whose length on the ground was measured, m; with its bearing from the first end, where that is known. */
export type MeasuredSide = {
  readonly from: Spot
  readonly to: Spot
  readonly length: number
  readonly bearing?: number | undefined
}

/** Scaled, and turned where the bearing is known, until the side is as measured; the middle of the side stays. */
export function sidePlacing(placing: Placing, { from, to, length, bearing }: MeasuredSide): Placing | null {
  const [a, b] = [placed(placing, from), placed(placing, to)]
  const now = distance(a, b)
  if (!(now > 0) || !(length > 0)) return null
  const heading = (Math.atan2(b.x - a.x, b.y - a.y) * 180) / Math.PI
  const middle = { u: (from.u + to.u) / 2, v: (from.v + to.v) / 2 }
  const degrees = bearing === undefined ? 0 : bearing - heading
  return turned(placing, middle, { degrees, scale: length / now })
}
