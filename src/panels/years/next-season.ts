import { compose, type Edit } from '#geo/plan/edits'
import { setLot } from '#geo/plan/edits-records'
import { addSeason } from '#geo/plan/edits-seasons'
import type { Bloom, Plan, Release, Season, StationSeason } from '#geo/plan/plan'
import { dividedFairly } from '#geo/seasons/share-out'
import { cropsIn, orchardYearOf, stationYearsOf } from '../../state/selectors'
import { defaultForCrop, hingeOf } from '../bloom/bloom-defaults'
import { copiedSeason } from '../frame/copied-season'

/** Cocoons set out as the season before, or those that its own nests held. */
export type StockFrom = 'same' | 'own'
/** Bloom on the same days as the season before, or on the usual days of region and own apple date. */
export type BloomFrom = 'same' | 'usual'

/** What a season's nests left to be set out; null where that was not counted for both sexes, or nothing is left. */
export function ownStock(plan: Plan, year: number): { readonly found: number; readonly left: number } | null {
  const { daughters, sons, stockLeft } = orchardYearOf(plan, year)
  if (daughters === null || sons === null || stockLeft === null || stockLeft < 1) return null
  return { found: Math.round(daughters + sons), left: Math.floor(stockLeft) }
}

/** The season after, from one before it, as one step of undo. */
export function nextSeasonEdit(
  plan: Plan,
  before: Season,
  year: number,
  { stock, bloom }: { readonly stock: StockFrom; readonly bloom: BloomFrom },
): Edit {
  const copy = copiedSeason(before, year)
  const withBloom = bloom === 'usual' ? usualBloom(plan, before.year, copy) : copy
  const own = stock === 'own' ? ownStock(plan, before.year) : null
  if (own === null) return addSeason(withBloom)
  const id = `own ${before.year}`
  const isKnown = plan.lots?.some(lot => lot.id === id) ?? false
  const lot = { origin: 'own nests', count: own.found, season: before.year }
  return compose(`Add season ${year}`, [
    addSeason({ ...withBloom, stations: ownReleases(plan, before, withBloom, id, own) }),
    ...(isKnown ? [] : [setLot(id, lot)]),
  ])
}

/** Crops bloom on the usual days; what has dates of its own keeps its day of the season. */
function usualBloom(plan: Plan, yearBefore: number, season: Season): Season {
  const hinge = hingeOf(plan, yearBefore)
  const crops = new Set(cropsIn(plan, season.year))
  const own = Object.entries(season.bloom ?? {}).filter(([key]) => !crops.has(key))
  const usual = [...crops].flatMap((crop): (readonly [string, Bloom])[] => {
    const found = defaultForCrop(plan, season.year, crop, hinge)?.bloom ?? season.bloom?.[crop]
    return found ? [[crop, found]] : []
  })
  return {
    ...season,
    ...(hinge.apple !== null && { appleFullBloom: hinge.apple }),
    bloom: Object.fromEntries([...usual, ...own]),
  }
}

/** Each bee's own cocoons in the batches of the season before, in proportion to them, to the last cocoon. */
function ownReleases(
  plan: Plan,
  before: Season,
  season: Season,
  lot: string,
  { found, left }: { readonly found: number; readonly left: number },
): Readonly<Record<string, StationSeason>> {
  const uses = Object.entries(season.stations ?? {})
  const beeOf = (use: StationSeason) => use.bee ?? plan.bee
  const counted = stationYearsOf(plan, before.year)
  const shares = new Map<Release, Release>()
  for (const bee of new Set(uses.map(([, use]) => beeOf(use)))) {
    const releases = uses.flatMap(([, use]) => (beeOf(use) === bee ? (use.releases ?? []) : []))
    if (releases.length === 0) continue
    const ofBee = counted.filter(each => each.bee === bee)
    const kept = (of: 'daughters' | 'sons') =>
      Math.floor((ofBee.reduce((sum, each) => sum + (each[of]?.count ?? 0), 0) * left) / found + 1e-9)
    const weights = releases.map(({ females }) => females)
    const females = dividedFairly(kept('daughters'), weights)
    const males = dividedFairly(kept('sons'), weights)
    releases.forEach((release, i) => {
      shares.set(release, { date: release.date, females: females[i]!, males: males[i]!, lot })
    })
  }
  return Object.fromEntries(
    uses.map(([id, use]) => [
      id,
      use.releases ? { ...use, releases: use.releases.map(release => shares.get(release) ?? release) } : use,
    ]),
  )
}
