import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { importEdit } from '#geo/file/import-edit'
import { importThings } from '#geo/file/import-things'
import { kmlText } from '#geo/file/kml'
import { readMapFile } from '#geo/file/map-file'
import { packedThings, unpackedThings } from '#geo/file/packed-things'
import { tidyName } from '#geo/file/spelling'
import type { Feature, Plan } from '#geo/plan/plan'
import { woundRight } from '#geo/space/ring'
import { smallPlan } from '../support/builders'
import { anyName, drawnPlans } from '../support/drawn-plans'

const seed = 20261125
/** XML can hold no control characters; that they are replaced is tested where the files are written. */
const xmlFit = (text: string) =>
  [...text].filter(sign => (sign >= ' ' && sign !== '\ufffe' && sign !== '\uffff') || /[\t\n\r]/.test(sign)).join('')
const plans = drawnPlans(anyName.map(xmlFit))

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
      const edit = importEdit(unpackedThings(packedThings(importThings(asWritten, choices))), () => ids.pop()!)
      expect(essence(edit.apply(smallPlan({ features: [] })).features)).toEqual(essence(plan.features))
    }),
    { seed, numRuns: 100 },
  )
})
