import { placePicture } from '#geo/plan/edits-pictures'
import { cornersOf, isPlaced, placingOf } from '#geo/plan/pictures'
import type { Picture } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { distance } from '#geo/space/shape'
import { edit, setView } from '../state/actions'
import type { PlannerState, PlannerStore } from '../state/store'
import { lengthText } from '../text/units'
import { hitAt } from './tools/hit'
import { gripAt, gripsOf, headingOf, moveWords, nudged, type PictureGrip, pulled, widthOf } from './tools/picture-grips'
import { type Ghost, type ToolContext, type ToolEvent, tolerance } from './tools/tool'

/** Takes hold of the picture that is being placed; null where an event is not for it. */
export type PictureHand = {
  handle(event: ToolEvent, context: ToolContext): { readonly isCaptured: boolean } | null
  /** Its corners and its turning grip, and the picture itself where it is being pulled; null while none is placed. */
  ghost(context: ToolContext): Ghost | null
  /** What arrow keys do with it; null while none is placed. */
  active(): PictureGrip['type'] | null
}

/** The picture that hand and keys move: unlocked, shown, being placed, and nothing of the plan selected. */
export function chosenPicture({ document, view }: PlannerState): Picture | null {
  if (view.picture === null || view.tool !== 'select' || view.selection.length > 0) return null
  const picture = document.plan?.pictures?.find(({ id }) => id === view.picture)
  if (picture === undefined || picture.isLocked || picture.isHidden || !isPlaced(picture)) return null
  return picture
}

type Held = { readonly grip: PictureGrip; readonly from: LngLat; readonly to: LngLat | null }

const order = ['move', 'turn', 'size'] as const

export function createPictureHand(store: PlannerStore): PictureHand {
  let held: Held | null = null
  let active: { readonly id: string; readonly grip: PictureGrip['type'] } | null = null

  const activeOf = (picture: Picture) => (active?.id === picture.id ? active.grip : 'move')

  const underWay = (picture: Picture, { plane }: ToolContext) => {
    const placing = placingOf(picture, plane)
    if (placing === null || held === null || held.to === null) return null
    return pulled(picture, placing, held.grip, plane.toMetres(held.from), plane.toMetres(held.to))
  }

  /** A press on a mark, a line or on what is selected is meant for that: pictures lie under everything. */
  const isOnThing = ({ pixel, pointer }: Extract<ToolEvent, { type: 'press' }>, context: ToolContext): boolean => {
    const hit = hitAt(pixel, context, tolerance(pointer))
    return hit !== null && hit.geometry.type !== 'Polygon'
  }

  const step = (picture: Picture, event: ToolEvent, context: ToolContext): { isCaptured: boolean } | null => {
    switch (event.type) {
      case 'press': {
        const grip = gripAt(picture, event.at, event.pixel, context, tolerance(event.pointer))
        if (grip === null || (grip.type === 'move' && isOnThing(event, context))) return null
        held = { grip, from: event.at, to: null }
        return { isCaptured: true }
      }
      case 'drag':
        if (held === null) return null
        held = { ...held, to: event.at }
        return { isCaptured: true }
      case 'release': {
        if (held === null) return null
        held = { ...held, to: event.at }
        const placing = underWay(picture, context)
        const move = moveWords[held.grip.type]
        held = null
        if (placing !== null) edit(store, placePicture(picture.id, cornersOf(placing, picture, context.plane), move))
        return { isCaptured: true }
      }
      case 'tap': {
        const grip = held?.grip.type ?? null
        held = null
        if (grip === null) return null
        active = { id: picture.id, grip }
        // Things over the picture can still be chosen by a tap.
        return grip === 'move' ? null : { isCaptured: false }
      }
      case 'nudge': {
        const placing = placingOf(picture, context.plane)
        const grip = activeOf(picture)
        if (placing === null) return null
        const to = cornersOf(nudged(picture, placing, grip, event.by), picture, context.plane)
        edit(store, placePicture(picture.id, to, moveWords[grip], `${event.key} ${grip}`))
        return { isCaptured: false }
      }
      case 'finish': {
        const now = order.indexOf(activeOf(picture))
        const next = (now + (event.keys?.shift ? order.length - 1 : 1)) % order.length
        active = { id: picture.id, grip: order[next]! }
        return { isCaptured: false }
      }
      case 'cancel':
        if (held !== null) held = null
        else if (activeOf(picture) !== 'move') active = null
        else setView(store, { picture: null })
        return { isCaptured: false }
      case 'lost':
        if (held === null) return null
        held = null
        return { isCaptured: false }
      case 'hover':
      case 'back':
      case 'remove':
      case 'type':
      case 'put':
        return null
      default:
        return event satisfies never
    }
  }

  return {
    handle(event, context) {
      const picture = chosenPicture(store.getState())
      if (picture !== null) return step(picture, event, context)
      held = null
      return null
    },
    ghost(context) {
      const chosen = chosenPicture(store.getState())
      if (chosen === null) return null
      const placing = underWay(chosen, context)
      const picture = placing ? { ...chosen, corners: cornersOf(placing, chosen, context.plane) } : chosen
      const grips = gripsOf(picture, context)
      if (grips === null) return null
      const corners = grips.corners.map(({ at }) => at)
      const grip = held?.grip.type ?? activeOf(chosen)
      return {
        shapes: [],
        handles: [
          ...corners.map(at => ({ at, role: grip === 'size' ? ('active' as const) : ('vertex' as const) })),
          { at: grips.turn, role: 'turn', stem: grips.top, isActive: grip === 'turn' },
        ],
        frame: [...corners, corners[0]!],
        hidden: [],
        measure: null,
        pointer: held?.to ?? null,
        ...(placing ? { picture, says: saysOf(chosen, placing, context) } : {}),
      }
    },
    active: () => {
      const picture = chosenPicture(store.getState())
      return picture && activeOf(picture)
    },
  }

  function saysOf(before: Picture, placing: NonNullable<ReturnType<typeof placingOf>>, context: ToolContext): string {
    const { units } = context.plan
    switch (held?.grip.type) {
      case 'turn':
        return `its top towards ${(Math.round(headingOf(placing) * 10) / 10) % 360}°`
      case 'size':
        return `${lengthText(widthOf(before, placing), units)} wide`
      default: {
        const from = held && context.plane.toMetres(held.from)
        const to = held?.to && context.plane.toMetres(held.to)
        return from && to ? `moved by ${lengthText(distance(from, to), units)}` : ''
      }
    }
  }
}
