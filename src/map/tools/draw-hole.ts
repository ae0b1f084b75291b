import { compose } from '#geo/plan/edits'
import { setGeometry } from '#geo/plan/edits-features'
import { thing } from '#geo/plan/edits-wording'
import type { Feature, PolygonGeometry } from '#geo/plan/plan'
import { polygonFault } from '#geo/space/ring'
import { type Draft, draftStatus, emptyDraft, stepDraft, withPointer } from './draft'
import { draftHandles } from './draw-line'
import { faultWords } from './draw-ring'
import { closedRing } from './positions'
import { rowsOf } from './select-ghost'
import { onlySelected } from './select-state'
import type { Tool, ToolContext } from './tool'

const minimum = 3

/** Cuts a hole into the one selected outline: a pond, a shed, a turning place. Its rows end there. */
export const drawHole: Tool<Draft> = {
  start: emptyDraft,
  step(state, event, context) {
    const target = targetOf(context)
    if (target === null)
      return { state: emptyDraft, isLeft: true, notice: 'Select the ground to cut a hole into first.' }
    const { draft, isFinished, isLeft } = stepDraft(state, event, context, { minimum, closes: true })
    if (isLeft) return { state: draft, isLeft }
    if (!isFinished) return { state: draft }
    const geometry = withHole(target.geometry, draft.points, context)
    const fault = polygonFault(geometry.coordinates)
    if (fault) return { state: draft, notice: `${faultWords[fault.fault]} Take off the last corner and go on.` }
    const edit = compose(`Cut a hole into ${thing(target.feature)}`, [setGeometry(target.feature.id, geometry)])
    return { state: { ...emptyDraft, pointer: draft.pointer }, edit, isDone: true }
  },
  ghost(draft, context) {
    const target = targetOf(context)
    if (target === null) return null
    const points = withPointer(draft)
    const { feature } = target
    const geometry = points.length < minimum ? null : withHole(target.geometry, points, context)
    const { kind } = feature.properties
    const line = points.length === 2 ? [{ kind, geometry: { type: 'LineString' as const, coordinates: points } }] : []
    return {
      shapes: geometry ? [{ kind, geometry }, ...rowsOf(feature, geometry, context)] : line,
      handles: draftHandles(draft, draft.points.length >= minimum ? 'first' : 'vertex'),
      hidden: geometry ? [feature.id] : [],
      measure: geometry ? { kind, geometry, feature } : null,
      pointer: draft.pointer ?? draft.points.at(-1) ?? null,
      ...(draft.snap ? { cue: draft.snap } : {}),
    }
  },
  status: (draft, context) => draftStatus(draft, minimum, context),
}

function targetOf(context: ToolContext): { readonly feature: Feature; readonly geometry: PolygonGeometry } | null {
  const feature = onlySelected(context)
  return feature?.geometry.type === 'Polygon' ? { feature, geometry: feature.geometry } : null
}

function withHole({ coordinates }: PolygonGeometry, points: Draft['points'], { plane }: ToolContext): PolygonGeometry {
  return { type: 'Polygon', coordinates: [...coordinates, closedRing(points, plane, true)] }
}
