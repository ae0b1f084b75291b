import type { BeeId, BloomRegion } from '#geo/data/own'
import type { Plan, Units } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { besidesWithPlace, nowhere } from '../../text/home'

export type NewPlan = {
  readonly name: string
  readonly place: LngLat | null
  readonly bee: BeeId
  readonly bloomRegion: BloomRegion
  readonly units: Units
  readonly timeZone: string
  readonly year: number
}

/** A plan with nothing drawn and one empty season. */
export function newPlan({ name, place, bee, bloomRegion, units, timeZone, year }: NewPlan): Plan {
  return {
    version: 1,
    name: name.trim() || 'New plan',
    notes: '',
    timeZone,
    units,
    bee,
    bloomRegion,
    parameters: {},
    crops: {},
    seasons: [{ year }],
    features: [],
    // Without a place of its own a plan still has a fixed point, so that what is typed stays where it was put.
    besides: besidesWithPlace(place ?? nowhere),
  }
}

/** Bee and spring that are likeliest at a place: a first guess for the form, which says that it is one. */
export function likelyAt([lng, lat]: LngLat): { readonly bee: BeeId; readonly bloomRegion: BloomRegion } {
  if (lng < -30) return { bee: 'osmia-lignaria', bloomRegion: lng < -115 ? 'maritime-northwest' : 'continental' }
  const isBritish = lng < 2 && lat > 49.9
  const bloomRegion = isBritish ? 'southern-england' : 'continental'
  if (lng > 100) return { bee: 'osmia-cornifrons', bloomRegion }
  return { bee: 'osmia-bicornis', bloomRegion }
}
