import type { Feature, Geometry } from '#geo/plan/plan'
import { turned } from '#geo/space/lines'
import { polygonFault } from '#geo/space/ring'
import { mapPositions } from './positions'
import { blockGhost } from './row-ghost'
import {
  activeOf,
  activeTurn,
  degreesOf,
  type Hold,
  heldFeatures,
  onlySelected,
  type SelectState,
  shifted,
  shiftOf,
} from './select-state'
import type { Ghost, HandleMark, ToolContext } from './tool'
import { type Turning, turningOf } from './turn-grip'
import { type Vertex, vertexOf, visibleHandles, withVertex } from './vertices'

const nothing: Ghost = { shapes: [], handles: [], hidden: [], measure: null, pointer: null }

/** What is being pulled, or else the corners of the one selected thing. */
export function selectGhost(state: SelectState, context: ToolContext): Ghost | null {
  const { hold } = state
  if (hold) {
    const ghost = holdGhost(hold, context)
    if (ghost) return ghost
  }
  const feature = onlySelected(context)
  if (feature === null) return null
  const turning = turningOf(feature, context)
  const handles = [
    ...marks(feature.geometry, activeOf(state, context)?.vertex ?? null, context),
    ...(turning ? [turnMark(turning, activeTurn(state, context) !== null)] : []),
  ]
  return handles.length > 0 ? { ...nothing, handles } : null
}

function holdGhost(hold: Hold, context: ToolContext): Ghost | null {
  const features = heldFeatures(hold, context)
  if (features === null) return null
  switch (hold.type) {
    case 'move': {
      if (hold.to === null) return null
      const by = shiftOf(hold)
      const shapes = features.map(({ geometry, properties: { kind, name } }) => ({
        kind,
        geometry: shifted(geometry, by),
        ...(name ? { name } : {}),
      }))
      return { ...nothing, shapes, hidden: features.map(({ id }) => id), pointer: hold.to }
    }
    case 'corner': {
      const [feature] = features
      if (feature === undefined || hold.at === null) return null
      const { kind, name } = feature.properties
      const geometry = withVertex(feature.geometry, hold.handle, hold.at)
      const corners = marks(geometry, vertexOf(hold.handle), context)
      return {
        shapes: [{ kind, geometry, ...(name ? { name } : {}) }, ...rowsOf(feature, geometry, context)],
        handles: hold.snap ? [...corners, { at: hold.snap.at, role: 'snap' }] : corners,
        ...(hold.snap ? { cue: hold.snap } : {}),
        hidden: [feature.id],
        measure: { kind, geometry, feature },
        pointer: hold.at,
      }
    }
    case 'turn': {
      const [feature] = features
      return feature && hold.to ? turnGhost(feature, hold, context) : null
    }
    case 'box':
      return hold.to ? { ...nothing, box: [hold.from, hold.to] } : null
    default:
      return hold satisfies never
  }
}

/** The thing as it will be, turned in the plane of the plan as it is now. */
function turnGhost(feature: Feature, hold: Extract<Hold, { type: 'turn' }>, context: ToolContext): Ghost | null {
  const before = turningOf(feature, context)
  if (before === null) return null
  const { plane } = context
  const degrees = degreesOf(hold, before, plane)
  const geometry = mapPositions(feature.geometry, at =>
    plane.toLngLat(turned(plane.toMetres(at), before.middle, degrees)),
  )
  const along = (((before.along + degrees) % 360) + 360) % 360
  const { kind, name } = feature.properties
  const now = { ...feature, geometry, properties: { ...feature.properties, bearing: along } } as Feature
  const after = turningOf(kind === 'block' ? now : ({ ...feature, geometry } as Feature), context)
  const shown = Math.round((kind === 'block' ? along % 180 : along) * 10) / 10
  return {
    ...nothing,
    shapes: [{ kind, geometry, ...(name ? { name } : {}) }, ...rowsOf(now, geometry, context)],
    handles: after ? [turnMark(after, true)] : [],
    hidden: [feature.id],
    pointer: hold.to,
    says: `bearing ${shown}°, turned ${degrees < 0 ? 'left' : 'right'} by ${Math.abs(degrees)}°`,
  }
}

function turnMark({ at, edge }: Turning, isActive: boolean): HandleMark {
  return { at, role: 'turn', stem: edge, isActive }
}

/** A block's rows follow while its corner is pulled. */
export function rowsOf(
  { properties }: Feature,
  geometry: Geometry,
  { plane, spacingOf }: ToolContext,
): Ghost['shapes'] {
  if (properties.kind !== 'block' || geometry.type !== 'Polygon') return []
  if (polygonFault(geometry.coordinates) !== null) return []
  const { spacing = spacingOf(properties.crop)?.spacing, rowSpacing = spacingOf(properties.crop)?.rowSpacing } =
    properties
  return spacing && rowSpacing
    ? blockGhost(geometry, plane, { spacing, rowSpacing, bearing: properties.bearing ?? 0 })
    : []
}

function marks(geometry: Geometry, active: Vertex | null, context: ToolContext): readonly HandleMark[] {
  return visibleHandles(geometry, context).map(({ at, part, index, isMidpoint }) => {
    const isActive = active !== null && !isMidpoint && part === active.part && index === active.index
    return { at, role: isActive ? 'active' : isMidpoint ? 'midpoint' : 'vertex' }
  })
}
