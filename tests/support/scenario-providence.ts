import type { Feature, Plan, StationSeason } from '#geo/plan/plan'
import { bloom, boundary, frameAt } from './scenario-frame'

const foot = 0.3048

/**
 * Apple rows at Providence, Utah: 28 rows of 8 trees, 30 ft between rows and 16 ft in the row, so 128 by 840 ft.
 * Source: Batchelor and Reed 1918, Relation of the variability of yields of fruit trees to the accuracy of field trials,
 * Journal of Agricultural Research 12:245-283. How the rows lay to north is not told; here they run east to west.
 */
export const providence = {
  rows: 28,
  treesInRow: 8,
  rowSpacing: 30 * foot,
  spacing: 16 * foot,
  width: 8 * 16 * foot,
  length: 28 * 30 * foot,
} as const

const { width, length } = providence
const frame = frameAt([-111.82, 41.7], width, length)

const ids = ['d1', 'd2', 'd3', 'd4']

/** On the middle line, at 1/8, 3/8, 5/8 and 7/8 of the length: the mean distance to the nearest is then least. */
function station(id: string, i: number): Feature {
  return {
    type: 'Feature',
    id,
    geometry: frame.point(width / 2, (length * (2 * i + 1)) / 8),
    properties: { kind: 'station', name: `Post ${i + 1}`, height: 2.1, facing: 120, overhang: 100, support: 'post' },
  }
}

const stocked: StationSeason = {
  tubes: 180,
  bore: 8,
  depth: 152,
  material: 'paper-liner',
  releases: [{ date: '2025-04-28', females: 120, males: 216 }],
}

export function providenceApples(): Plan {
  return {
    version: 1,
    name: 'Sample D: apple rows at Providence',
    notes:
      'The rows are a published layout: 224 apple trees, 28 rows of 8, 30 by 16 ft (Batchelor and Reed 1918, Journal of ' +
      'Agricultural Research 12). Where exactly they stood is not told: the place is invented, and so are bloom, bees and all else.',
    timeZone: 'America/Denver',
    units: 'us',
    bee: 'osmia-lignaria',
    bloomRegion: 'continental',
    parameters: {},
    crops: {},
    seasons: [
      {
        year: 2025,
        bloom: { apple: bloom('2025-05-05', '2025-05-09', '2025-05-17') },
        stations: Object.fromEntries(ids.map(id => [id, stocked])),
      },
    ],
    features: [
      boundary('orchard', 'Orchard', frame.box(-5, -5, width + 5, length + 5)),
      {
        type: 'Feature',
        id: 'apples',
        geometry: frame.box(0, 0, width, length),
        properties: {
          kind: 'block',
          name: 'Apples',
          crop: 'apple',
          spacing: providence.spacing,
          rowSpacing: providence.rowSpacing,
          bearing: 90,
        },
      },
      ...ids.map(station),
      {
        type: 'Feature',
        id: 'ditch',
        geometry: frame.point(-3, length / 2),
        properties: { kind: 'mud', name: 'Irrigation ditch' },
      },
    ],
    besides: {},
  }
}
