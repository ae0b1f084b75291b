import geographiclib from 'geographiclib-geodesic'
import proj4 from 'proj4'
import { describe, expect, test } from 'vitest'
import { evaluate } from '#geo/report/evaluate'
import { type LngLat, type Metres, planeAt } from '#geo/space/plane'
import { bearing, distance, polygonArea } from '#geo/space/shape'
import { relativeError } from '../support/near'
import { at, planOf } from '../support/orchard'
import { between, randomFor } from '../support/seeds'

/**
 * The flat frame of a plan against geodesics on the ellipsoid, as Karney's GeographicLib works them out (Karney 2013,
 * Algorithms for geodesics, Journal of Geodesy 87:43-55), and against printed figures of survey offices.
 */
const { Geodesic } = geographiclib
const wgs84 = Geodesic.WGS84

const degree = Math.PI / 180
/** Degrees from degrees, minutes and seconds; the sign is that of the degrees. */
const dms = (degrees: number, minutes: number, seconds: number): number =>
  Math.sign(degrees) * (Math.abs(degrees) + minutes / 60 + seconds / 3600)

/** Radius of curvature, squared: the product of the ellipsoid's two, m2. */
function radiusSquared(lat: number, { a, f }: { a: number; f: number } = wgs84): number {
  const e2 = f * (2 - f)
  const w2 = 1 - e2 * Math.sin(lat * degree) ** 2
  return (a * a * (1 - e2)) / (w2 * w2)
}

/** Length in metres, bearing in degrees at the first end. */
function geodesic(from: LngLat, to: LngLat): { length: number; azimuth: number } {
  const { s12, azi1 } = wgs84.Inverse(from[1], from[0], to[1], to[0])
  return { length: s12!, azimuth: azi1! }
}

describe('the ruler itself', () => {
  // Karney, GeodTest.dat, test set for geodesics (2010): lat1, azi1, lat2, lon2, s12, S12; lon1 = 0.
  const lines = [
    [23.287785477695, 87.82760486416, 20.45244059386692, 35.79736560816584, 3703998.3106422, 9687159334175.357],
    [56.310719132311, 155.158323803365, 56.30425838780839, 0.005380024608319352, 792.7231052, 3166757036.355314],
    [8.849455388939, 129.673344478389, 8.843107684651578, 0.007694428892432052, 1099.6867173, 834605908.55832],
  ] as const
  test.each(lines)('a line from %f on azimuth %f', (lat, azimuth, lat2, lng2, length, under) => {
    const line = wgs84.Inverse(lat, 0, lat2, lng2, Geodesic.ALL)
    expect(line.s12!).toBeCloseTo(length, 6)
    expect(line.azi1!).toBeCloseTo(azimuth, 6)
    // Printed to a micrometre squared; double precision keeps 15 of those digits.
    expect(Math.abs(line.S12! - under)).toBeLessThan(0.1)
  })

  // Karney, Planimeter tests of GeographicLib.
  test('areas of a polar cap and of one square degree at the equator', () => {
    const areaOf = (corners: readonly (readonly [lat: number, lng: number])[]) => {
      const polygon = wgs84.Polygon(false)
      for (const [lat, lng] of corners) polygon.AddPoint(lat, lng)
      return polygon.Compute(false, true)
    }
    const cap = areaOf([0, 90, 180, 270].map(lng => [89, lng] as const))
    expect(cap.perimeter).toBeCloseTo(631819.8745, 4)
    expect(Math.abs(cap.area! - 24952305678)).toBeLessThan(1)
    const square = areaOf([
      [0, 0],
      [0, 1],
      [1, 1],
      [1, 0],
    ])
    expect(square.perimeter).toBeCloseTo(443770.917, 3)
    expect(Math.abs(square.area! - 12308778361)).toBeLessThan(1)
  })
})

describe('distances in the plane', () => {
  /**
   * The scale of transverse Mercator is 1 + x2/2R2 (Snyder 1987, USGS Professional Paper 1395, eq. 8-11), so within 3 km
   * of the centre a length is off by at most this share; beside it 50 nm, which is what is left of a degree's last digits.
   */
  const reach = 3000
  const most = (lat: number) => (1.001 * reach * reach) / (2 * radiusSquared(lat))
  const centres: readonly LngLat[] = [
    [0.16, 52.59],
    [-123.165, 44.425],
    [20.52, 47.3],
    [-111.82, 41.7],
    [0, 0],
    [-78.5, -0.2],
    [18.7, -33.9],
    [172.6, -43.5],
    [179.99, -41.3],
    [-71.2, -54.8],
    [25.7, 66.5],
    [140.4, 36.1],
  ]

  test.each(centres)('match the geodesic to 1e-6 within 3 km of %f, %f', (lng, lat) => {
    const random = randomFor('geodesicLines')
    const plane = planeAt([lng, lat])
    const somewhere = (): Metres => {
      const [angle, radius] = [between(random, 0, 2 * Math.PI), reach * Math.sqrt(random())]
      return { x: radius * Math.sin(angle), y: radius * Math.cos(angle) }
    }
    expect(most(lat)).toBeLessThan(1e-6)
    for (let i = 0; i < 300; i += 1) {
      // The lines start from positions on the ellipsoid, so that going back is not needed to be right.
      const [from, to] = [plane.toLngLat(somewhere()), plane.toLngLat(somewhere())]
      const exact = geodesic(from, to).length
      const flat = distance(plane.toMetres(from), plane.toMetres(to))
      expect(Math.abs(flat - exact)).toBeLessThan(most(lat) * exact + 5e-8)
    }
  })

  test.each(centres)('point the same way from the centre %f, %f', (lng, lat) => {
    const random = randomFor('geodesicLines')
    const plane = planeAt([lng, lat])
    for (let i = 0; i < 100; i += 1) {
      const azimuth = between(random, 0, 360)
      const end = wgs84.Direct(lat, lng, azimuth, between(random, 100, reach))
      const flat = bearing(plane.toMetres([lng, lat]), plane.toMetres([end.lon2!, end.lat2!]))
      const turn = Math.abs(((flat - azimuth + 540) % 360) - 180)
      // Arc to chord: xy/6R2 at most (Snyder 1987); and a tenth of a micrometre across the shortest line.
      expect(turn * degree).toBeLessThan((reach * reach) / (12 * radiusSquared(lat)) + 1e-7 / 100)
    }
  })

  test('come back to the same degree', () => {
    const random = randomFor('geodesicLines')
    for (const [lng, lat] of centres) {
      const plane = planeAt([lng, lat])
      for (let i = 0; i < 50; i += 1) {
        const position: LngLat = [lng + between(random, -0.02, 0.02), lat + between(random, -0.02, 0.02)]
        const back = plane.toLngLat(plane.toMetres(position))
        // A tenth of what a plan file's nine decimals can hold; 180 degrees east is 180 west.
        expect(Math.abs(((back[0] - position[0] + 540) % 360) - 180)).toBeLessThan(1e-10)
        expect(Math.abs(back[1] - position[1])).toBeLessThan(1e-10)
      }
    }
  })

  // Karney, GeodTest.dat: the lines of the sample of 100 that are shorter than 3 km.
  test.each([
    [47.900780879363, 148.758779524609, 47.89930978834402, 0.001327005894209747, 191.3088022],
    [36.800966049655, 43.389649034063, 36.80288952928961, 0.002261122427425817, 293.7372273],
    [60.077425015363, 81.639916890942, 60.078197903525385, 0.010531670881733178, 592.5766309],
    [18.725775553796, 98.927919777265, 18.724785210853174, 0.006615636046166963, 706.2676803],
    [56.310719132311, 155.158323803365, 56.30425838780839, 0.005380024608319352, 792.7231052],
    [2.514600234503, 166.362139719401, 2.506446532968658, 0.00196695535966103, 927.7647972],
    [8.849455388939, 129.673344478389, 8.843107684651578, 0.007694428892432052, 1099.6867173],
  ])('are those of published lines: %f on %f', (lat, azimuth, lat2, lng2, length) => {
    const plane = planeAt([0, lat])
    const [from, to] = [plane.toMetres([0, lat]), plane.toMetres([lng2, lat2])]
    const widest = Math.abs(to.x)
    expect(Math.abs(distance(from, to) - length)).toBeLessThan((widest ** 2 / radiusSquared(lat)) * length + 1e-6)
    expect(bearing(from, to)).toBeCloseTo(azimuth, 4)
  })

  // Seconds of latitude and longitude on WGS84, metres.
  test.each([
    [0, 30.715077, 30.922081],
    [45, 30.869939, 21.901899],
    [50, 30.896963, 19.915487],
    [60, 30.947858, 15.5],
  ])('one second at latitude %d', (lat, north, east) => {
    const plane = planeAt([10, lat])
    const from = plane.toMetres([10, lat])
    expect(distance(from, plane.toMetres([10, lat + 1 / 3600]))).toBeCloseTo(north, 4)
    expect(distance(from, plane.toMetres([10 + 1 / 3600, lat]))).toBeCloseTo(east, 5)
  })
})

describe('Flinders Peak to Buninyong', () => {
  // Geocentric Datum of Australia Technical Manual, worked examples of Vincenty's formulae and of the map grid; GRS80.
  const flinders: LngLat = [dms(144, 25, 29.5244), dms(-37, 57, 3.7203)]
  const buninyong: LngLat = [dms(143, 55, 35.3839), dms(-37, 39, 10.1561)]
  const grs80 = new Geodesic.Geodesic(6378137, 1 / 298.257222101)

  test('is 54 972.271 m by the ruler', () => {
    const line = grs80.Inverse(flinders[1], flinders[0], buninyong[1], buninyong[0])
    expect(line.s12!).toBeCloseTo(54972.271, 3)
    // 306 52 05.37 and, seen from the other end, 127 10 25.07; to a hundredth of a second.
    expect(Math.abs(line.azi1! + 360 - dms(306, 52, 5.37))).toBeLessThan(0.01 / 3600)
    expect(Math.abs(line.azi2! + 180 - dms(127, 10, 25.07))).toBeLessThan(0.01 / 3600)
  })

  test('is too long to be taken from the plane as it is, and right once the scale along the line is taken out', () => {
    const middle: LngLat = [(flinders[0] + buninyong[0]) / 2, (flinders[1] + buninyong[1]) / 2]
    const plane = planeAt(middle)
    const [from, to] = [plane.toMetres(flinders), plane.toMetres(buninyong)]
    const flat = distance(from, to)
    // The line scale factor of the same manual, with the radius at the middle latitude.
    const squares = (from.x ** 2 + from.x * to.x + to.x ** 2) / (6 * radiusSquared(middle[1]))
    const scale = 1 + squares * (1 + squares / 6)
    expect(flat - 54972.271).toBeGreaterThan(0.03)
    expect(flat / scale).toBeCloseTo(54972.271, 3)
  })

  test.each([
    ['Flinders Peak, zone 55', flinders, 147, 273741.297, 5796489.777],
    ['Buninyong, zone 54', buninyong, 141, 758173.797, 5828674.34],
  ] as const)('%s of the map grid', (_, position, meridian, east, north) => {
    // A map grid is our plane, scaled and shifted; WGS84 and GRS80 differ by a tenth of a millimetre in it.
    const { x, y } = planeAt([meridian, 0]).toMetres(position)
    expect(Math.abs(500_000 + 0.9996 * x - east)).toBeLessThan(0.002)
    expect(Math.abs(10_000_000 + 0.9996 * y - north)).toBeLessThan(0.002)
  })
})

describe('transverse Mercator far from its centre', () => {
  // IOGP GIGS test 5101 (transverse Mercator, JHS formula): a grid on WGS84 about 49 N 2 W; tolerance 0.03 m as published.
  test.each([
    [3, 80, 496813.178, 3358297.326],
    [3, 49, 765648.501, -87944.74],
    [3, 20, 923539.353, -3308151.625],
    [3, 0, 957087.829, -5527462.686],
    [3, -60, 678711.584, -12189424.202],
    [-2, 60, 400000, 1123956.966],
    [-2, -20, 400000, -7738946.807],
    [-5, 60, 232704.966, 1127751.264],
    [-5, 40, 143900.026, -1095387.991],
    [-5, -80, 341867.711, -14410558.943],
    [8, 0, 1518482.747, -5527462.686],
    [8, 60, 956351.967, 1166164.18],
    [-7.5559037, 49.7661327, 0, 0],
  ])('%f, %f', (lng, lat, east, north) => {
    const scale = 0.9996012717
    const { x, y } = planeAt([-2, 49]).toMetres([lng, lat])
    expect(Math.abs(400_000 + scale * x - east)).toBeLessThan(0.03)
    expect(Math.abs(-100_000 + scale * y - north)).toBeLessThan(0.03)
  })

  // The package behind the plane, on the Airy ellipsoid of the British grid.
  test.each([
    ['Ordnance Survey, A guide to coordinate systems', dms(1, 43, 4.5177), dms(52, 39, 27.2531), 651409.903, 313177.27],
    ['IOGP Guidance Note 7-2, of an older series: 0.02 m', 0.5, 50.5, 577274.99, 69740.5],
  ])('%s', (_, lng, lat, east, north) => {
    const grid = proj4('+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy +units=m')
    const [x, y] = grid.forward([lng, lat]) as [number, number]
    expect(Math.abs(x - east)).toBeLessThan(lat === 50.5 ? 0.02 : 0.002)
    expect(Math.abs(y - north)).toBeLessThan(lat === 50.5 ? 0.02 : 0.002)
  })
})

describe('areas in the plane', () => {
  /** Signed area of the geodesic polygon, m2. */
  function geodesicArea(ring: readonly LngLat[]): number {
    const polygon = wgs84.Polygon(false)
    for (const [lng, lat] of ring.slice(1)) polygon.AddPoint(lat, lng)
    return polygon.Compute(false, true).area!
  }

  test.each([
    [0.16, 52.59],
    [-123.165, 44.425],
    [-78.5, -0.2],
    [172.6, -43.5],
    [25.7, 66.5],
  ] as const)('of fields about %f, %f match the geodesic ones to 1e-6', (lng, lat) => {
    const random = randomFor('fieldPolygons')
    const plane = planeAt([lng, lat])
    for (let i = 0; i < 60; i += 1) {
      const middle = { x: between(random, -2000, 2000), y: between(random, -2000, 2000) }
      const count = 3 + Math.floor(9 * random())
      const corners = Array.from({ length: count }, (_, corner) => {
        const [angle, radius] = [(corner / count) * 2 * Math.PI, between(random, 30, 400)]
        return plane.toLngLat({ x: middle.x + radius * Math.cos(angle), y: middle.y + radius * Math.sin(angle) })
      })
      const ring = [...corners, corners[0]!]
      const exact = geodesicArea(ring)
      expect(exact).toBeGreaterThan(0)
      expect(relativeError(polygonArea([ring.map(plane.toMetres)]), exact)).toBeLessThan(1e-6)
    }
  })

  test('of a bed in a report are those on the ellipsoid, its hole taken out', () => {
    const outer = [at(-80, -60), at(95, -75), at(120, 40), at(-20, 90), at(-80, -60)]
    const hole = [at(-20, -20), at(-10, 25), at(30, 10), at(20, -25), at(-20, -20)]
    const bed = {
      type: 'Feature',
      id: 'bed',
      geometry: { type: 'Polygon', coordinates: [outer, hole] },
      properties: { kind: 'bed', crop: 'apple' },
    } as const
    const outcome = evaluate(planOf({ features: [bed] }), 2026)
    const exact = geodesicArea(outer) - Math.abs(geodesicArea(hole))
    expect(relativeError(outcome.ok ? outcome.value.plantings[0]!.area : 0, exact)).toBeLessThan(1e-6)
  })
})
