import type { SuggestedStation } from '#geo/siting/suggestion'
import type { LngLat } from '#geo/space/plane'
import type { Suggested } from '../../state/boxes'
import { answerNow, placeNames } from '../../state/boxes-actions'
import { featureById } from '../../state/selectors'
import type { PlannerState } from '../../state/store'
import { stationHalf } from '../tools/hit'
import type { Frame } from './canvas-layer'
import { paintStation } from './marks'

/** Half a suggested station's mark at least, pixels: its number is what the list goes by. */
const leastHalf = 12
/** Half a mark's side where it would cover another's number: it goes without its own until there is room. */
const crowdedHalf = 6

/** Suggested stations: dashed, numbered as they would be called, with an arrow from where one stands to where it goes. */
export function paintSuggested(frame: Frame, state: PlannerState, half: number): void {
  const { boxes } = state
  const answer = shownAnswer(state)
  if (answer === null) return
  const { plan, suggestion } = answer
  const names = placeNames(plan, suggestion.stations)
  for (const station of suggestion.stations) {
    const at = boxes.moved[station.id] ?? station.at
    const standing = station.new ? undefined : featureById(plan, station.id)
    if (standing?.geometry.type === 'Point') paintArrow(frame, standing.geometry.coordinates, at)
    else if (boxes.moved[station.id] !== undefined) paintArrow(frame, station.at, at)
  }
  const placeOf = ({ id, at }: SuggestedStation) => boxes.moved[id] ?? at
  // The one that is looked at has its number before others.
  const byRank = suggestion.stations.toSorted((a, b) => Number(b.id === boxes.chosen) - Number(a.id === boxes.chosen))
  const numberedHalf = Math.max(half, leastHalf)
  const isNumbered = clearOfEarlier(
    byRank.map(station => frame.toCanvas(placeOf(station))),
    2 * numberedHalf,
  )
  const paint = (station: SuggestedStation, ownHalf: number): void => {
    frame.context.globalAlpha = boxes.left.includes(station.id) ? 0.4 : 1
    paintStation(frame, placeOf(station), {
      number: names.get(station.id)?.number ?? 0,
      isStocked: false,
      isSelected: boxes.chosen === station.id,
      isSuggested: true,
      reach: null,
      half: ownHalf,
    })
    frame.context.globalAlpha = 1
  }
  for (const [i, station] of byRank.entries()) if (!isNumbered[i]) paint(station, crowdedHalf)
  for (const [i, station] of byRank.entries()) if (isNumbered[i]) paint(station, numberedHalf)
}

/** Which squares of some side lie clear of all before them that do so too. */
export function clearOfEarlier(
  places: readonly { readonly x: number; readonly y: number }[],
  side: number,
): readonly boolean[] {
  const clear: { readonly x: number; readonly y: number }[] = []
  return places.map(place => {
    const isClear = !clear.some(({ x, y }) => Math.abs(x - place.x) < side && Math.abs(y - place.y) < side)
    if (isClear) clear.push(place)
    return isClear
  })
}

/** The answer, while its page is open. */
function shownAnswer(state: PlannerState): Suggested | null {
  return state.view.page === 'boxes' ? answerNow(state) : null
}

/** Where suggested stations are drawn. */
export function suggestedPlaces(state: PlannerState): readonly LngLat[] {
  const { moved } = state.boxes
  return (shownAnswer(state)?.suggestion.stations ?? []).map(({ id, at }) => moved[id] ?? at)
}

/** Stations that the answer on the screen gives up: shown as without bees. */
export function droppedNow(state: PlannerState): readonly string[] {
  return shownAnswer(state)?.suggestion.dropped ?? []
}

/** From one place to another, between the marks that stand there. */
function paintArrow(frame: Frame, from: LngLat, to: LngLat): void {
  const { context, palette } = frame
  const a = frame.toCanvas(from)
  const b = frame.toCanvas(to)
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  const clear = stationHalf + 4
  if (length < 2 * clear) return
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length]
  const tip = { x: b.x - clear * ux, y: b.y - clear * uy }
  const path = (): void => {
    context.beginPath()
    context.moveTo(a.x + clear * ux, a.y + clear * uy)
    context.lineTo(tip.x, tip.y)
    for (const turn of [-1, 1]) {
      context.moveTo(tip.x, tip.y)
      context.lineTo(tip.x - 9 * ux + 5 * turn * uy, tip.y - 9 * uy - 5 * turn * ux)
    }
  }
  context.lineCap = 'round'
  for (const [colour, width] of [
    [palette.paper, 5],
    [palette.ink, 2],
  ] as const) {
    path()
    context.strokeStyle = colour
    context.lineWidth = width
    context.stroke()
  }
}
