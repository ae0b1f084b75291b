import type { Feature, Plan, Season, Station, StationSeason, Visit } from '#geo/plan/plan'
import { bloom, boundary, frameAt, lastVisits, recordsOf, releasesOf } from './scenario-frame'
import { between, randomFor, shuffled } from './seeds'

const frame = frameAt([0.16, 52.59], 111, 92.5)

/** Plots of 10 m by 20 m in four ranks; corner to the south-west, m. */
type Plot = { readonly number: number; readonly x: number; readonly y: number }
const ranks = [
  { y: 3, plots: 10 },
  { y: 24.5, plots: 10 },
  { y: 48, plots: 9 },
  { y: 69.5, plots: 9 },
]
const plots: readonly Plot[] = ranks
  .flatMap(({ y, plots: count }) => Array.from({ length: count }, (_, i) => ({ x: 3 + 10.5 * i, y })))
  .map((corner, i) => ({ number: i + 1, ...corner }))

/** Trees of the plots: how many, crown in metres. They stand in no order, one or two on most plots. */
const plotTrees = [
  { id: 'apples-early', name: 'Apples on the plots', crop: 'apple', count: 20, spread: 3 },
  { id: 'apples-late', name: 'Late apples on the plots', crop: 'apple-late', count: 14, spread: 3 },
  { id: 'plums', name: 'Plums and damsons', crop: 'plum-european', count: 15, spread: 4 },
  { id: 'pears', name: 'Pears', crop: 'pear-european', count: 7, spread: 3 },
  { id: 'cherries', name: 'Cherries', crop: 'cherry-sweet', count: 5, spread: 4 },
]
/** Trees of the communal strip, in two columns from the south. */
const communalTrees = [
  { id: 'communal-apples', name: 'Communal apples', crop: 'apple', count: 4, spread: 4 },
  { id: 'communal-apples-late', name: 'Communal late apples', crop: 'apple-late', count: 2, spread: 4 },
  { id: 'communal-plums', name: 'Communal plums', crop: 'plum-european', count: 3, spread: 4 },
  { id: 'communal-pears', name: 'Communal pears', crop: 'pear-european', count: 2, spread: 3.5 },
  { id: 'communal-quince', name: 'Communal quince', crop: 'quince', count: 1, spread: 4 },
]

const ground: readonly Feature[] = [
  boundary('site', 'Whole site', frame.box(0, 0, 111, 92.5)),
  ...plots.map(({ number, x, y }) => boundary(`plot-${number}`, `Plot ${number}`, frame.box(x, y, x + 10, y + 20))),
  boundary('communal-strip', 'Communal strip', frame.box(97.5, 48, 108, 89.5)),
  {
    type: 'Feature',
    id: 'hedge',
    geometry: frame.line([0.5, 0.5], [110.5, 0.5], [110.5, 92], [0.5, 92], [0.5, 0.5]),
    properties: { kind: 'windbreak', name: 'Hedge all round' },
  },
  {
    type: 'Feature',
    id: 'hawthorn',
    geometry: frame.box(30, 91, 90, 92.5),
    properties: { kind: 'forage', name: 'Hawthorn in the hedge', blossomDensity: 800, appeal: 0.8 },
  },
  mud('mud-tray', 'Mud tray by A4', 14, 2),
  mud('mud-ditch', 'Wet ditch', 109.5, 70),
]

function mud(id: string, name: string, x: number, y: number): Feature {
  return { type: 'Feature', id, geometry: frame.point(x, y), properties: { kind: 'mud', name } }
}

/** Four places for trees at the southern end of every plot, taken in a seeded order and moved a little. */
function trees(): Feature[] {
  const random = randomFor('allotmentTrees')
  const places = plots.flatMap(({ x, y }) =>
    [2.5, 7.5].flatMap(east => [2.5, 7].map(north => [x + east, y + north] as const)),
  )
  const free = shuffled(places, random).map(
    ([x, y]) => [x + between(random, -0.3, 0.3), y + between(random, -0.3, 0.3)] as const,
  )
  const communal = Array.from({ length: 12 }, (_, i) => [100 + 5.2 * (i % 2), 52.5 + 6.2 * Math.floor(i / 2)] as const)
  const plant =
    (from: (readonly [number, number])[]) =>
    (kind: (typeof plotTrees)[number]): Feature => {
      const { id, name, crop, count, spread } = kind
      const coordinates = from.splice(0, count).map(([x, y]) => frame.at(x, y))
      return {
        type: 'Feature',
        id,
        geometry: { type: 'MultiPoint', coordinates },
        properties: { kind: 'plant', name, crop, spread },
      }
    }
  return [...plotTrees.map(plant(free)), ...communalTrees.map(plant(communal))]
}

/** 140 m of raspberries in 20 rows, 90 currant and gooseberry bushes in 18, and 26 strawberry beds. */
function softFruit(): Feature[] {
  const random = randomFor('allotmentBeds')
  const some = (count: number) =>
    shuffled(plots, random)
      .slice(0, count)
      .sort((a, b) => a.number - b.number)
  const row =
    (kind: { id: string; name: string; crop: string; from: number; to: number; north: number; count?: number }) =>
    ({ number, x, y }: Plot): Feature => ({
      type: 'Feature',
      id: `${kind.id}-${number}`,
      geometry: frame.line([x + kind.from, y + kind.north], [x + kind.to, y + kind.north]),
      properties: {
        kind: 'row',
        name: `${kind.name}, plot ${number}`,
        crop: kind.crop,
        ...(kind.count === undefined ? {} : { count: kind.count }),
      },
    })
  const bushes = some(18)
  const bush = { from: 1, to: 9, north: 13.8, count: 5 }
  return [
    ...some(20).map(
      row({ id: 'raspberries', name: 'Raspberries', crop: 'raspberry', from: 1.5, to: 8.5, north: 11.5 }),
    ),
    ...bushes
      .filter((_, i) => i % 9 < 5)
      .map(row({ ...bush, id: 'currants', name: 'Black currants', crop: 'currant-black' })),
    ...bushes
      .filter((_, i) => i % 9 >= 5)
      .map(row({ ...bush, id: 'gooseberries', name: 'Gooseberries', crop: 'gooseberry' })),
    ...some(26).map(
      ({ number, x, y }): Feature => ({
        type: 'Feature',
        id: `strawberries-${number}`,
        geometry: frame.box(x + 2.5, y + 15.5, x + 7.25, y + 17.9),
        properties: { kind: 'bed', name: `Strawberries, plot ${number}`, crop: 'strawberry' },
      }),
    ),
  ]
}

type Site = Omit<Station['properties'], 'kind'> & { readonly id: string; readonly x: number; readonly y: number }
const stations: readonly Site[] = [
  { id: 'a1', name: 'A1 shed wall', x: 103, y: 88, facing: 100, support: 'wall' },
  { id: 'a2', name: 'A2 communal strip', x: 101, y: 50, facing: 140, support: 'post' },
  { id: 'a3', name: 'A3 west hedge', x: 3.5, y: 60, facing: 120, support: 'fence' },
  { id: 'a4', name: 'A4 south hedge', x: 12, y: 3.5, facing: 160, support: 'fence' },
  { id: 'a5', name: 'A5 centre track', x: 60, y: 46, facing: 130, support: 'post', since: 2025 },
]

function station({ id, name, x, y, ...properties }: Site): Feature {
  return {
    type: 'Feature',
    id,
    geometry: frame.point(x, y),
    properties: { kind: 'station', name: name!, height: 1.6, overhang: 60, ...properties },
  }
}

const even = (ids: readonly string[]) => Object.fromEntries(ids.map(id => [id, 1]))

function stocked(releases: ReturnType<typeof releasesOf>): Record<string, StationSeason> {
  const box = { tubes: 60, bore: 8, depth: 150, material: 'paper-liner' }
  return Object.fromEntries(Object.entries(releases).map(([id, batches]) => [id, { ...box, releases: batches }]))
}

const firstFour = ['a1', 'a2', 'a3', 'a4']
const weeks = ['2024-04-28', '2024-05-05', '2024-05-12', '2024-05-19', '2024-06-02', '2024-06-16']
const cappedByWeek: Readonly<Record<string, readonly number[]>> = {
  a1: [4, 12, 22, 31, 37, 38],
  a2: [2, 8, 15, 22, 26, 27],
  a3: [0, 1, 3, 5, 6, 6],
  a4: [1, 4, 8, 10, 11, 11],
}

/** The weekly round of 2024, with what was noticed on it. */
function visits2024(): Record<string, Visit[]> {
  const noticed = (id: string, date: string): Partial<Visit> => {
    if (id === 'a4' && (date === '2024-05-05' || date === '2024-05-12')) return { mudWet: false, note: 'Mud tray dry.' }
    if (id === 'a4') return { mudWet: true }
    if (id === 'a3' && date === '2024-06-16') return { note: 'Faces west into the wind; to be turned in winter.' }
    if (id === 'a1' && date === '2024-04-28') return { note: 'Drizzle and under 10 °C since the 26th.' }
    return {}
  }
  return Object.fromEntries(
    Object.entries(cappedByWeek).map(([id, capped]) => [
      id,
      weeks.map((date, week) => ({ date, capped: capped[week]!, ...noticed(id, date) })),
    ]),
  )
}

const seasons: readonly Season[] = [
  {
    year: 2024,
    bloom: {
      'currant-black': bloom('2024-04-03', '2024-04-10', '2024-04-26'),
      gooseberry: bloom('2024-04-03', '2024-04-10', '2024-04-26'),
      'plum-european': bloom('2024-04-04', '2024-04-08', '2024-04-21'),
      'cherry-sweet': bloom('2024-04-10', '2024-04-15', '2024-04-26'),
      'pear-european': bloom('2024-04-11', '2024-04-15', '2024-04-28'),
      apple: bloom('2024-04-17', '2024-04-23', '2024-05-08'),
      'apple-late': bloom('2024-04-24', '2024-04-29', '2024-05-14'),
      quince: bloom('2024-04-20', '2024-04-25', '2024-05-06'),
      strawberry: bloom('2024-04-27', '2024-05-12', '2024-06-05'),
      raspberry: bloom('2024-05-22', '2024-06-02', '2024-06-20'),
      hawthorn: bloom('2024-05-05', '2024-05-10', '2024-05-19'),
    },
    stations: stocked(
      releasesOf([
        { date: '2024-04-04', cocoons: 180, females: 72, weights: even(firstFour) },
        { date: '2024-04-20', cocoons: 120, females: 48, weights: even(firstFour) },
      ]),
    ),
    records: recordsOf(visits2024(), {
      date: '2024-10-19',
      cells: 500,
      females: 129,
      males: 211,
      losses: { mite: 24, fly: 58, wasp: 10, mould: 6, other: 62 },
    }),
  },
  {
    year: 2025,
    bloom: {
      'currant-black': bloom('2025-04-16', '2025-04-22', '2025-05-06'),
      gooseberry: bloom('2025-04-16', '2025-04-22', '2025-05-06'),
      'plum-european': bloom('2025-04-17', '2025-04-21', '2025-05-02'),
      'cherry-sweet': bloom('2025-04-22', '2025-04-27', '2025-05-07'),
      'pear-european': bloom('2025-04-23', '2025-04-28', '2025-05-09'),
      apple: bloom('2025-04-29', '2025-05-05', '2025-05-19'),
      'apple-late': bloom('2025-05-05', '2025-05-11', '2025-05-25'),
      quince: bloom('2025-05-02', '2025-05-07', '2025-05-17'),
      strawberry: bloom('2025-05-08', '2025-05-22', '2025-06-14'),
      raspberry: bloom('2025-06-01', '2025-06-11', '2025-06-28'),
      hawthorn: bloom('2025-05-16', '2025-05-21', '2025-05-30'),
    },
    stations: stocked(
      releasesOf([
        { date: '2025-04-15', cocoons: 100, females: 38, weights: even([...firstFour, 'a5']) },
        { date: '2025-04-27', cocoons: 120, females: 46, weights: even([...firstFour, 'a5']) },
        { date: '2025-05-06', cocoons: 80, females: 30, weights: even([...firstFour, 'a5']) },
      ]),
    ),
    records: recordsOf(lastVisits('2025-06-22', { a1: 44, a2: 36, a3: 21, a4: 24, a5: 19 }), {
      date: '2025-10-18',
      cells: 835,
      females: 261,
      males: 391,
      losses: { mite: 21, fly: 64, wasp: 12, mould: 7, other: 79 },
    }),
  },
]

export function allotment(): Plan {
  return {
    version: 1,
    name: 'Sample A: allotment with 38 plots',
    notes:
      'Invented: place, people, bees and counts. A hectare of plots with 73 fruit trees, berry rows and strawberry beds, and ' +
      'few bees. In 2025 A3 was turned from west to east-south-east, the mud tray by A4 got a watering rota, and A5 was ' +
      'added on the centre track; spring came about 13 days later than in 2024.',
    timeZone: 'Europe/London',
    units: 'metric',
    bee: 'osmia-bicornis',
    bloomRegion: 'southern-england',
    parameters: {},
    crops: { 'apple-late': { basedOn: 'apple', name: 'Late apple' } },
    seasons,
    features: [...ground, ...trees(), ...softFruit(), ...stations.map(station)],
    besides: {},
  }
}
