import type { Edit } from './edits'
import { patched } from './edits'
import { changeSeason } from './edits-seasons'
import type { ColdStore, Season, SetAside } from './plan'

/** Since when the cocoons of a season have been cold, and how cold; null = not known. */
export function setColdStore(year: number, coldStore: ColdStore | null, gestureKey?: string): Edit {
  return {
    label: `${coldStore ? 'Change' : 'Clear'} cold store of ${year}`,
    key: gestureKey,
    apply: plan =>
      changeSeason(plan, year, season => {
        const before = season.coldStore ?? {}
        const after = coldStore && patched(before, { temperature: undefined, ...coldStore })
        return patched(season, { coldStore: after === null ? undefined : after })
      }),
  }
}

/** Puts a field check aside with a reason that is kept; one that is aside already gets the new reason. */
export function putCheckAside(year: number, check: SetAside, gestureKey?: string): Edit {
  return {
    label: 'Put a check aside',
    key: gestureKey,
    apply: plan =>
      changeSeason(plan, year, season => {
        const before = season.setAside?.find(each => isSame(each, check))
        if (before?.reason === check.reason) return season
        if (before === undefined) return withSetAside(season, [...(season.setAside ?? []), check])
        return withSetAside(
          season,
          season.setAside!.map(each => (each === before ? { ...before, ...check } : each)),
        )
      }),
  }
}

/** Lets a field check that was put aside speak again. */
export function takeCheckBack(year: number, check: Pick<SetAside, 'code' | 'at'>): Edit {
  return {
    label: 'Take a check back',
    apply: plan =>
      changeSeason(plan, year, season => {
        const left = season.setAside?.filter(each => !isSame(each, check))
        return left === undefined || left.length === season.setAside?.length ? season : withSetAside(season, left)
      }),
  }
}

function isSame(a: Pick<SetAside, 'code' | 'at'>, b: Pick<SetAside, 'code' | 'at'>): boolean {
  return a.code === b.code && a.at === b.at
}

function withSetAside(season: Season, setAside: readonly SetAside[]): Season {
  return patched(season, { setAside: setAside.length > 0 ? setAside : undefined })
}
