import type { BeeId } from '#geo/data/own'
import type { Feature, Plan, Season, StationSeason } from '#geo/plan/plan'
import { bloom, boundary, frameAt, lastVisits, recordsOf, releasesOf } from './scenario-frame'

const frame = frameAt([20.52, 47.3], 450, 200)

/** Rows run north to south, in the middle of each strip; `west` and `east` bound the strip. */
const blocks = [
  {
    id: 'apricots',
    name: 'Apricots',
    crop: 'apricot',
    west: 0,
    east: 90,
    rows: 14,
    rowSpacing: 6,
    spacing: 4,
    trees: 48,
  },
  {
    id: 'plums',
    name: 'Early plums',
    crop: 'plum-european',
    west: 90,
    east: 150,
    rows: 10,
    rowSpacing: 5,
    spacing: 3.5,
    trees: 54,
  },
  {
    id: 'sour-cherries',
    name: 'Sour cherries',
    crop: 'cherry-sour',
    west: 150,
    east: 250,
    rows: 18,
    rowSpacing: 5,
    spacing: 3,
    trees: 63,
  },
  {
    id: 'pears',
    name: 'Pears',
    crop: 'pear-european',
    west: 250,
    east: 290,
    rows: 8,
    rowSpacing: 4,
    spacing: 2,
    trees: 95,
  },
  {
    id: 'mid-apples',
    name: 'Mid apples',
    crop: 'apple',
    west: 290,
    east: 370,
    rows: 19,
    rowSpacing: 3.8,
    spacing: 1.5,
    trees: 126,
  },
  {
    id: 'late-apples',
    name: 'Late apples',
    crop: 'apple-late',
    west: 370,
    east: 450,
    rows: 19,
    rowSpacing: 3.8,
    spacing: 1.5,
    trees: 126,
  },
]

function block({ id, name, crop, west, east, rows, rowSpacing, spacing, trees }: (typeof blocks)[number]): Feature {
  const middle = (west + east) / 2
  const across = (rows * rowSpacing) / 2
  const along = (trees * spacing) / 2
  return {
    type: 'Feature',
    id,
    geometry: frame.box(middle - across, 100 - along, middle + across, 100 + along),
    properties: { kind: 'block', name, crop, spacing, rowSpacing, bearing: 0 },
  }
}

const stations = [
  { id: 'c1', name: 'C1 apricots north-west', x: 3, y: 150 },
  { id: 'c2', name: 'C2 apricots south-west', x: 3, y: 50 },
  { id: 'c3', name: 'C3 plum headland', x: 150, y: 196 },
  { id: 'c4', name: 'C4 cherry headland', x: 250, y: 196 },
  { id: 'c5', name: 'C5 apple headland', x: 350, y: 196 },
  { id: 'c6', name: 'C6 east edge', x: 447, y: 100 },
  { id: 'c7', name: 'C7 between apricots and plums', x: 90, y: 100, since: 2025 },
  { id: 'c8', name: 'C8 between plums and cherries', x: 150, y: 30, since: 2025 },
  { id: 'c9', name: 'C9 between cherries and pears', x: 250, y: 60, since: 2025 },
  { id: 'c10', name: 'C10 among mid apples', x: 310, y: 110, since: 2025 },
  { id: 'c11', name: 'C11 among late apples', x: 390, y: 60, since: 2025 },
]

function station({ id, name, x, y, ...more }: (typeof stations)[number]): Feature {
  const fixed = { kind: 'station', height: 1.6, facing: 135, overhang: 100, support: 'post' } as const
  return { type: 'Feature', id, geometry: frame.point(x, y), properties: { ...fixed, name, ...more } }
}

const surroundings: readonly Feature[] = [
  boundary('farm', 'Orchard land', frame.box(-6, -2, 452, 200)),
  {
    type: 'Feature',
    id: 'cherry-plum',
    geometry: frame.box(-5, 0, -2, 200),
    properties: { kind: 'forage', name: 'Cherry plum hedge', blossomDensity: 700, appeal: 1 },
  },
  {
    type: 'Feature',
    id: 'shelter-belt',
    geometry: frame.line([-6, 203], [452, 203]),
    properties: { kind: 'windbreak', name: 'Shelter belt' },
  },
  mud('ditch-west', 'Ditch, west end', 60, -1),
  mud('ditch-east', 'Ditch, east end', 330, -1),
  {
    type: 'Feature',
    id: 'field-road',
    geometry: frame.box(-6, 206, 452, 211),
    properties: { kind: 'keepout', name: 'Field road', reason: 'Traffic and dust' },
  },
]

function mud(id: string, name: string, x: number, y: number): Feature {
  return { type: 'Feature', id, geometry: frame.point(x, y), properties: { kind: 'mud', name } }
}

const early: { readonly bee: BeeId; readonly depth: number } = { bee: 'osmia-cornuta', depth: 180 }
const late: { readonly bee: BeeId; readonly depth: number } = { bee: 'osmia-bicornis', depth: 150 }

function stocked(bees: typeof early, releases: ReturnType<typeof releasesOf>): Record<string, StationSeason> {
  const { bee, depth } = bees
  const box = { bee, tubes: 500, bore: 8, depth, material: 'reed' }
  return Object.fromEntries(Object.entries(releases).map(([id, batches]) => [id, { ...box, releases: batches }]))
}

const seasons: readonly Season[] = [
  {
    year: 2024,
    bloom: {
      apricot: bloom('2024-03-18', '2024-03-22', '2024-04-01'),
      'plum-european': bloom('2024-03-29', '2024-04-02', '2024-04-11'),
      'cherry-sour': bloom('2024-04-05', '2024-04-10', '2024-04-20'),
      'pear-european': bloom('2024-04-06', '2024-04-10', '2024-04-19'),
      apple: bloom('2024-04-10', '2024-04-15', '2024-04-27'),
      'apple-late': bloom('2024-04-15', '2024-04-20', '2024-05-02'),
      'cherry-plum': bloom('2024-03-10', '2024-03-15', '2024-03-25'),
    },
    stations: {
      ...stocked(
        early,
        releasesOf([{ date: '2024-03-10', cocoons: 4000, females: 1600, weights: { c1: 1, c2: 1, c3: 1 } }]),
      ),
      ...stocked(
        late,
        releasesOf([{ date: '2024-04-04', cocoons: 4000, females: 1600, weights: { c4: 1, c5: 1, c6: 1 } }]),
      ),
    },
    records: recordsOf(lastVisits('2024-06-01', { c1: 392, c2: 371, c3: 308, c4: 226, c5: 251, c6: 282 }), {
      date: '2024-10-26',
      cells: 10980,
      females: 2660,
      males: 4130,
      losses: { mite: 238, fly: 1220, wasp: 520, mould: 198, other: 2014 },
    }),
  },
  {
    year: 2025,
    bloom: {
      apricot: bloom('2025-03-25', '2025-03-29', '2025-04-07'),
      'plum-european': bloom('2025-04-04', '2025-04-08', '2025-04-16'),
      'cherry-sour': bloom('2025-04-11', '2025-04-15', '2025-04-25'),
      'pear-european': bloom('2025-04-12', '2025-04-16', '2025-04-24'),
      apple: bloom('2025-04-16', '2025-04-21', '2025-05-02'),
      'apple-late': bloom('2025-04-21', '2025-04-26', '2025-05-07'),
      'cherry-plum': bloom('2025-03-17', '2025-03-22', '2025-04-01'),
    },
    stations: {
      ...stocked(
        early,
        releasesOf([
          { date: '2025-03-20', cocoons: 3400, females: 1326, weights: { c1: 1, c2: 1, c3: 1, c7: 1, c8: 1 } },
        ]),
      ),
      // The first batch of the later bee mostly beside cherries and pears, the second mostly among the apples.
      ...stocked(
        late,
        releasesOf([
          { date: '2025-04-03', cocoons: 3600, females: 1404, weights: { c4: 3, c5: 2, c6: 1, c9: 3, c10: 2, c11: 1 } },
          { date: '2025-04-13', cocoons: 3600, females: 1404, weights: { c4: 1, c5: 2, c6: 3, c9: 1, c10: 2, c11: 3 } },
        ]),
      ),
    },
    records: recordsOf(
      lastVisits('2025-06-07', {
        c1: 318,
        c2: 301,
        c3: 356,
        c4: 341,
        c5: 349,
        c6: 322,
        c7: 287,
        c8: 334,
        c9: 352,
        c10: 361,
        c11: 338,
      }),
      {
        date: '2025-10-25',
        cells: 20856,
        females: 5510,
        males: 8420,
        losses: { mite: 420, fly: 1690, wasp: 760, mould: 948, other: 3108 },
      },
    ),
  },
]

/** One rate for all, rounded from the handbook rate for apple. */
const ownRate = { stockingRate: 600 }

export function farm(): Plan {
  return {
    version: 1,
    name: 'Sample C: farm with early and late blocks',
    notes:
      'Invented: place, people, bees and counts. Nine hectares in six strips, with European orchard bees for the early blocks ' +
      'and red mason bees for the late ones. In 2024 six stations stood on the edges only and the summer store reached ' +
      '38 °C; in 2025 five more stood within the blocks, a frost of -4 °C on 8 April hit the early plums, and the ' +
      'share of mouldy cells doubled. Own rate: 600 females a hectare for every crop.',
    timeZone: 'Europe/Budapest',
    units: 'metric',
    bee: 'osmia-cornuta',
    bloomRegion: 'continental',
    parameters: {},
    crops: {
      apple: ownRate,
      'apple-late': { basedOn: 'apple', name: 'Late apple', ...ownRate },
      apricot: ownRate,
      'cherry-sour': ownRate,
      'pear-european': ownRate,
      'plum-european': ownRate,
    },
    seasons,
    features: [...surroundings, ...blocks.map(block), ...stations.map(station)],
    besides: {},
  }
}
