import type { LngLat } from '../space/plane'

/** A path walked with a device: its points, and when each was taken, milliseconds since 1970; null where not known. */
export type Track = { readonly positions: readonly LngLat[]; readonly times: readonly (number | null)[] }
