import type {
  Bed,
  Block,
  Bloom,
  Feature,
  Forage,
  Keepout,
  Mud,
  Plan,
  Plant,
  PolygonGeometry,
  Row,
  Season,
  Station,
} from '#geo/plan/plan'

/**
 * Small plans to change and to show. Positions are degrees in steps of a ten-thousandth (7 m east, 11 m north) from a
 * corner in the English midlands; where metres matter, orchard.ts lays plans out in those.
 */
type Steps = readonly [east: number, north: number]

export function step([east, north]: Steps): readonly [lng: number, lat: number] {
  return [Number((-1.7 + east / 10_000).toFixed(9)), Number((52.2 + north / 10_000).toFixed(9))]
}

/** A rectangle from its south-western to its north-eastern corner. */
export function rectangle([west, south]: Steps, [east, north]: Steps): PolygonGeometry {
  const ring = [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ] as const
  return { type: 'Polygon', coordinates: [ring.map(step)] }
}

type Properties<F extends Feature> = Partial<Omit<F['properties'], 'kind'>>

export function rowFeature(
  id: string,
  properties: Properties<Row> = {},
  from: Steps = [0, 0],
  to: Steps = [10, 0],
): Row {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'LineString', coordinates: [step(from), step(to)] },
    properties: { kind: 'row', crop: 'apple', ...properties },
  }
}

export function blockFeature(
  id: string,
  properties: Properties<Block> = {},
  geometry: PolygonGeometry = rectangle([0, 2], [6, 6]),
): Block {
  return { type: 'Feature', id, geometry, properties: { kind: 'block', crop: 'apple', ...properties } }
}

export function plantFeature(id: string, properties: Properties<Plant> = {}, at: Steps = [12, 0]): Plant {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: step(at) },
    properties: { kind: 'plant', crop: 'apple', ...properties },
  }
}

export function bedFeature(
  id: string,
  properties: Properties<Bed> = {},
  geometry: PolygonGeometry = rectangle([12, 2], [14, 3]),
): Bed {
  return { type: 'Feature', id, geometry, properties: { kind: 'bed', crop: 'strawberry', ...properties } }
}

export function stationFeature(id: string, properties: Properties<Station> = {}, at: Steps = [5, 1]): Station {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: step(at) },
    properties: { kind: 'station', ...properties },
  }
}

export function forageFeature(
  id: string,
  properties: Properties<Forage> = {},
  geometry: PolygonGeometry = rectangle([8, 3], [11, 6]),
): Forage {
  const figures = { blossomDensity: 300, appeal: 1 }
  return { type: 'Feature', id, geometry, properties: { kind: 'forage', ...figures, ...properties } }
}

export function mudFeature(id: string, properties: Properties<Mud> = {}, at: Steps = [7, -2]): Mud {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: step(at) },
    properties: { kind: 'mud', ...properties },
  }
}

export function keepoutFeature(
  id: string,
  properties: Properties<Keepout> = {},
  geometry: PolygonGeometry = rectangle([-3, -3], [-1, 6]),
): Keepout {
  return { type: 'Feature', id, geometry, properties: { kind: 'keepout', ...properties } }
}

export function appleBloom(year: number): Bloom {
  return { first: `${year}-04-17`, full: `${year}-04-24`, end: `${year}-05-06` }
}

/** A season with apple bloom and, at station-1, 120 tubes and one batch of cocoons. */
export function smallSeason(year: number): Season {
  const releases = [{ date: `${year}-04-06`, females: 60, males: 108 }]
  return {
    year,
    bloom: { apple: appleBloom(year) },
    stations: { 'station-1': { bee: 'osmia-lignaria', tubes: 120, bore: 8, depth: 150, releases } },
  }
}

/** Two rows of apple, a stocked station "North gate" and one that is not in use, a clover bank; seasons 2025 and 2026. */
export function smallPlan(patch: Partial<Plan> = {}): Plan {
  const clover = { first: '2026-04-10', full: '2026-05-01', end: '2026-06-10' }
  const season = smallSeason(2026)
  return {
    version: 1,
    name: 'Small orchard',
    notes: '',
    timeZone: 'Europe/London',
    units: 'metric',
    bee: 'osmia-lignaria',
    bloomRegion: 'southern-england',
    parameters: {},
    crops: {},
    seasons: [smallSeason(2025), { ...season, bloom: { ...season.bloom, 'forage-1': clover } }],
    features: [
      rowFeature('row-1', { name: 'Row 1' }),
      rowFeature('row-2', { name: 'Row 2', cultivar: 'Late' }, [0, 1], [10, 1]),
      stationFeature('station-1', { name: 'North gate' }),
      stationFeature('station-2', {}, [9, 1.5]),
      forageFeature('forage-1', { name: 'Clover bank' }),
    ],
    besides: {},
    ...patch,
  }
}

/** The same plan, in which nothing can be changed in place any more. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const part of Object.values(value)) frozen(part)
  }
  return value
}
