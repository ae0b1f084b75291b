import type { Feature, Plan, Season, StationSeason } from '#geo/plan/plan'
import { bloom, boundary, frameAt, lastVisits, recordsOf, releasesOf } from './scenario-frame'

const frame = frameAt([-123.165, 44.425], 160, 100)

/** Rows run north to south; the first and last tree of a row stand half a spacing inside the block. */
const blocks = [
  { id: 'plums', name: 'Plums', crop: 'plum-european', west: 2, east: 22, rowSpacing: 5, spacing: 4, trees: 24 },
  {
    id: 'cherries',
    name: 'Sweet cherries',
    crop: 'cherry-sweet',
    west: 22,
    east: 42,
    rowSpacing: 5,
    spacing: 4,
    trees: 24,
  },
  { id: 'pears', name: 'Pears', crop: 'pear-european', west: 42, east: 64.5, rowSpacing: 4.5, spacing: 3, trees: 31 },
  {
    id: 'early-apples',
    name: 'Early apples',
    crop: 'apple',
    west: 64.5,
    east: 100.5,
    rowSpacing: 4.5,
    spacing: 2.5,
    trees: 37,
  },
  {
    id: 'late-apples',
    name: 'Late apples',
    crop: 'apple-late',
    west: 100.5,
    east: 136.5,
    rowSpacing: 4.5,
    spacing: 2.5,
    trees: 37,
  },
  {
    id: 'blueberries',
    name: 'Blueberries',
    crop: 'blueberry',
    west: 136.5,
    east: 156.1,
    rowSpacing: 2.8,
    spacing: 1.2,
    trees: 77,
  },
]

function block({ id, name, crop, west, east, rowSpacing, spacing, trees }: (typeof blocks)[number]): Feature {
  const half = (trees * spacing) / 2
  return {
    type: 'Feature',
    id,
    geometry: frame.box(west, 50 - half, east, 50 + half),
    properties: { kind: 'block', name, crop, spacing, rowSpacing, bearing: 0 },
  }
}

const stations = [
  { id: 'b1', name: 'B1 cherry headland', x: 30, y: 97, facing: 150 },
  { id: 'b2', name: 'B2 apple headland', x: 70, y: 97, facing: 170 },
  { id: 'b3', name: 'B3 among late apples', x: 118, y: 62, facing: 120, since: 2025 },
  { id: 'b4', name: 'B4 among pears', x: 62, y: 22, facing: 125, since: 2025 },
]

function station({ id, name, x, y, ...more }: (typeof stations)[number]): Feature {
  const fixed = { kind: 'station', height: 1.6, overhang: 80, support: 'post' } as const
  return { type: 'Feature', id, geometry: frame.point(x, y), properties: { ...fixed, name, ...more } }
}

const surroundings: readonly Feature[] = [
  boundary('orchard', 'Orchard', frame.box(-8, 0, 160, 100)),
  {
    type: 'Feature',
    id: 'oregon-grape',
    geometry: frame.box(-6, 4, -3, 96),
    properties: { kind: 'forage', name: 'Oregon grape hedge', blossomDensity: 600, appeal: 1 },
  },
  {
    type: 'Feature',
    id: 'poplars',
    geometry: frame.line([-7, 0], [-7, 100]),
    properties: { kind: 'windbreak', name: 'Poplars' },
  },
  {
    type: 'Feature',
    id: 'seep',
    geometry: frame.point(-2, 60),
    properties: { kind: 'mud', name: 'Seep by the hedge' },
  },
  {
    type: 'Feature',
    id: 'yard',
    geometry: frame.box(146, 98.6, 158, 100),
    properties: { kind: 'keepout', name: 'Sprayer yard', reason: 'Sprayer is filled and washed here' },
  },
]

function stocked(tubes: number, releases: ReturnType<typeof releasesOf>): Record<string, StationSeason> {
  const box = { tubes, bore: 8, depth: 150, material: 'wooden-tray' }
  return Object.fromEntries(Object.entries(releases).map(([id, batches]) => [id, { ...box, releases: batches }]))
}

const seasons: readonly Season[] = [
  {
    year: 2024,
    bloom: {
      'plum-european': bloom('2024-03-22', '2024-03-27', '2024-04-08'),
      'cherry-sweet': bloom('2024-04-01', '2024-04-06', '2024-04-17'),
      'pear-european': bloom('2024-04-04', '2024-04-09', '2024-04-20'),
      apple: bloom('2024-04-12', '2024-04-18', '2024-05-03'),
      'apple-late': bloom('2024-04-20', '2024-04-27', '2024-05-12'),
      blueberry: bloom('2024-04-14', '2024-04-27', '2024-05-20'),
      'oregon-grape': bloom('2024-03-04', '2024-03-14', '2024-04-03'),
    },
    stations: stocked(
      500,
      releasesOf([{ date: '2024-03-14', cocoons: 2000, females: 800, weights: { b1: 1, b2: 1 }, lot: 'own 2023' }]),
    ),
    records: recordsOf(lastVisits('2024-06-02', { b1: 286, b2: 184 }), {
      date: '2024-10-12',
      cells: 2538,
      females: 588,
      males: 1002,
      losses: { mite: 304, fly: 96, wasp: 74, mould: 53, other: 421 },
    }),
    fruitSet: { 'early-apples': { flowers: 400, fruit: 52 }, 'late-apples': { flowers: 400, fruit: 28 } },
  },
  {
    year: 2025,
    bloom: {
      'plum-european': bloom('2025-03-28', '2025-04-02', '2025-04-13'),
      'cherry-sweet': bloom('2025-04-06', '2025-04-11', '2025-04-21'),
      'pear-european': bloom('2025-04-09', '2025-04-14', '2025-04-25'),
      apple: bloom('2025-04-17', '2025-04-23', '2025-05-07'),
      'apple-late': bloom('2025-04-25', '2025-05-02', '2025-05-17'),
      blueberry: bloom('2025-04-18', '2025-05-01', '2025-05-23'),
      'oregon-grape': bloom('2025-03-10', '2025-03-20', '2025-04-09'),
    },
    // The first batch mostly beside the early crops in the west, the last mostly at B3 among the late apples.
    stations: stocked(
      400,
      releasesOf([
        { date: '2025-03-26', cocoons: 800, females: 304, weights: { b1: 7, b2: 5, b3: 3, b4: 5 }, lot: 'own 2024' },
        { date: '2025-04-10', cocoons: 900, females: 342, weights: { b1: 1, b2: 1, b3: 1, b4: 1 }, lot: 'bought 2025' },
        { date: '2025-04-20', cocoons: 790, females: 300, weights: { b1: 4, b2: 5, b3: 7, b4: 4 }, lot: 'own 2024' },
      ]),
    ),
    records: recordsOf(
      {
        ...lastVisits('2025-06-08', { b1: 283, b2: 264, b4: 222 }),
        b3: [
          { date: '2025-04-29', note: 'Shuttered overnight; fungicide on the late apples after dusk.' },
          { date: '2025-06-08', capped: 251 },
        ],
      },
      {
        date: '2025-10-11',
        cells: 6018,
        females: 1720,
        males: 2690,
        losses: { mite: 412, fly: 245, wasp: 148, mould: 110, other: 693 },
      },
    ),
    fruitSet: { 'early-apples': { flowers: 400, fruit: 64 }, 'late-apples': { flowers: 400, fruit: 56 } },
  },
]

/** 250 females an acre, the handbook rate for apple, taken for all the trees; blueberry by guess. */
const treeRate = { stockingRate: 618 }

export function mixedOrchard(): Plan {
  return {
    version: 1,
    name: 'Sample B: mixed orchard',
    notes:
      'Invented: place, people, bees and counts. Six crops in north-south rows on 1.6 hectares. In 2024 all cocoons went out ' +
      'on one day in March at two stations on the north edge, and six wet days followed; in 2025 they went out in three ' +
      'batches over four stations. Own rates: 618 females a hectare for every tree crop, 300 for blueberry.',
    timeZone: 'America/Los_Angeles',
    units: 'us',
    bee: 'osmia-lignaria',
    bloomRegion: 'maritime-northwest',
    parameters: {},
    crops: {
      apple: treeRate,
      'apple-late': { basedOn: 'apple', name: 'Late apple', ...treeRate },
      blueberry: { stockingRate: 300 },
      'cherry-sweet': treeRate,
      'pear-european': treeRate,
      'plum-european': treeRate,
    },
    seasons,
    features: [...surroundings, ...blocks.map(block), ...stations.map(station)],
    besides: {},
  }
}
