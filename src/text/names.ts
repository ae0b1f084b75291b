import type { BloomRegion } from '#geo/data/own'
import type { FeatureKind, Plan } from '#geo/plan/plan'
import { limitNames } from '#geo/report/limit-names'
import type { Limit } from '#geo/report/report'
import { verdictOf } from './verdict'
import { capitalised } from './words'

/** What the grower calls each kind of drawn thing. */
export const kindNames: Readonly<Record<FeatureKind, { readonly one: string; readonly many: string }>> = {
  row: { one: 'row', many: 'rows' },
  block: { one: 'block', many: 'blocks' },
  plant: { one: 'plant', many: 'single plants' },
  bed: { one: 'bed', many: 'beds' },
  station: { one: 'nest station', many: 'nest stations' },
  candidate: { one: 'place for a station', many: 'places for a station' },
  forage: { one: 'forage area', many: 'forage areas' },
  mud: { one: 'mud point', many: 'mud points' },
  keepout: { one: 'no-station ground', many: 'no-station grounds' },
  boundary: { one: 'boundary', many: 'boundaries' },
  windbreak: { one: 'windbreak', many: 'windbreaks' },
}

export const regionNames: Readonly<Record<BloomRegion, string>> = {
  'maritime-northwest': 'mild and wet, ocean side (North American northwest)',
  continental: 'continental, cold winters and a quick spring',
  'southern-england': 'mild, long spring (southern England)',
}

/** What would put each limit right, as far as the working tries it. */
export const remedyNames = {
  distance: 'nests right beside it',
  timing: 'bees out on its best days',
  numbers: 'twice the bees',
  competition: 'no blossom but the plantings’',
} as const

export type Remedy = keyof typeof remedyNames

type Held = {
  readonly limit: Limit | null
  readonly reach: number | null
  readonly coverage: number | null
  readonly timingMatch?: number | null
}

/**
 * What holds a planting back; null where nothing does, or where it is not known. One that is in reach lacks nests close
 * by, not reach; one that no single change helps, though it is far from enough, lacks too much for any one of them.
 * Bees that fly outside its bloom find wild blossom then, and that only because nothing of it is open.
 */
export function limitWords({ limit, reach, coverage, timingMatch }: Held): string | null {
  if (limit === null) return null
  if (limit === 'none') return verdictOf(coverage) === 'yes' || coverage === null ? null : 'no single change is enough'
  if (limit === 'competition' && verdictOf(timingMatch ?? null) === 'no')
    return 'out of time: its bees live on wild blossom'
  return limit === 'distance' && verdictOf(reach) === 'yes' ? 'in reach, but no nest close by' : limitNames[limit]
}

/** "Row 4" where the plan has rows up to "Row 3". */
export function nextName(plan: Plan, kind: FeatureKind): string {
  const word = capitalised(kindNames[kind].one)
  const form = new RegExp(`^${word} (\\d+)$`)
  const highest = plan.features.reduce((most, { properties }) => {
    return Math.max(most, Number(form.exec(properties.name ?? '')?.[1] ?? 0))
  }, 0)
  return `${word} ${highest + 1}`
}
