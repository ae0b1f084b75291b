import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { importEdit } from '#geo/file/import-edit'
import { kmlText } from '#geo/file/kml'
import { readMapFile } from '#geo/file/map-file'
import { tidyName } from '#geo/file/spelling'
import type { Feature, Plan } from '#geo/plan/plan'
import { woundRight } from '#geo/space/ring'
import { smallPlan } from '../support/builders'

const seed = 20261125
/** As many decimals as a plan keeps. */
const degrees = (limit: number) =>
  fc.double({ min: -limit, max: limit, noNaN: true }).map(value => Number(value.toFixed(9)) + 0)
const position = fc.tuple(degrees(179.9), degrees(89.9))
/** XML can hold no control characters; that they are replaced is tested where the files are written. */
const xmlFit = (text: string) =>
  [...text].filter(sign => (sign >= ' ' && sign !== '\ufffe' && sign !== '\uffff') || /[\t\n\r]/.test(sign)).join('')
const name = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }).map(xmlFit),
  fc.constantFrom('', '=1+1', '<b>&amp;', ']]>', '日本 1', 'Row 1'),
)
const grown = fc
  .record({ name, cultivar: fc.string({ unit: 'grapheme', maxLength: 8 }) })
  .map(each => ({ crop: 'apple', ...each }))

function box([lng, lat]: readonly [number, number], size: number): readonly (readonly [number, number])[] {
  const at = (east: number, north: number) =>
    [Number((lng * 0.99 + east).toFixed(9)), Number((lat * 0.99 + north).toFixed(9))] as const
  return [at(0, 0), at(size, 0), at(size, size), at(0, size), at(0, 0)]
}

const drawn = fc.oneof(
  fc.tuple(position, name).map(([at, called]) => ({
    geometry: { type: 'Point', coordinates: at },
    properties: { kind: 'station', name: called, height: 1.5 },
  })),
  fc
    .tuple(position, grown)
    .map(([at, own]) => ({ geometry: { type: 'Point', coordinates: at }, properties: { kind: 'plant', ...own } })),
  fc.tuple(fc.uniqueArray(position, { minLength: 2, maxLength: 5, selector: String }), grown).map(([line, own]) => ({
    geometry: { type: 'LineString', coordinates: line },
    properties: { kind: 'row', spacing: 2.5, ...own },
  })),
  fc.tuple(position, grown).map(([at, own]) => {
    const inner = box([at[0], at[1]], 0.004).map(([lng, lat]) => [
      Number((lng + 0.001).toFixed(9)),
      Number((lat + 0.001).toFixed(9)),
    ])
    return {
      geometry: { type: 'Polygon', coordinates: [box(at, 0.01), inner] },
      properties: { kind: 'block', bearing: 30, ...own },
    }
  }),
)

const plans = fc.array(drawn, { minLength: 1, maxLength: 8 }).map(
  (things): Plan =>
    smallPlan({
      features: things.map((thing, i) => ({
        type: 'Feature',
        id: `f-${i}`,
        ...thing,
      })) as unknown as readonly Feature[],
    }),
)

/** What must be the same again: ids are new, names are on one line, texts that say nothing are not there. */
function essence(features: readonly Feature[]): readonly string[] {
  return features
    .map(({ geometry, properties }) => {
      const said = Object.entries(properties)
        .map(([key, value]) => [key, typeof value === 'string' ? tidyName(value) : value] as const)
        .filter(([, value]) => value !== '')
        .sort(([a], [b]) => (a < b ? -1 : 1))
      const { type, coordinates } = geometry
      return JSON.stringify([type, type === 'Polygon' ? woundRight(coordinates) : coordinates, said])
    })
    .sort()
}

it.each([
  ['GPX', (plan: Plan) => strToU8(gpxText(plan))],
  ['KML', (plan: Plan) => strToU8(kmlText(plan))],
  ['KMZ', (plan: Plan) => zipSync({ 'doc.kml': strToU8(kmlText(plan)) })],
  ['GeoJSON', (plan: Plan) => strToU8(plainGeoJson(plan))],
])('what goes out as %s comes back in the same', (_, written) => {
  fc.assert(
    fc.property(plans, plan => {
      const outcome = readMapFile(written(plan))
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
      const { groups, spellings } = outcome.value
      const choices = Object.fromEntries(
        groups.map(({ key, kind, crop }) => [key, { kind, ...(crop === null ? {} : { crop }) }]),
      )
      // Spellings are gathered on purpose; here each stays as it was.
      const asWritten = {
        ...outcome.value,
        spellings: spellings.flatMap(({ written: texts }) => texts.map(one => ({ used: one.text, written: [one] }))),
      }
      const ids = plan.features.map((_, i) => `new-${i}`)
      const edit = importEdit(asWritten, choices, { newId: () => ids.pop()! })
      expect(essence(edit.apply(smallPlan({ features: [] })).features)).toEqual(essence(plan.features))
    }),
    { seed, numRuns: 100 },
  )
})
