import { compose, type Edit } from '#geo/plan/edits'
import { setProperties } from '#geo/plan/edits-features'
import { isStation, type Plan } from '#geo/plan/plan'
import { acceptSuggestion } from '#geo/siting/accept'
import type { SuggestedStation } from '#geo/siting/suggestion'
import type { LngLat } from '#geo/space/plane'
import { acceptStock } from '#geo/stocking/programme'
import { edit, notify } from './actions'
import { type Ask, type BoxesState, isAnswerTo, type Stocked, type Suggested, untouched } from './boxes'
import type { Job, PlannerState, PlannerStore } from './store'

export function changeAsk(store: PlannerStore, patch: Partial<Ask>): void {
  const { ask } = store.getState().boxes
  changeBoxes(store, { ask: { ...ask, ...patch } })
}

export function changeBoxes(store: PlannerStore, patch: Partial<BoxesState>): void {
  store.setState(({ boxes }) => ({ boxes: { ...boxes, ...patch } }))
}

/** Puts a suggested station elsewhere; null puts it back where it was suggested. */
export function movePlace(store: PlannerStore, id: string, at: LngLat | null): void {
  const { [id]: _, ...others } = store.getState().boxes.moved
  changeBoxes(store, { moved: at === null ? others : { ...others, [id]: keptPosition(at) } })
}

/** Takes a suggested station, or leaves it. */
export function takePlace(store: PlannerStore, id: string, isTaken: boolean): void {
  const left = store.getState().boxes.left.filter(each => each !== id)
  changeBoxes(store, { left: isTaken ? left : [...left, id] })
}

export function choosePlace(store: PlannerStore, id: string | null): void {
  if (store.getState().boxes.chosen !== id) changeBoxes(store, { chosen: id })
}

/** Forgets the answer; the question stays. */
export function discardSuggestion(store: PlannerStore): void {
  store.setState(({ results, boxes }) => ({
    results: {
      ...results,
      suggestion: { status: 'idle' },
      stock: { status: 'idle' },
      trial: { status: 'idle' },
      curve: { status: 'idle' },
    },
    boxes: { ...boxes, ...untouched },
  }))
}

/** Puts the suggested stations that are taken into the plan, as one step of undo. */
export function acceptPlaces(store: PlannerStore): void {
  const state = store.getState()
  const answer = answerNow(state)
  if (answer === null) return
  const taken = takenStations(answer, state.boxes)
  edit(store, acceptance(answer, taken))
  discardSuggestion(store)
  const fresh = taken.filter(station => station.new).length
  const reused = taken.filter(station => station.reused).length
  const moved = taken.length - fresh - reused
  const parts = [
    fresh > 0 ? `${fresh} ${fresh === 1 ? 'station' : 'stations'} added` : '',
    reused > 0 ? `${reused} taken into use` : '',
    moved > 0 ? `${moved} moved` : '',
    answer.suggestion.dropped.length > 0 ? `${answer.suggestion.dropped.length} taken out of use` : '',
  ]
  notify(store, `${parts.filter(Boolean).join(', ')}. One press of Undo takes all of it back.`)
}

/** Stocks the stations as worked out, as one step of undo. */
export function acceptCocoons(store: PlannerStore): void {
  const answer = stockNow(store.getState())
  if (answer === null) return
  const { result } = answer
  edit(store, acceptStock(result))
  discardSuggestion(store)
  notify(store, `The cocoons of ${result.stations.length} stations are set. One press of Undo takes all of it back.`)
}

/** The answer on the screen, if it answers the plan as it is now. */
export function answerNow(state: PlannerState): Suggested | null {
  return freshOf(state.results.suggestion, state)
}

/** The stock on the screen, if it answers the plan as it is now. */
export function stockNow(state: PlannerState): Stocked | null {
  return freshOf(state.results.stock, state)
}

function freshOf<T extends Pick<Suggested, 'plan' | 'year'>>(job: Job<T>, { document, view }: PlannerState): T | null {
  const answer = job.status === 'ready' ? job.value : job.status === 'idle' ? null : job.last
  return answer !== null && isAnswerTo(answer, document.plan, view.year) ? answer : null
}

/** Stations of an answer that are taken, each where it is now. */
export function takenStations(
  { suggestion }: Suggested,
  { moved, left }: Pick<BoxesState, 'moved' | 'left'>,
): readonly SuggestedStation[] {
  return suggestion.stations
    .filter(({ id }) => !left.includes(id))
    .map(station => ({ ...station, at: moved[station.id] ?? station.at }))
}

/** The plan with the taken stations in it. */
export function planWith(answer: Suggested, boxes: Pick<BoxesState, 'moved' | 'left'>): Plan {
  return acceptance(answer, takenStations(answer, boxes)).apply(answer.plan)
}

/** The plan with its stations stocked as worked out. */
export function planStocked({ plan, result }: Stocked): Plan {
  return acceptStock(result).apply(plan)
}

function acceptance({ plan, year, suggestion }: Suggested, taken: readonly SuggestedStation[]): Edit {
  const { dropped } = suggestion
  const accepted = acceptSuggestion(plan, { year, stations: taken, dropped })
  const names = placeNames(plan, suggestion.stations)
  const named = taken
    .filter(station => station.new)
    .map(({ id }) => setProperties(id, { name: names.get(id)?.name ?? id }))
  return compose(accepted.label, [accepted, ...named])
}

/** Name and number of every suggested station: those that move keep theirs, new ones count on from what stands. */
export function placeNames(
  plan: Plan,
  stations: readonly SuggestedStation[],
): ReadonlyMap<string, { readonly name: string; readonly number: number }> {
  const standing = plan.features.filter(isStation)
  const numbers = standing.map((station, i) => Number(/(\d{1,3})$/.exec(station.properties.name ?? '')?.[1] ?? i + 1))
  let next = Math.max(standing.length, 0, ...numbers)
  return new Map(
    stations.map(({ id, new: isNew }) => {
      const at = standing.findIndex(station => station.id === id)
      if (!isNew && at >= 0) {
        const name = standing[at]!.properties.name || 'Unnamed nest station'
        return [id, { name, number: numbers[at]! }]
      }
      next += 1
      return [id, { name: `Nest station ${next}`, number: next }]
    }),
  )
}

/** As many decimals as a plan file keeps: what is tried is what is accepted. */
function keptPosition([lng, lat]: LngLat): LngLat {
  return [Number(lng.toFixed(9)), Number(lat.toFixed(9))]
}
