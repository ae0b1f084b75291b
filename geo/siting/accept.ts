import { compose, type Edit } from '../plan/edits'
import { addStationInUse, setGeometry } from '../plan/edits-features'
import { setStationSeason } from '../plan/edits-seasons'
import type { Plan, Station } from '../plan/plan'
import type { SuggestedStation, Suggestion } from './suggestion'

/** The part of a suggestion that a plan is changed by. */
export type Accepted = Pick<Suggestion, 'year' | 'stations' | 'dropped'>

/**
 * A suggestion, or the stations of it that were accepted, as one edit. A station that moves and is in use in other
 * seasons too is left where it stood for them: it gets a new place under a new id.
 */
export function acceptSuggestion(plan: Plan, { year, stations, dropped }: Accepted): Edit {
  const edits = stations.flatMap(station => {
    if (station.new) return [addStationInUse(featureOf(station), year, seasonUse(station))]
    const before = plan.features.find(({ id }) => id === station.id)
    if (before?.properties.kind !== 'station') throw new RangeError(`the plan has no station ${station.id}`)
    const place = { type: 'Point' as const, coordinates: station.at }
    const id = movedId(plan, year, station.id)
    if (id === station.id) return [setGeometry(station.id, place)]
    const use = plan.seasons.find(season => season.year === year)!.stations![station.id]!
    const moved = { ...(before as Station), id, geometry: place }
    return [setStationSeason(year, station.id, null), addStationInUse(moved, year, use)]
  })
  const gone = dropped.map(id => setStationSeason(year, id, null))
  const count = stations.length
  return compose(count === 1 ? 'Accept a suggested station' : `Accept ${count} suggested stations`, [...gone, ...edits])
}

/** The id of a station that moves in one season: its own, unless other seasons use it where it stands. */
export function movedId(plan: Plan, year: number, id: string): string {
  const isUsedElsewhere = plan.seasons.some(season => season.year !== year && Object.hasOwn(season.stations ?? {}, id))
  return isUsedElsewhere ? `${id}-${year}` : id
}

function featureOf({ id, at }: SuggestedStation): Station {
  return { type: 'Feature', id, geometry: { type: 'Point', coordinates: at }, properties: { kind: 'station' } }
}

function seasonUse({ bee, tubes, releases }: SuggestedStation) {
  return { bee, tubes, releases }
}
