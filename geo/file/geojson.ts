import { cropName } from '../data/settings'
import type { Feature, Geometry, Plan } from '../plan/plan'
import { woundRight } from '../space/ring'
import { type JsonLayout, printJson } from './print-json'

const layout: JsonLayout = {
  known: ['type', 'features'],
  members: {
    features: {
      each: {
        known: ['type', 'id', 'geometry', 'properties'],
        members: {
          geometry: { known: ['type', 'coordinates'], members: { coordinates: { decimals: 9 } } },
          properties: { known: ['kind', 'name', 'crop', 'cropName', 'cultivar'] },
        },
      },
    },
  },
}

/**
 * What is drawn, as GeoJSON for other programs (RFC 7946): outer rings counter-clockwise, properties without groups
 * (`a.b` for b within a), each planting with its crop's name, no member beside those of the standard.
 */
export function plainGeoJson(plan: Plan): string {
  const features = plan.features.map(feature => ({
    type: 'Feature',
    id: feature.id,
    geometry: plainGeometry(feature.geometry),
    properties: plainProperties(plan, feature),
  }))
  return `${printJson({ type: 'FeatureCollection', features }, layout)}\n`
}

/** The properties of a thing without groups, with its crop's name: what other programs get of it. */
export function plainProperties(plan: Plan, feature: Feature): Readonly<Record<string, string | number | boolean>> {
  return { ...flat(feature.properties), ...cropNameOf(plan, feature) }
}

function plainGeometry({ type, coordinates }: Geometry): object {
  return { type, coordinates: type === 'Polygon' ? woundRight(coordinates) : coordinates }
}

function cropNameOf(plan: Plan, { properties }: Feature): { cropName?: string } {
  return 'crop' in properties ? { cropName: cropName(properties.crop, plan.crops) } : {}
}

function flat(group: object, prefix = ''): Readonly<Record<string, string | number | boolean>> {
  return Object.fromEntries(
    Object.entries(group).flatMap(([key, value]: [string, unknown]): [string, string | number | boolean][] => {
      const name = prefix + key
      if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return [[name, value]]
      return typeof value === 'object' && value !== null ? Object.entries(flat(value, `${name}.`)) : []
    }),
  )
}
