import { compose, type Edit } from '../plan/edits'
import { setReleases } from '../plan/edits-seasons'
import { type Release, seasonOf } from '../plan/plan'
import type { Advice, DatedShare } from './advice'
import { type Given, wholeShares } from './whole-shares'

/** Advice as one edit: the cocoons of each of its stations go out on its dates, in its shares. */
export function acceptAdvice(year: number, { stations }: Pick<Advice, 'stations'>): Edit {
  return {
    label: 'Accept advice on release dates',
    apply: plan => {
      const uses = seasonOf(plan, year)?.stations ?? {}
      const edits = stations.flatMap(({ id, batches }) => {
        const releases = Object.hasOwn(uses, id) ? uses[id]!.releases : undefined
        return releases === undefined ? [] : [setReleases(year, id, splitReleases(releases, batches))]
      })
      return compose('Accept advice', edits).apply(plan)
    },
  }
}

/**
 * All cocoons of `releases` on the days of `batches`, in whole numbers that add up to the same females and males of each
 * lot; what else a release says stays with its lot.
 */
export function splitReleases(releases: readonly Release[], batches: readonly DatedShare[]): Release[] {
  const shares = batches.map(({ share }) => share)
  const given = { females: noneOf(shares), males: noneOf(shares) }
  const split = lotsOf(releases).flatMap(lot => {
    const females = wholeShares(lot.females, shares, given.females)
    const males = lot.males === undefined ? undefined : wholeShares(lot.males, shares, given.males)
    return batches.map(({ date }, i) => ({ ...lot, date, females: females[i]!, ...(males && { males: males[i]! }) }))
  })
  return split
    .filter(({ females, males = 0 }) => females > 0 || males > 0)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
}

/** Releases that differ in nothing but their day and numbers, as one. */
function lotsOf(releases: readonly Release[]): readonly Release[] {
  const lots = new Map<string, Release>()
  for (const release of releases) {
    const { date: _, females, males, ...rest } = release
    const key = JSON.stringify([Object.entries(rest).sort(), males === undefined])
    const before = lots.get(key)
    if (before === undefined) lots.set(key, release)
    else {
      const sum = { ...before, females: before.females + females }
      lots.set(key, males === undefined ? sum : { ...sum, males: before.males! + males })
    }
  }
  return [...lots.values()]
}

function noneOf(shares: readonly number[]): Given {
  return { due: shares.map(() => 0), got: shares.map(() => 0) }
}
