import type { PictureMove } from '#geo/plan/edits-pictures'
import { placingOf } from '#geo/plan/pictures'
import type { Picture } from '#geo/plan/plan'
import { type Placing, placed, type Spot, shifted, spotAt, turned } from '#geo/space/placing'
import type { LngLat, Metres } from '#geo/space/plane'
import { bearing, distance } from '#geo/space/shape'
import { type Pixel, pixelDistance, type ToolContext } from './tool'
import { gripBeyond } from './turn-grip'

/** What a press on a picture takes hold of. A corner is known by its spot; the spot across stays where it is. */
export type PictureGrip =
  | { readonly type: 'move' }
  | { readonly type: 'turn' }
  | { readonly type: 'size'; readonly spot: Spot; readonly across: Spot }

type Corner = Extract<PictureGrip, { type: 'size' }> & { readonly at: LngLat }

export type PictureGrips = {
  /** In their order round the picture, from the top left. */
  readonly corners: readonly Corner[]
  readonly turn: LngLat
  /** The middle of the upper side, which the turning grip stands before. */
  readonly top: LngLat
}

/** Where a picture can be taken hold of; null where it lies nowhere. */
export function gripsOf(picture: Picture, context: ToolContext): PictureGrips | null {
  const { plane } = context
  const placing = placingOf(picture, plane)
  if (placing === null) return null
  const { width, height } = picture
  const spots: readonly (readonly [number, number])[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
  const corners = spots.map(([u, v]): Corner => {
    const at = plane.toLngLat(placed(placing, { u, v }))
    return { type: 'size', spot: { u, v }, across: { u: width - u, v: height - v }, at }
  })
  const top = placed(placing, { u: width / 2, v: 0 })
  return { corners, top: plane.toLngLat(top), turn: gripBeyond(middleOf(picture, placing), top, context) }
}

export function gripAt(picture: Picture, at: LngLat, pixel: Pixel, context: ToolContext, within: number) {
  const grips = gripsOf(picture, context)
  const placing = placingOf(picture, context.plane)
  if (grips === null || placing === null) return null
  const away = (each: LngLat) => pixelDistance(context.toPixel(each), pixel)
  if (away(grips.turn) <= within) return { type: 'turn' } as const
  const corner = grips.corners.toSorted((a, b) => away(a.at) - away(b.at))[0]
  if (corner && away(corner.at) <= within) return corner
  const spot = spotAt(placing, context.plane.toMetres(at))
  const isInside = spot && spot.u >= 0 && spot.u <= picture.width && spot.v >= 0 && spot.v <= picture.height
  return isInside ? ({ type: 'move' } as const) : null
}

/** Smaller than this share at one pull is a slip of the hand. */
const smallest = 0.02

/** Where a picture lies once what was held at `from` has come to `to`. */
export function pulled(picture: Picture, placing: Placing, grip: PictureGrip, from: Metres, to: Metres): Placing {
  switch (grip.type) {
    case 'move':
      return shifted(placing, { x: to.x - from.x, y: to.y - from.y })
    case 'turn': {
      const middle = middleOf(picture, placing)
      return turned(placing, middleSpot(picture), { degrees: bearing(middle, to) - bearing(middle, from) })
    }
    case 'size': {
      const fixed = placed(placing, grip.across)
      const [before, after] = [minus(from, fixed), minus(to, fixed)]
      const share = (before.x * after.x + before.y * after.y) / (before.x ** 2 + before.y ** 2)
      return turned(placing, grip.across, { scale: Math.max(smallest, share) })
    }
    default:
      return grip satisfies never
  }
}

/** A step of the arrow keys: metres moved, degrees turned to the right, or percent larger. */
export function nudged(picture: Picture, placing: Placing, grip: PictureGrip['type'], by: Metres): Placing {
  switch (grip) {
    case 'move':
      return shifted(placing, by)
    case 'turn':
      return turned(placing, middleSpot(picture), { degrees: by.x - by.y })
    case 'size':
      return turned(placing, middleSpot(picture), { scale: 1 + (by.x + by.y) / 100 })
    default:
      return grip satisfies never
  }
}

export const moveWords: Readonly<Record<PictureGrip['type'], PictureMove>> = {
  move: 'Move',
  turn: 'Turn',
  size: 'Resize',
}

/** Metres that a picture is wide on the ground. */
export function widthOf({ width }: Picture, placing: Placing): number {
  return width * distance({ x: 0, y: 0 }, placing.right)
}

/** Where a picture's upper edge points to, degrees clockwise from north. */
export function headingOf({ down }: Placing): number {
  return bearing(down, { x: 0, y: 0 })
}

function middleSpot({ width, height }: Picture): Spot {
  return { u: width / 2, v: height / 2 }
}

function middleOf(picture: Picture, placing: Placing): Metres {
  return placed(placing, middleSpot(picture))
}

function minus(a: Metres, b: Metres): Metres {
  return { x: a.x - b.x, y: a.y - b.y }
}
