import { type Feature, type Geometry, nameOf, type Plan } from '../plan/plan'
import type { LngLat } from '../space/plane'
import { plainProperties } from './geojson'
import { altitudeOf, degreesText, onEarth, xmlElement, xmlLeaf, xmlText } from './xml-text'

/** Name of the space that properties beyond those of GPX stand in. */
export const planSpace = 'urn:nestreach:plan'
/** What a property has to be called to be an element of its own; programs that make tables of elements see it then. */
const elementName = /^[A-Za-z_][\w.-]*$/

/**
 * What is drawn, as GPX 1.1 (Topografix): points as waypoints that a handheld device can find, rows and windbreaks as
 * routes to be walked, outlines as closed tracks, a hole as one more segment. The kind stands in `type`; all other
 * properties in `extensions`, where readers that do not know them pass them over.
 */
export function gpxText(plan: Plan): string {
  const waypoints: string[] = []
  const routes: string[] = []
  const tracks: string[] = []
  for (const feature of onEarth(plan.features)) {
    const { geometry } = feature
    switch (geometry.type) {
      case 'Point':
        waypoints.push(waypoint(plan, feature, geometry.coordinates, nameOf(feature)))
        break
      case 'MultiPoint':
        geometry.coordinates.forEach((position, i) => {
          waypoints.push(waypoint(plan, feature, position, `${nameOf(feature)} ${i + 1}`))
        })
        break
      case 'LineString':
        routes.push(xmlElement('rte', {}, [...head(plan, feature), ...points('rtept', geometry.coordinates)]))
        break
      case 'Polygon':
        tracks.push(xmlElement('trk', {}, [...head(plan, feature), ...segments(geometry)]))
        break
      default:
        geometry satisfies never
    }
  }
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx xmlns="http://www.topografix.com/GPX/1/1" xmlns:p="${planSpace}" version="1.1" creator="Nestreach">`,
    `<metadata>${xmlLeaf('name', plan.name)}</metadata>`,
    ...waypoints,
    ...routes,
    ...tracks,
    '</gpx>',
    '',
  ].join('\n')
}

function waypoint(plan: Plan, feature: Feature, position: LngLat, name: string): string {
  return point('wpt', position, head(plan, feature, name))
}

/** The elements of a waypoint, route or track before its points, in the order of the schema. */
function head(plan: Plan, feature: Feature, name = nameOf(feature)): readonly string[] {
  const { kind, ...properties } = plainProperties(plan, feature)
  const extensions = Object.entries({ id: feature.id, ...properties }).map(([key, value]) => {
    const text = xmlText(String(value))
    return elementName.test(key)
      ? `<p:${key}>${text}</p:${key}>`
      : `<p:property name="${xmlText(key)}">${text}</p:property>`
  })
  return [
    xmlLeaf('name', name),
    xmlLeaf('type', String(kind)),
    extensions.length === 0 ? '' : `<extensions>${extensions.join('')}</extensions>`,
  ]
}

function point(element: string, position: LngLat, content: readonly string[]): string {
  const [lng, lat] = position
  const altitude = altitudeOf(position)
  const height = altitude === undefined ? '' : xmlLeaf('ele', degreesText(altitude))
  // The schema's longitudes end before 180, which is -180 as well.
  const lon = degreesText(lng) === '180' ? '-180' : degreesText(lng)
  return xmlElement(element, { lat: degreesText(lat), lon }, [height, ...content].filter(Boolean))
}

function points(element: string, positions: readonly LngLat[]): readonly string[] {
  return positions.map(position => point(element, position, []))
}

function segments(polygon: Extract<Geometry, { type: 'Polygon' }>): readonly string[] {
  return polygon.coordinates.map(ring => xmlElement('trkseg', {}, points('trkpt', ring)))
}
