import { isPosition } from '../plan/check-ground'
import { type LngLat, planeAt } from '../space/plane'
import { offset } from '../space/shape'
import { cellOf, type Line, numberIn } from './table-line'
import { tableFigures } from './tree-columns'

/** Where a table lies that says its places in metres, or by row and tree number alone. */
export type TableGround = {
  /** Where x and y are those of `zero`; or where row 1, tree 1 stands. */
  readonly origin: LngLat
  /** Along the rows, or along y: degrees clockwise from true north; the next row, or x, lies to the right. */
  readonly bearing: number
  /** Metres from tree to tree and from row to row; needed for numbers only. */
  readonly spacing?: number
  readonly rowSpacing?: number
  readonly zero?: { readonly x: number; readonly y: number }
}

/** Row and tree numbers beyond are slips: they would lie in another county. */
const largestNumber = 10_000
/** Metres beyond which x or y cannot belong to the same plan, m. */
const farthest = 100_000

type Pair = 'start' | 'end'

/** Longitude and latitude of a line; null where there are none, which is told. */
export function degreesOf(line: Line, pair: Pair = 'start'): LngLat | null {
  const [lngFigure, latFigure] =
    pair === 'start' ? (['longitude', 'latitude'] as const) : (['endLongitude', 'endLatitude'] as const)
  const lng = numberIn(line, lngFigure, true)
  const lat = lng === null ? null : numberIn(line, latFigure, true)
  if (lng === null || lat === null) return null
  if (isPosition([lng, lat])) return [lng, lat]
  const found = `longitude ${lng}, latitude ${lat}`
  line.report('warning', 'import-row-position', '', { row: line.row, found, isSwapped: isPosition([lat, lng]) })
  return null
}

/** Places by x and y, metres to the right and along the bearing. */
export function metresOn({ origin, bearing, zero = { x: 0, y: 0 } }: TableGround) {
  const plane = planeAt(origin)
  return (line: Line, pair: Pair = 'start'): LngLat | null => {
    const [xFigure, yFigure] = pair === 'start' ? (['x', 'y'] as const) : (['endX', 'endY'] as const)
    const x = numberIn(line, xFigure, true)
    const y = x === null ? null : numberIn(line, yFigure, true)
    if (x === null || y === null) return null
    const [right, along] = [x - zero.x, y - zero.y]
    if (Math.hypot(right, along) > farthest) {
      const allowed = `within ${farthest / 1000} km of the place that the table is counted from`
      const found = `${cellOf(line, xFigure)}, ${cellOf(line, yFigure)}`
      line.report('warning', 'import-row-figure', '', { row: line.row, label: 'place', found, allowed })
      return null
    }
    return rounded(plane.toLngLat(offset(offset({ x: 0, y: 0 }, bearing, along), bearing + 90, right)))
  }
}

/** Places by row and tree; of a place given twice the first line holds. */
export function numbersOn({ origin, bearing, spacing = 1, rowSpacing = 1 }: TableGround) {
  const plane = planeAt(origin)
  const taken = new Set<string>()
  return (line: Line): LngLat | null => {
    const row = wholeIn(line, 'row')
    const tree = row === null ? null : wholeIn(line, 'tree')
    if (row === null || tree === null) return null
    const key = `${row} ${tree}`
    if (taken.has(key)) {
      line.report('warning', 'import-row-repeated', '', { row: line.row, line: row, tree })
      return null
    }
    taken.add(key)
    const along = offset({ x: 0, y: 0 }, bearing, (tree - 1) * spacing)
    return rounded(plane.toLngLat(offset(along, bearing + 90, (row - 1) * rowSpacing)))
  }
}

/** A row or tree number; null where it is none, which is told. */
function wholeIn(line: Line, figure: 'row' | 'tree'): number | null {
  const value = numberIn(line, figure, true)
  if (value === null || (Number.isInteger(value) && value >= 0 && value <= largestNumber)) return value
  const allowed = `a whole number from 0 to ${largestNumber}`
  line.report('warning', 'import-row-figure', '', {
    row: line.row,
    label: tableFigures[figure],
    found: String(value),
    allowed,
  })
  return null
}

/** So far from a place along a bearing. */
export function placeAlong(from: LngLat, bearing: number, metres: number): LngLat {
  return rounded(planeAt(from).toLngLat(offset({ x: 0, y: 0 }, bearing, metres)))
}

function rounded([lng, lat]: LngLat): LngLat {
  return [Number(lng.toFixed(9)), Number(lat.toFixed(9))]
}
