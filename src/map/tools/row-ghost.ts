import type { PolygonGeometry } from '#geo/plan/plan'
import type { Plane } from '#geo/space/plane'
import { type BlockOptions, blockRows } from '#geo/space/sample'
import { polygonArea } from '#geo/space/shape'
import type { Ghost } from './tool'

/** More rows, or more plants, are not drawn while a block is under way: laying them out at every move would stall. */
const mostDrawn = 600
const mostPlants = 60_000

/** A block's rows clipped to its outline, as lines from first plant to last. */
export function blockGhost(geometry: PolygonGeometry, plane: Plane, options: BlockOptions): Ghost['shapes'] {
  const rings = geometry.coordinates.map(ring => ring.map(at => plane.toMetres(at)))
  if (polygonArea(rings) / (options.spacing * options.rowSpacing) > mostPlants) return []
  return blockRows(rings, options)
    .slice(0, mostDrawn)
    .flatMap(({ plants }) => {
      const [first] = plants
      const last = plants.at(-1)
      if (first === undefined || last === undefined || first === last) return []
      return [
        {
          kind: 'row' as const,
          geometry: { type: 'LineString' as const, coordinates: [plane.toLngLat(first), plane.toLngLat(last)] },
        },
      ]
    })
}
