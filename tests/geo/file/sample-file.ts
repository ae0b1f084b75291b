import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { type Outcome, problemText } from '#geo/problem'

/** A file's content that tests spoil in one place. */
// biome-ignore lint/suspicious/noExplicitAny: the point is to put anything anywhere
export type Content = any

/** A small plan with one of everything, without a single problem. */
export function sampleFile(): Content {
  return {
    type: 'FeatureCollection',
    plan: {
      version: 1,
      name: 'Lower Field',
      notes: 'Gate code on the fridge',
      timeZone: 'Europe/London',
      units: 'metric',
      bee: 'osmia-bicornis',
      bloomRegion: 'southern-england',
      parameters: { backgroundBlossom: 3, 'osmia-bicornis': { typicalForagingRadius: 60, lag: 9 } },
      crops: { 'apple-late': { basedOn: 'apple', name: 'Late apple', stockingRate: 600 } },
      lots: [{ id: 'A-25', origin: 'own', count: 180, femaleShare: 0.36, station: 's1', season: 2025 }],
      seasons: [
        {
          year: 2026,
          appleFullBloom: '2025-04-21',
          bloom: {
            apple: { first: '2026-04-17', full: '2026-04-24', end: '2026-05-06', observed: ['first', 'full'] },
            'row-3': { first: '2026-04-20', full: '2026-04-26', end: '2026-05-08' },
          },
          stations: {
            s1: {
              bee: 'osmia-bicornis',
              tubes: 120,
              bore: 8,
              depth: 150,
              material: 'paper-liner',
              releases: [{ date: '2026-04-06', females: 60, males: 108, lot: 'A-25' }],
            },
          },
          weather: {
            days: [
              ['2026-03-01', 4.1, 12.3, 0, 3.2],
              ['2026-03-02', null, null, null, null],
            ],
          },
          records: {
            s1: {
              visits: [{ date: '2026-05-20', capped: 41, mudWet: true, damage: '', note: '' }],
              takenIn: '2026-06-20',
              opening: {
                date: '2026-10-20',
                tubesOpened: 20,
                cells: 118,
                females: 38,
                males: 61,
                losses: { mite: 9, fly: 4, wasp: 2, mould: 1, other: 3 },
                tubes: [{ cells: 6, females: 2, males: 3, losses: { mite: 1 } }, { cells: null }],
              },
            },
          },
          fruitSet: { 'row-3': { flowers: 200, fruit: 31 } },
          shareOut: { rule: 'area', shares: [{ to: 'Plot 1', measure: 18, cocoons: 40 }, { to: 'Plot 2' }] },
          coldStore: { from: '2025-11-01', temperature: 3.5 },
          setAside: [{ code: 'released-early', at: 's1', reason: 'The hedge is in blossom' }],
        },
      ],
    },
    features: [
      feature(
        'row-3',
        'LineString',
        [
          [-1.7, 52.2],
          [-1.7, 52.2009],
        ],
        {
          kind: 'row',
          name: 'Row 3',
          crop: 'apple-late',
          cultivar: '',
          spacing: 2.5,
          rowSpacing: 4.5,
        },
      ),
      feature('block-1', 'Polygon', [square(-1.699, 52.2, 0.0008), square(-1.6988, 52.2002, 0.0002)], {
        kind: 'block',
        name: 'Long block',
        crop: 'apple',
        bearing: 12,
        planted: 2019,
      }),
      feature(
        'trees',
        'MultiPoint',
        [
          [-1.7005, 52.2],
          [-1.7005, 52.2001],
        ],
        { kind: 'plant', crop: 'pear-european', spread: 5 },
      ),
      feature('beds', 'Polygon', [square(-1.6975, 52.2, 0.0004)], { kind: 'bed', crop: 'strawberry', vigour: 0.8 }),
      feature('s1', 'Point', [-1.6995, 52.2004], {
        kind: 'station',
        name: 'North gate',
        height: 1.5,
        facing: 135,
        overhang: 150,
        support: 'post',
        since: 2024,
      }),
      feature('site-a', 'Point', [-1.6985, 52.2009], { kind: 'candidate', name: 'By the pond' }),
      feature('hedge', 'Polygon', [square(-1.702, 52.2, 0.0005)], {
        kind: 'forage',
        name: 'Hedge',
        blossomDensity: 400,
        appeal: 0.8,
      }),
      feature('ditch', 'Point', [-1.6994, 52.2004], { kind: 'mud' }),
      feature('yard', 'Polygon', [square(-1.696, 52.2, 0.0004)], {
        kind: 'keepout',
        name: 'Yard',
        reason: 'Sprayer filled here',
      }),
      feature('ours', 'Polygon', [square(-1.703, 52.199, 0.01)], { kind: 'boundary' }),
      feature(
        'poplars',
        'LineString',
        [
          [-1.703, 52.199],
          [-1.693, 52.199],
        ],
        { kind: 'windbreak', name: 'Poplars' },
      ),
    ],
  }
}

export function feature(id: string, type: string, coordinates: Content, properties: Content): Content {
  return { type: 'Feature', id, geometry: { type, coordinates }, properties }
}

/** A ring from its south-west corner, counter-clockwise. */
export function square(lng: number, lat: number, side: number): [number, number][] {
  const east = Number((lng + side).toFixed(9))
  const north = Number((lat + side).toFixed(9))
  return [
    [lng, lat],
    [east, lat],
    [east, north],
    [lng, north],
    [lng, lat],
  ]
}

/** The sample after `spoil` has been at it, as text. */
export function spoilt(spoil: (file: Content) => void): string {
  const file = sampleFile()
  spoil(file)
  return JSON.stringify(file)
}

/** The sample with one value put at a path (`features.row-3.geometry`, features by id), as text. */
export function put(path: string, value: unknown): string {
  return spoilt(file => {
    const [group, key] = ends(file, path)
    group[key] = value
  })
}

/** The sample without the member at a path, as text. */
export function drop(path: string): string {
  return spoilt(file => {
    const [group, key] = ends(file, path)
    delete group[key]
  })
}

function ends(file: Content, path: string): [Content, string] {
  const keys = path.split('.')
  const key = keys.pop()!
  const step = (group: Content, next: string) => (group === file.features ? featureOf(file, next) : group[next])
  return [keys.reduce(step, file), key]
}

export function featureOf(file: Content, id: string): Content {
  return file.features.find((each: Content) => each.id === id)
}

/** Code, severity and place of everything told of a text. */
export function told(text: string): string[] {
  return readPlan(text).problems.map(({ severity, code, at }) => `${severity} ${code} at ${at}`)
}

/** The sentences. */
export function sentences(outcome: Outcome<Plan>): string[] {
  return outcome.problems.map(problemText)
}

export function planOf(outcome: Outcome<Plan>): Plan {
  if (!outcome.ok) throw new Error(`no plan: ${sentences(outcome).join(' ')}`)
  return outcome.value
}
