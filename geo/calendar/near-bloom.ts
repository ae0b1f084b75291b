import { adviceFigures } from '../data/timing-figures'
import type { Station } from '../plan/plan'
import { groundsWithin } from '../timing/open-forage'
import type { TimingGround } from '../timing/timing-ground'
import type { NamedBloom } from './season-facts'

/** Which of the plan's blooms a station's first females have near: blossom farther off does not hold them. */
export type BloomsNear = (station: Station) => readonly NamedBloom[]

/** `blooms` stays in its order; each station is looked at once. */
export function bloomsNear(ground: TimingGround, blooms: readonly NamedBloom[]): BloomsNear {
  const known = new Map<string, readonly NamedBloom[]>()
  return station => {
    const found = known.get(station.id)
    if (found !== undefined) return found
    const place = ground.plane.toMetres(station.geometry.coordinates)
    const indices = groundsWithin(ground, place, adviceFigures.forageReach.value)
    const ids = new Set(indices.map(index => ground.demand.grounds[index]!.id))
    const near = blooms.filter(bloom => bloom.ids.some(id => ids.has(id)))
    known.set(station.id, near)
    return near
  }
}
