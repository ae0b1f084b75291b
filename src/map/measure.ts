import type { Feature, FeatureKind, LineGeometry, Plan, PolygonGeometry } from '#geo/plan/plan'
import { type Plane, planeOf } from '#geo/space/plane'
import { blockPoints, plantsInRow } from '#geo/space/sample'
import { lineLength, polygonArea } from '#geo/space/shape'
import { areaText, lengthText } from '../text/units'
import { counted, honest } from '../text/words'
import { cropFor, longestSide } from './tools/new-feature'
import type { Ghost, ToolContext } from './tools/tool'

export type MeasureContext = {
  readonly plan: Plan
  readonly plane: Plane
  readonly spacingOf: ToolContext['spacingOf']
}

type Measure = NonNullable<Ghost['measure']>

/** From this many plants on they are reckoned from the area instead of laid out one by one at every move. */
const mostLaidOut = 3000

/** What is under way in figures, in the plan's units: "92 m, about 37 plants", "0.18 ha, about 96 plants". */
export function measureText(measure: Measure, context: MeasureContext): string {
  const { geometry } = measure
  switch (geometry.type) {
    case 'Point':
      return ''
    case 'MultiPoint':
      return counted(geometry.coordinates.length, 'plant')
    case 'LineString':
      return lineText(measure, geometry, context)
    case 'Polygon':
      return outlineText(measure, geometry, context)
    default:
      return geometry satisfies never
  }
}

function lineText({ kind, feature }: Measure, line: LineGeometry, context: MeasureContext): string {
  const plane = planeNear(line, context)
  const length = lineLength(line.coordinates.map(at => plane.toMetres(at)))
  const text = lengthText(length, context.plan.units)
  if (kind !== 'row') return text
  const figures = figuresOf(kind, feature, context)
  if (figures === null) return text
  return `${text}, ${plants(figures.count ?? plantsInRow(length, figures.spacing))}`
}

function outlineText({ kind, feature }: Measure, outline: PolygonGeometry, context: MeasureContext): string {
  const plane = planeNear(outline, context)
  const rings = outline.coordinates.map(ring => ring.map(at => plane.toMetres(at)))
  const area = polygonArea(rings)
  const text = areaText(area, context.plan.units)
  if (kind !== 'block') return text
  const figures = figuresOf(kind, feature, context)
  if (figures === null) return text
  const { spacing, rowSpacing, count } = figures
  const reckoned = area / (spacing * rowSpacing)
  if (count !== undefined || reckoned > mostLaidOut) return `${text}, ${plants(count ?? reckoned)}`
  // A block under way gets the direction of its longest side; one without a direction runs north.
  const bearing = feature ? bearingOf(feature) : longestSide(outline.coordinates[0] ?? [], plane)
  return `${text}, ${plants(blockPoints(rings, { spacing, rowSpacing, bearing }).length / 2)}`
}

function plants(count: number): string {
  if (Math.round(count) === 0) return 'no plants'
  return `about ${honest(count)} ${Math.round(count) === 1 ? 'plant' : 'plants'}`
}

type Figures = { readonly spacing: number; readonly rowSpacing: number; readonly count: number | undefined }

/** The thing's own figures, or its crop's; null where the crop has none. */
function figuresOf(kind: FeatureKind, feature: Feature | undefined, context: MeasureContext): Figures | null {
  const own = (feature?.properties ?? {}) as Partial<Figures> & { readonly crop?: string }
  const usual = context.spacingOf(own.crop ?? cropFor(context.plan, kind))
  const spacing = own.spacing ?? usual?.spacing
  const rowSpacing = own.rowSpacing ?? usual?.rowSpacing
  return spacing && rowSpacing ? { spacing, rowSpacing, count: own.count } : null
}

function bearingOf({ properties }: Feature): number {
  return properties.kind === 'block' ? (properties.bearing ?? 0) : 0
}

/** The plane of a plan with nothing on it yet may lie anywhere. */
function planeNear(geometry: LineGeometry | PolygonGeometry, { plan, plane }: MeasureContext): Plane {
  return plan.features.length > 0 ? plane : planeOf([{ geometry }])
}
