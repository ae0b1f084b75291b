import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import type { Plan } from '#geo/plan/plan'
import { broughtIn, essence } from '../support/brought-in'
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
