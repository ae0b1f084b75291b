import { moveFeatures, setProperties } from '#geo/plan/edits-features'
import { setReleases } from '#geo/plan/edits-seasons'
import type { Feature, Plan } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { planKeeper, planTeller } from '../../src/worker/kept-plan'

const rows = 3000
const stations = 60

/** 3,000 rows of 35 trees and 60 stations in two seasons: some 105,000 plants. */
function largePlan(): Plan {
  const features: Feature[] = Array.from({ length: rows }, (_, i) => {
    const [column, row] = [Math.floor(i / 50), i % 50]
    const [lng, lat] = [0.16 + column * 0.0037 + row * 0.000066, 52.59]
    return {
      type: 'Feature',
      id: `row-${i}`,
      geometry: { type: 'LineString', coordinates: [[lng, lat] as const, [lng, lat + 0.00077] as const] },
      properties: { kind: 'row', name: `Row ${i + 1}`, crop: 'apple', spacing: 2.5, rowSpacing: 4.5 },
    }
  })
  for (let i = 0; i < stations; i += 1) {
    const at = [0.16 + i * 0.0037, 52.591] as const
    const geometry = { type: 'Point', coordinates: at } as const
    features.push({ type: 'Feature', id: `station-${i}`, geometry, properties: { kind: 'station' } })
  }
  const inUse = (year: number) =>
    Object.fromEntries(
      Array.from({ length: stations }, (_, i) => [
        `station-${i}`,
        { tubes: 300, releases: [{ date: `${year}-04-06`, females: 200, males: 300 }] },
      ]),
    )
  return {
    version: 1,
    name: 'Large',
    notes: '',
    timeZone: 'Europe/London',
    units: 'metric',
    bee: 'osmia-bicornis',
    bloomRegion: 'southern-england',
    parameters: {},
    crops: {},
    seasons: [2025, 2026].map(year => ({ year, stations: inUse(year) })),
    features,
    besides: {},
  }
}

/** Ordinary edits, one after the other. */
function edited(plan: Plan): readonly Plan[] {
  const steps = [
    moveFeatures(['row-1500'], { lng: 1e-6, lat: 0 }),
    setProperties('row-2', { spacing: 2.6 }),
    moveFeatures(['station-7'], { lng: 0, lat: 1e-6 }),
    setReleases(2026, 'station-7', [{ date: '2026-04-09', females: 180 }]),
  ]
  let now = plan
  return steps.map(step => {
    now = step.apply(now)
    return now
  })
}

/** Of what the edits touch, and of how much there is. */
function checkOf({ features, seasons }: Plan): number {
  const row = features[1500]!.geometry.coordinates as readonly LngLat[]
  const station = features[rows + 7]!.geometry.coordinates as LngLat
  const spacing = (features[2]!.properties as { readonly spacing?: number }).spacing ?? 0
  const females = seasons[1]!.stations!['station-7']!.releases![0]!.females
  return features.length + row[0]![0] + station[1] + spacing + females
}

/**
 * What it costs to tell a worker of edits: finding what changed, cloning it and putting the plan together again, against
 * cloning the whole plan. Each run answers with a checksum of the plans that arrived.
 */
export function planBench(): { readonly change: () => number; readonly whole: () => number } {
  const start = largePlan()
  const plans = edited(start)
  const teller = planTeller()
  const planAfter = planKeeper()
  const tell = (plan: Plan): Plan => planAfter(structuredClone(teller.changeTo(plan)))
  tell(start)
  for (const plan of plans) {
    if (JSON.stringify(tell(plan)) !== JSON.stringify(plan)) throw new Error('a plan did not arrive as it was')
  }
  return {
    change: () => plans.reduce((sum, plan) => sum + checkOf(tell(plan)), 0),
    whole: () => plans.reduce((sum, plan) => sum + checkOf(structuredClone(plan)), 0),
  }
}
