import { kindWords } from '../plan/edits-wording'
import { type Feature, type FeatureKind, type Geometry, nameOf, type Plan } from '../plan/plan'
import type { LngLat } from '../space/plane'
import { woundRight } from '../space/ring'
import { plainProperties } from './geojson'
import { altitudeOf, degreesText, onEarth, xmlElement, xmlLeaf, xmlText } from './xml-text'

/**
 * What is drawn, as KML 2.2 (OGC 07-147r2): a folder for each kind, all lying on the ground; properties as untyped
 * extended data, which carry over to other programs' tables.
 */
export function kmlText(plan: Plan): string {
  const features = onEarth(plan.features)
  const kinds = [...new Set(features.map(({ properties }) => properties.kind))]
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<kml xmlns="http://www.opengis.net/kml/2.2">',
    '<Document>',
    xmlLeaf('name', plan.name),
    ...kinds.map(kind => folder(plan, kind, features)),
    '</Document>',
    '</kml>',
    '',
  ]
    .filter((line, i, lines) => line !== '' || i === lines.length - 1)
    .join('\n')
}

function folder(plan: Plan, kind: FeatureKind, features: readonly Feature[]): string {
  const placemarks = features
    .filter(({ properties }) => properties.kind === kind)
    .map(feature => placemark(plan, feature))
  return ['<Folder>', xmlLeaf('name', kindWords[kind]), ...placemarks, '</Folder>'].join('\n')
}

function placemark(plan: Plan, feature: Feature): string {
  const data = Object.entries({ id: feature.id, ...plainProperties(plan, feature) }).map(
    ([name, value]) => `<Data name="${xmlText(name)}"><value>${xmlText(String(value))}</value></Data>`,
  )
  return xmlElement('Placemark', {}, [
    xmlLeaf('name', nameOf(feature)),
    `<ExtendedData>${data.join('')}</ExtendedData>`,
    geometryText(feature.geometry),
  ])
}

function geometryText(geometry: Geometry): string {
  switch (geometry.type) {
    case 'Point':
      return `<Point>${coordinates([geometry.coordinates])}</Point>`
    case 'MultiPoint':
      return xmlElement(
        'MultiGeometry',
        {},
        geometry.coordinates.map(position => `<Point>${coordinates([position])}</Point>`),
      )
    case 'LineString':
      return `<LineString><tessellate>1</tessellate>${coordinates(geometry.coordinates)}</LineString>`
    case 'Polygon': {
      const [outer = [], ...holes] = woundRight(geometry.coordinates)
      return xmlElement('Polygon', {}, [
        boundary('outerBoundaryIs', outer),
        ...holes.map(hole => boundary('innerBoundaryIs', hole)),
      ])
    }
    default:
      return geometry satisfies never
  }
}

function boundary(element: string, ring: readonly LngLat[]): string {
  return `<${element}><LinearRing>${coordinates(ring)}</LinearRing></${element}>`
}

function coordinates(positions: readonly LngLat[]): string {
  const texts = positions.map(position =>
    [position[0], position[1], altitudeOf(position)]
      .flatMap(part => (part === undefined ? [] : [degreesText(part)]))
      .join(','),
  )
  return `<coordinates>${texts.join(' ')}</coordinates>`
}
