import { isPlacing, type Placing, placed } from '../space/placing'
import { type Metres, type Plane, planeAt } from '../space/plane'
import type { Picture } from './plan'

/** Characters of a picture in a file: some nine megabytes. Larger ones are kept, but not shown. */
export const largestImage = 12_000_000

/**
 * What a picture in a file may be: bytes of one of three formats, written out. An address would be fetched from
 * somewhere, and drawings of the other formats can hold more than a picture.
 */
const imageStart = /^data:image\/(jpeg|png|webp);base64,[A-Za-z0-9+/]/

export type ImageFault = 'kind' | 'size'

/** Why a picture's image from a file is not shown; null where it can be. */
export function imageFault(image: string): ImageFault | null {
  if (image.length > largestImage) return 'size'
  return imageStart.test(image) ? null : 'kind'
}

/** Where a picture lies in a plane; null where its corners leave it no area, or turn it over. */
export function placingOf({ corners, width, height }: Picture, plane: Plane): Placing | null {
  const [origin, topRight, bottomLeft] = corners.map(corner => plane.toMetres(corner)) as [Metres, Metres, Metres]
  const per = (to: Metres, pixels: number): Metres => ({ x: (to.x - origin.x) / pixels, y: (to.y - origin.y) / pixels })
  const placing = { origin, right: per(topRight, width), down: per(bottomLeft, height) }
  return isPlacing(placing) ? placing : null
}

/** Whether a picture has a size, and a place where it can be seen. */
export function isPlaced(picture: Picture): boolean {
  if (!(picture.width > 0) || !(picture.height > 0)) return false
  const isOnEarth = picture.corners.every(([lng, lat]) => Math.abs(lng) <= 180 && Math.abs(lat) <= 85)
  return isOnEarth && placingOf(picture, planeAt(picture.corners[0])) !== null
}

/** The corners that a picture of `width` times `height` pixels has where it is placed so. */
export function cornersOf(
  placing: Placing,
  { width, height }: Pick<Picture, 'width' | 'height'>,
  plane: Plane,
): Picture['corners'] {
  const at = (u: number, v: number) => plane.toLngLat(placed(placing, { u, v }))
  return [at(0, 0), at(width, 0), at(0, height)]
}
