import { readFileSync } from 'node:fs'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { planOf, sampleFile } from '../geo/file/sample-file'
import { plantFeature, rowFeature, smallPlan, stationFeature, step } from './builders'

const odd = `<b onclick="x">\u0000\u001b & "Row" ]]> 'á' 日本 😀 \ud800 &amp;\r\n\t`

/** One of the example plans. */
export function scenario(name: string): Plan {
  const file = new URL(`../../scenarios/${name}.plan.geojson`, import.meta.url)
  return planOf(readPlan(readFileSync(file, 'utf8')))
}

/** Names and places that a writer may stumble on. */
export function oddPlan(): Plan {
  const many = plantFeature('plants', { name: odd, cultivar: '=1+1' })
  return smallPlan({
    name: odd,
    features: [
      rowFeature('row-1', { name: odd, spacing: 2.5, cultivar: odd }),
      stationFeature('station-1', { name: odd, height: 1.5 }),
      { ...stationFeature(odd), geometry: { type: 'Point', coordinates: [180, -90, 12.5] } },
      { ...stationFeature('high'), geometry: { type: 'Point', coordinates: [-1e-9, 1e-12, 1e300] } },
      { ...stationFeature('off'), geometry: { type: 'Point', coordinates: [-1.7, 95] } },
      { ...many, geometry: { type: 'MultiPoint', coordinates: [step([0, 0]), step([1, 2])] } },
    ],
  })
}

/** Plans that files for other programs are tried with. */
export const plansToWrite: readonly (readonly [string, () => Plan])[] = [
  ['one of everything', () => planOf(readPlan(JSON.stringify(sampleFile())))],
  ['odd names and places', oddPlan],
  ['nothing drawn', () => smallPlan({ name: '', features: [] })],
  ...['allotment', 'mixed-orchard', 'farm', 'providence-apples'].map(name => [name, () => scenario(name)] as const),
]
