import type { Geometry } from '#geo/plan/plan'
import { type PolygonFault, polygonFault } from '#geo/space/ring'
import { type Draft, emptyDraft, stepDraft, withPointer } from './draft'
import { draftHandles } from './draw-line'
import { newFeature } from './new-feature'
import { closedRing } from './positions'
import type { Tool } from './tool'

export type RingKind = 'block' | 'bed' | 'forage' | 'keepout' | 'boundary'

const minimum = 3

/** Draws an outline corner by corner. One that bounds no area is not taken; its corners stay to be put right. */
export function drawRing(kind: RingKind): Tool<Draft> {
  return {
    start: emptyDraft,
    step(state, event, context) {
      const { draft, isFinished, isLeft } = stepDraft(state, event, context, { minimum, closes: true })
      if (isLeft) return { state: draft, isLeft }
      if (!isFinished) return { state: draft }
      const coordinates = [closedRing(draft.points, context.plane)]
      const fault = polygonFault(coordinates)
      if (fault) return { state: draft, notice: `${faultWords[fault.fault]} Take off the last corner and go on.` }
      const { id, edit } = newFeature(kind, { type: 'Polygon', coordinates }, context)
      return { state: { ...emptyDraft, pointer: draft.pointer }, edit, selection: [id], isDone: true }
    },
    ghost(draft, context) {
      const points = withPointer(draft)
      const geometry = underWay(points, context.plane)
      const canClose = draft.points.length >= minimum
      return {
        shapes: geometry ? [{ kind, geometry }] : [],
        handles: draftHandles(draft, canClose ? 'first' : 'vertex'),
        hidden: [],
        measure: geometry ? { kind, geometry } : null,
        pointer: draft.pointer ?? draft.points.at(-1) ?? null,
      }
    },
    status: draft => ({
      points: draft.points.length,
      canFinish: draft.points.length >= minimum,
      hasVertex: false,
    }),
  }
}

/** Why an outline cannot be taken. */
export const faultWords: Readonly<Record<PolygonFault, string>> = {
  short: 'An outline needs three different corners.',
  open: 'The outline is not closed.',
  long: 'The outline has too many corners.',
  crossing: 'The outline crosses itself.',
  flat: 'The corners lie on one line and enclose nothing.',
  outside: 'The hole would lie outside the outline.',
  overlap: 'Two holes would lie over each other.',
}

/** A line from two points on, an outline from three on. */
function underWay(points: ReturnType<typeof withPointer>, plane: Parameters<typeof closedRing>[1]): Geometry | null {
  if (points.length < 2) return null
  if (points.length === 2) return { type: 'LineString', coordinates: points }
  return { type: 'Polygon', coordinates: [closedRing(points, plane)] }
}
