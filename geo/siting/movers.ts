import type { Setting } from './setting'

/**
 * Which station moves to which of some places: one that stands at one of them stays there, the others go to the nearest
 * that is left. Places where another stands unused need none. Stations left over are spared.
 */
export function moversTo(
  { movers, unused, sites }: Pick<Setting, 'movers' | 'unused' | 'sites'>,
  places: readonly number[],
): { readonly moverOf: ReadonlyMap<number, string>; readonly spared: readonly string[] } {
  const free = places.filter(site => !unused.has(sites[site]!.id))
  const pairs = movers.flatMap(({ id, x, y }) =>
    free.map(site => {
      const at = sites[site]!
      return { id, site, away: at.id === id ? 0 : Math.hypot(at.x - x, at.y - y) }
    }),
  )
  const moverOf = new Map<number, string>()
  const placed = new Set<string>()
  for (const { id, site } of pairs.sort((a, b) => a.away - b.away)) {
    if (moverOf.has(site) || placed.has(id)) continue
    moverOf.set(site, id)
    placed.add(id)
  }
  return { moverOf, spared: movers.map(({ id }) => id).filter(id => !placed.has(id)) }
}
