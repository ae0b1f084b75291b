import proj4 from 'proj4'

/** WGS84 position as RFC 7946 writes it: longitude first, degrees; a third figure (altitude) is kept but not used. */
export type LngLat = readonly [lng: number, lat: number, ...altitude: number[]]

/** Position in a plan's own flat frame: x east, y north of its centre, metres. */
export type Metres = { readonly x: number; readonly y: number }

export type Plane = {
  readonly centre: LngLat
  toMetres(position: LngLat): Metres
  toLngLat(position: Metres): LngLat
}

/**
 * The one flat metric frame of a plan: transverse Mercator, scale 1, WGS84 ellipsoid, centred on `centre`.
 * Distances match the geodesic to 1e-6 relative within 3 km (Snyder 1987, USGS Professional Paper 1395).
 */
export function planeAt(centre: LngLat): Plane {
  const [lng, lat] = centre
  if (!Number.isFinite(lng) || !Number.isFinite(lat)) throw new RangeError(`no plane at ${lng}, ${lat}`)
  const projection = proj4(`+proj=tmerc +lat_0=${lat} +lon_0=${lng} +k=1 +x_0=0 +y_0=0 +ellps=WGS84 +units=m +no_defs`)
  return {
    centre,
    toMetres(position) {
      const [x, y] = projection.forward([position[0], position[1]]) as [number, number]
      return { x, y }
    },
    toLngLat(position) {
      const [lngBack, latBack] = projection.inverse([position.x, position.y]) as [number, number]
      return [lngBack, latBack]
    },
  }
}

type Positioned = { readonly geometry: { readonly coordinates: unknown } }

/** Middle of the bounding box, in degrees, of all positions of all features; null when there are none. */
export function centreOf(features: readonly Positioned[]): LngLat | null {
  let west = Number.POSITIVE_INFINITY
  let south = Number.POSITIVE_INFINITY
  let east = Number.NEGATIVE_INFINITY
  let north = Number.NEGATIVE_INFINITY
  const visit = (coordinates: unknown): void => {
    if (!Array.isArray(coordinates)) return
    const [lng, lat] = coordinates
    if (typeof lng === 'number' && typeof lat === 'number') {
      west = Math.min(west, lng)
      east = Math.max(east, lng)
      south = Math.min(south, lat)
      north = Math.max(north, lat)
      return
    }
    for (const part of coordinates) visit(part)
  }
  for (const feature of features) visit(feature.geometry.coordinates)
  return west <= east ? [(west + east) / 2, (south + north) / 2] : null
}

/** The plane of a whole plan; features of every kind count towards its centre. */
export function planeOf(features: readonly Positioned[]): Plane {
  return planeAt(centreOf(features) ?? [0, 0])
}
