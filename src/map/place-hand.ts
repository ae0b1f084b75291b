import type { LngLat } from '#geo/space/plane'
import { answerNow, choosePlace, movePlace, takenStations } from '../state/boxes-actions'
import { planeOfPlan } from '../state/selectors'
import type { PlannerStore } from '../state/store'
import { stationHalf } from './tools/hit'
import { type Pixel, type PointerKind, pixelDistance, type ToolEvent, tolerance } from './tools/tool'

/** Takes hold of suggested stations, which are no part of the plan; null where an event is not for one. */
export type PlaceHand = { handle(event: ToolEvent): { readonly isCaptured: boolean } | null }

type Held = { readonly id: string; readonly from: LngLat; readonly start: LngLat; readonly before: LngLat | null }

export function createPlaceHand(store: PlannerStore, toPixel: (at: LngLat) => Pixel): PlaceHand {
  let held: Held | null = null

  const stationAt = (pixel: Pixel, pointer: PointerKind) => {
    const { boxes, view } = store.getState()
    const answer = view.page === 'boxes' ? answerNow(store.getState()) : null
    if (answer === null) return null
    const reach = Math.max(stationHalf, tolerance(pointer))
    const away = ({ at }: { readonly at: LngLat }) => pixelDistance(toPixel(at), pixel)
    // Where marks lie over one another, the nearest.
    const within = takenStations(answer, boxes).filter(station => away(station) <= reach)
    return within.toSorted((a, b) => away(a) - away(b))[0] ?? null
  }

  const follow = (at: LngLat): void => {
    if (held === null) return
    const { id, from, start } = held
    movePlace(store, id, [start[0] + at[0] - from[0], start[1] + at[1] - from[1]])
  }

  const putBack = (): void => {
    if (held !== null) movePlace(store, held.id, held.before)
    held = null
  }

  return {
    handle(event) {
      switch (event.type) {
        case 'press': {
          const station = stationAt(event.pixel, event.pointer)
          if (station === null) return null
          const before = store.getState().boxes.moved[station.id] ?? null
          held = { id: station.id, from: event.at, start: station.at, before }
          return { isCaptured: true }
        }
        case 'drag':
        case 'release': {
          if (held === null) return null
          choosePlace(store, held.id)
          follow(event.at)
          if (event.type === 'release') held = null
          return { isCaptured: true }
        }
        case 'tap': {
          held = null
          const station = stationAt(event.pixel, event.pointer)
          choosePlace(store, station?.id ?? null)
          return station === null ? null : { isCaptured: false }
        }
        case 'lost':
          if (held === null) return null
          putBack()
          return { isCaptured: false }
        case 'cancel': {
          if (held !== null) putBack()
          else if (chosenPlace(store) === null) return null
          else choosePlace(store, null)
          return { isCaptured: false }
        }
        case 'nudge':
          return nudge(store, event.by) ? { isCaptured: false } : null
        default:
          return null
      }
    },
  }
}

/** The suggested station that keys move: the chosen one, while its page is open and nothing of the plan is selected. */
export function chosenPlace(store: PlannerStore): string | null {
  const { view, boxes } = store.getState()
  if (view.page !== 'boxes' || view.tool !== 'select' || view.selection.length > 0) return null
  return answerNow(store.getState()) === null ? null : boxes.chosen
}

function nudge(store: PlannerStore, by: { readonly x: number; readonly y: number }): boolean {
  const id = chosenPlace(store)
  const answer = answerNow(store.getState())
  const station = answer && takenStations(answer, store.getState().boxes).find(each => each.id === id)
  if (id === null || !answer || !station) return false
  const plane = planeOfPlan(answer.plan)
  const { x, y } = plane.toMetres(station.at)
  movePlace(store, id, plane.toLngLat({ x: x + by.x, y: y + by.y }))
  return true
}
