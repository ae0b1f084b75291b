import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import type { Plan } from '#geo/plan/plan'
import { anyName, drawnPlans } from '../support/drawn-plans'
import { oddPlan, plansToWrite } from '../support/plans-to-write'
import { schemaFaults } from '../support/schema-faults'

/** Plans of every make, called by what they are. */
const plans: readonly (readonly [string, Plan])[] = [
  ...plansToWrite.map(([name, make]) => [name, make()] as const),
  ...fc.sample(drawnPlans(anyName), { seed: 20261125, numRuns: 40 }).map((plan, i) => [`drawn ${i}`, plan] as const),
]

async function invalid(format: 'gpx' | 'kml', textOf: (plan: Plan) => string) {
  const told = await schemaFaults(
    format,
    plans.map(([, plan]) => textOf(plan)),
  )
  return told.flatMap((faults, i) => (faults.length === 0 ? [] : [[plans[i]![0], ...faults]]))
}

describe('what is written is valid by the published schema', () => {
  it('of GPX 1.1 (TopoGrafix)', async () => {
    expect(await invalid('gpx', gpxText)).toEqual([])
  })

  it('of KML 2.2 (OGC 07-147r2)', async () => {
    expect(await invalid('kml', kmlText)).toEqual([])
  })

  it('and its coordinates, which the schema of KML leaves open, are two or three numbers', () => {
    const number = String.raw`-?\d+(\.\d+)?`
    const positions = new RegExp(`^${number}(,${number}){1,2}( ${number}(,${number}){1,2})*$`)
    for (const [name, plan] of plans) {
      for (const [, text] of kmlText(plan).matchAll(/<coordinates>(.*?)<\/coordinates>/g))
        expect(text, name).toMatch(positions)
    }
  })
})

/** What is put wrong in a good file, each with what is taken out of it and what stands there instead. */
const broken = {
  gpx: [
    ['a latitude beyond the pole', /lat="/, 'lat="9'],
    ['a longitude of 180', /lon="[^"]*"/, 'lon="180"'],
    ['a longitude with a comma', /lon="[^"]*"/, 'lon="1,5"'],
    ['no creator', ' creator="Nestreach"', ''],
    ['another version', 'version="1.1"', 'version="1.0"'],
    ['no namespace', 'xmlns="http://www.topografix.com/GPX/1/1"', ''],
    ['a second name', '</name><type>', '</name><name>x</name><type>'],
    ['a name behind the type', '</type>', '</type><name>x</name>'],
    ['a property of its own among those of GPX', '</type>', '</type><spacing>2.5</spacing>'],
    ['a height in words', '<name>', '<ele>high</ele><name>'],
    ['a route behind a track', '</gpx>', '<trk/><rte/></gpx>'],
    ['markup that is not closed', '</gpx>', ''],
  ],
  kml: [
    ['two geometries', '</ExtendedData>', '</ExtendedData><Point/>'],
    ['a name behind the geometry', '</Placemark>', '<name>x</name></Placemark>'],
    ['data without a value', /<value>[^<]*<\/value>/, ''],
    ['two outlines', '<outerBoundaryIs>', '<outerBoundaryIs/><outerBoundaryIs>'],
    ['a hole before the outline', '<outerBoundaryIs>', '<innerBoundaryIs/><outerBoundaryIs>'],
    ['a truth that is none', '<tessellate>1', '<tessellate>maybe'],
    ['an element that it does not know', '<Placemark>', '<Placemark><spacing>2.5</spacing>'],
    ['no namespace', ' xmlns="http://www.opengis.net/kml/2.2"', ''],
    ['markup that is not closed', '</kml>', ''],
  ],
} as const

describe('the schemas are heard: they refuse', () => {
  it.each([
    ['gpx', gpxText],
    ['kml', kmlText],
  ] as const)('%s', async (format, textOf) => {
    const [, make] = plansToWrite.find(([name]) => name === 'one of everything')!
    const good = textOf(make())
    const texts = broken[format].map(([what, from, to]) => {
      const text = good.replace(from, to)
      expect(text, what).not.toBe(good)
      return text
    })
    const told = await schemaFaults(format, [good, ...texts, textOf(oddPlan())])
    const refused = broken[format].filter((_, i) => told[i + 1]!.length > 0)
    expect(refused.map(([what]) => what)).toEqual(broken[format].map(([what]) => what))
    // Those before and after them stay valid.
    expect([told[0], told.at(-1)]).toEqual([[], []])
  })
})
