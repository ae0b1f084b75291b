import type { LngLat } from '#geo/space/plane'
import type { Keys, Pixel, PointerKind } from './tool'

/** What a point has fallen onto: where it is now, why in words, and the lines that show it. */
export type Snap = { readonly at: LngLat; readonly words: string; readonly guides: readonly (readonly LngLat[])[] }

/** Where a pointer is, and with what. */
export type Pointed = {
  readonly at: LngLat
  readonly pixel: Pixel
  readonly keys: Keys
  readonly pointer: PointerKind
}
