import type { LngLat } from '#geo/space/plane'

/** Spherical Mercator of the whole earth on the unit square: x east, y south; what map tiles use. */
export function unitX(lng: number): number {
  return lng / 360 + 0.5
}

export function unitY(lat: number): number {
  const sin = Math.sin((lat * Math.PI) / 180)
  return 0.5 - Math.log((1 + sin) / (1 - sin)) / (4 * Math.PI)
}

/** Pixels that one metre takes at a latitude, where the whole earth is `worldSize` pixels wide. */
export function pixelsPerMetre(lat: number, worldSize: number): number {
  return worldSize / (earthRound * Math.cos((lat * Math.PI) / 180))
}

/** Way round the equator, m (WGS84 semi-major axis 6378137 m). */
const earthRound = 2 * Math.PI * 6_378_137

/** All points at once: lng, lat, … in degrees to x, y, … on the unit square. */
export function unitPoints(lngLat: Float64Array): Float64Array {
  const unit = new Float64Array(lngLat.length)
  for (let i = 0; i + 1 < lngLat.length; i += 2) {
    unit[i] = unitX(lngLat[i]!)
    unit[i + 1] = unitY(lngLat[i + 1]!)
  }
  return unit
}

/** Middle of a list of positions' bounding box. */
export function middleOf(points: readonly LngLat[]): LngLat {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [lng, lat] of points) {
    west = Math.min(west, lng)
    east = Math.max(east, lng)
    south = Math.min(south, lat)
    north = Math.max(north, lat)
  }
  return [(west + east) / 2, (south + north) / 2]
}
