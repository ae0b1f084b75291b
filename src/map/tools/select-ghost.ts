import type { Feature, Geometry } from '#geo/plan/plan'
import { polygonFault } from '#geo/space/ring'
import { blockGhost } from './row-ghost'
import { activeOf, type Hold, heldFeatures, onlySelected, type SelectState, shifted, shiftOf } from './select-state'
import type { Ghost, HandleMark, ToolContext } from './tool'
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
  const handles = marks(feature.geometry, activeOf(state, context)?.vertex ?? null, context)
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
    case 'box':
      return hold.to ? { ...nothing, box: [hold.from, hold.to] } : null
    default:
      return hold satisfies never
  }
}

/** A block's rows follow while its corner is pulled. */
function rowsOf({ properties }: Feature, geometry: Geometry, { plane, spacingOf }: ToolContext): Ghost['shapes'] {
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
