import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { planTable } from '#geo/file/csv-tables'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import { readRowTable } from '#geo/file/row-table'
import { guessTable } from '#geo/file/tree-columns'
import { readStationTable } from '#geo/file/tree-table'
import { isMissing } from '#geo/file/weather-cells'
import { type Feature, isPlanting, isStation, type Plan } from '#geo/plan/plan'
import { broughtIn, broughtInFrom, essence } from '../support/brought-in'
import { anyName, drawnPlans } from '../support/drawn-plans'

const seed = 20261125
/** XML can hold no control characters; that they are replaced is tested where the files are written. */
const xmlFit = (text: string) =>
  [...text].filter(sign => (sign >= ' ' && sign !== '\ufffe' && sign !== '\uffff') || /[\t\n\r]/.test(sign)).join('')
const plans = drawnPlans(anyName.map(xmlFit))

it.each([
  ['GPX', (plan: Plan) => strToU8(gpxText(plan))],
  ['KML', (plan: Plan) => strToU8(kmlText(plan))],
  ['KMZ', (plan: Plan) => zipSync({ 'doc.kml': strToU8(kmlText(plan)) })],
  ['GeoJSON', (plan: Plan) => strToU8(plainGeoJson(plan))],
])('what goes out as %s comes back in the same', (_, written) => {
  fc.assert(
    fc.property(plans, plan => {
      expect(essence(broughtIn(written(plan)).features)).toEqual(essence(plan.features))
    }),
    { seed, numRuns: 100 },
  )
})

/** Words that a table has for an empty cell are no names there; and no cell begins or ends with a blank. */
const cellFit = (text: string) => (isMissing(text.trim()) ? 'x' : text)
const tabled = drawnPlans(anyName.map(cellFit))
/** The text of a table has a height for all of a thing's positions or for none. */
const flat = (features: readonly Feature[]): readonly Feature[] =>
  JSON.parse(JSON.stringify(features), (_, value) =>
    Array.isArray(value) && value.length > 2 && value.every(each => typeof each === 'number')
      ? value.slice(0, 2)
      : value,
  )

it.each([
  ['plantings', isPlanting, readRowTable],
  ['stations', isStation, readStationTable],
] as const)('the table of %s comes back in the same', (table, isIn, read) => {
  fc.assert(
    fc.property(tabled, plan => {
      const wanted = plan.features.filter(isIn)
      fc.pre(wanted.length > 0)
      const text = planTable(plan, table)
      const guess = guessTable(text)
      if (!guess.ok) throw new Error('no guess')
      expect(guess.value.of).toBe(table === 'plantings' ? 'rows' : 'stations')
      const features = broughtInFrom(read(text, guess.value.columns, { crops: plan.crops })).features
      expect(essence(flat(features))).toEqual(essence(flat(wanted)))
    }),
    { seed, numRuns: 25 },
  )
})
