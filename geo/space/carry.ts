import { type LngLat, planeAt } from './plane'

/** Stretch by which degrees are compared with metres, degrees: some hundred metres. */
const stretch = 1e-3

/**
 * Carries positions by a step in degrees, given for `from`, so that what lies together keeps its shape in metres: further
 * north a degree of longitude is shorter, and a long row carried by plain degrees would lose a part of its length. Things
 * of some hundred metres keep their lengths to a tenth of a millimetre over steps of a kilometre.
 */
export function carrying(
  from: LngLat,
  by: { readonly lng: number; readonly lat: number },
): (position: LngLat) => LngLat {
  const [lng, lat] = from
  const [here, there] = [from, [lng, lat + by.lat] as const].map(at => metresPerDegree(at))
  const east = shareOf(here!.east, there!.east)
  const north = shareOf(here!.north, there!.north)
  return ([x, y, ...rest]) => [
    // The step itself is added whole, so that what stands at `from` lands exactly.
    x + by.lng + (x - lng) * (east - 1),
    y + by.lat + (y - lat) * (north - 1),
    ...rest,
  ]
}

/** At the poles and beyond the map nothing has a shape to keep. */
function shareOf(here: number, there: number): number {
  const share = here / there
  return Number.isFinite(share) && share > 0 ? share : 1
}

function metresPerDegree(at: LngLat): { readonly east: number; readonly north: number } {
  const plane = planeAt(at)
  const [lng, lat] = at
  const half = stretch / 2
  const width = plane.toMetres([lng + half, lat]).x - plane.toMetres([lng - half, lat]).x
  const height = plane.toMetres([lng, lat + half]).y - plane.toMetres([lng, lat - half]).y
  return { east: width / stretch, north: height / stretch }
}
