import fc from 'fast-check'
import type { Feature, Plan } from '#geo/plan/plan'
import { smallPlan } from './builders'

/** As many decimals as a plan keeps. */
const degrees = (limit: number) =>
  fc.double({ min: -limit, max: limit, noNaN: true }).map(value => Number(value.toFixed(9)) + 0)

/** Any names, with markup, formulas and the signs of all scripts among them. */
export const anyName = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.constantFrom('', '=1+1', '<b>&amp;', ']]>', '日本 1', 'Row 1'),
)

/** Plans of up to eight stations, plants, rows and blocks with a hole, anywhere on earth, called by any of the names. */
export function drawnPlans(name: fc.Arbitrary<string>): fc.Arbitrary<Plan> {
  const position = fc.tuple(degrees(179.9), degrees(89.9))
  const grown = fc
    .record({ name, cultivar: fc.string({ unit: 'grapheme', maxLength: 8 }) })
    .map(each => ({ crop: 'apple', ...each }))

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
  return fc.array(drawn, { minLength: 1, maxLength: 8 }).map(
    (things): Plan =>
      smallPlan({
        features: things.map((thing, i) => ({
          type: 'Feature',
          id: `f-${i}`,
          ...thing,
        })) as unknown as readonly Feature[],
      }),
  )
}

function box([lng, lat]: readonly [number, number], size: number): readonly (readonly [number, number])[] {
  const at = (east: number, north: number) =>
    [Number((lng * 0.99 + east).toFixed(9)), Number((lat * 0.99 + north).toFixed(9))] as const
  return [at(0, 0), at(size, 0), at(size, size), at(0, size), at(0, 0)]
}
