import { compose, type Edit } from '../plan/edits'
import { addStationInUse, setGeometry } from '../plan/edits-features'
import { setStationSeason } from '../plan/edits-seasons'
import { isStation, type Plan, type Station } from '../plan/plan'
import { keptPosition } from '../stocking/season-ground'
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
    const before = standingStation(plan, station.id)
    const used = plan.seasons.find(season => season.year === year)?.stations?.[station.id]
    // Tubes that hang there stay, however few are needed.
    const tubes = Math.max(used?.tubes ?? 0, station.tubes)
    const stocked = station.bought ? { ...seasonUse(station), tubes } : {}
    const id = idAfter(plan, year, station)
    if (id !== station.id) {
      const moved = { ...before, id, geometry: placeOf(station) }
      return [setStationSeason(year, station.id, null), addStationInUse(moved, year, { ...used, ...stocked })]
    }
    const place = isThere(before, station) ? [] : [setGeometry(id, placeOf(station))]
    return station.bought ? [...place, setStationSeason(year, id, stocked)] : place
  })
  const gone = dropped.map(id => setStationSeason(year, id, null))
  const count = stations.length
  return compose(count === 1 ? 'Accept a suggested station' : `Accept ${count} suggested stations`, [...gone, ...edits])
}

/**
 * The id under which a suggested station stands once it is accepted: its own, unless it moves and other seasons use it
 * where it stands.
 */
export function idAfter(plan: Plan, year: number, station: Pick<SuggestedStation, 'id' | 'at' | 'new'>): string {
  const { id } = station
  if (station.new || isThere(standingStation(plan, id), station)) return id
  const isUsedElsewhere = plan.seasons.some(season => season.year !== year && Object.hasOwn(season.stations ?? {}, id))
  return isUsedElsewhere ? `${id}-${year}` : id
}

function standingStation(plan: Plan, id: string): Station {
  const station = plan.features.find(each => each.id === id)
  if (station === undefined || !isStation(station)) throw new RangeError(`the plan has no station ${id}`)
  return station
}

function isThere({ geometry }: Station, { at }: Pick<SuggestedStation, 'at'>): boolean {
  const kept = keptPosition(geometry.coordinates)
  return kept[0] === at[0] && kept[1] === at[1]
}

function placeOf({ at }: Pick<SuggestedStation, 'at'>) {
  return { type: 'Point' as const, coordinates: at }
}

function featureOf(station: SuggestedStation): Station {
  return { type: 'Feature', id: station.id, geometry: placeOf(station), properties: { kind: 'station' } }
}

function seasonUse({ bee, tubes, releases }: SuggestedStation) {
  return { bee, tubes, releases }
}
