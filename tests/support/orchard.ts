import type { Block, Bloom, Feature, Forage, Plan, Release, Row, Season, Station } from '#geo/plan/plan'
import { planeAt } from '#geo/space/plane'

/** Plans laid out in metres round a place, for tests that think in metres. */
export const middle = [-1.7, 52.2] as const
const plane = planeAt(middle)

/** A position `x` metres east and `y` north of the middle, in degrees. */
export function at(x: number, y: number): readonly [number, number] {
  const [lng, lat] = plane.toLngLat({ x, y })
  return [lng, lat]
}

export function row(
  id: string,
  from: [number, number],
  to: [number, number],
  properties: Partial<Row['properties']> = {},
): Row {
  const coordinates = [at(...from), at(...to)]
  return {
    type: 'Feature',
    id,
    geometry: { type: 'LineString', coordinates },
    properties: { kind: 'row', crop: 'apple', spacing: 2.5, rowSpacing: 4, ...properties },
  }
}

function ringOf([west, south, east, north]: [number, number, number, number]) {
  return [at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]
}

export function block(
  id: string,
  box: [number, number, number, number],
  properties: Partial<Block['properties']> = {},
): Block {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'Polygon', coordinates: [ringOf(box)] },
    properties: { kind: 'block', crop: 'apple', spacing: 2.5, rowSpacing: 4, ...properties },
  }
}

export function forage(id: string, box: [number, number, number, number], blossomDensity = 300): Forage {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'Polygon', coordinates: [ringOf(box)] },
    properties: { kind: 'forage', blossomDensity, appeal: 1 },
  }
}

export function station(id: string, x: number, y: number): Station {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: at(x, y) },
    properties: { kind: 'station' },
  }
}

/** Two far marks that hold a plan's middle, and so its plane, where it is while other things move. */
export const marks: readonly Feature[] = [
  {
    type: 'Feature',
    id: 'mark-1',
    geometry: { type: 'Point', coordinates: at(-900, -900) },
    properties: { kind: 'mud' },
  },
  {
    type: 'Feature',
    id: 'mark-2',
    geometry: { type: 'Point', coordinates: at(900, 900) },
    properties: { kind: 'mud' },
  },
]

export const spring: Bloom = { first: '2026-04-17', full: '2026-04-24', end: '2026-05-06' }

type Parts = {
  features: readonly Feature[]
  stock?: Readonly<Record<string, readonly Release[]>>
  bloom?: Season['bloom']
  parameters?: Plan['parameters']
  year?: number
}

export function planOf({ features, stock = {}, bloom = { apple: spring }, parameters = {}, year = 2026 }: Parts): Plan {
  const stations = Object.fromEntries(Object.entries(stock).map(([id, releases]) => [id, { tubes: 200, releases }]))
  return {
    version: 1,
    name: 'Test orchard',
    notes: '',
    timeZone: 'UTC',
    units: 'metric',
    bee: 'osmia-lignaria',
    bloomRegion: 'southern-england',
    parameters,
    crops: {},
    seasons: [{ year, bloom, stations }],
    features,
    besides: {},
  }
}
