import { beside, cut, turned } from '../space/lines'
import { type LngLat, type Metres, type Plane, planeOf } from '../space/plane'
import { blockRows, rowPoints } from '../space/sample'
import { centroid, lineLength } from '../space/shape'
import { compose, type Edit } from './edits'
import { addFeatures, removeFeatures, setGeometry, setProperties } from './edits-features'
import { withCopiedReferences } from './edits-seasons'
import { thingById } from './edits-wording'
import type { Block, Geometry, Plan, Plant, Row } from './plan'
import { joined, type Piece, pieceOf, plantsOf, type RowLine, roomy, stepOf } from './row-pieces'

/** Metres between plants and between rows that count where a row has none of its own. */
export type Spacings = { readonly spacing: number; readonly rowSpacing: number }

/** Copies of a row to one side of it, `apart` metres from row to row. `ids` and `names` stand in the order of the copies. */
export function repeatRow(
  id: string,
  options: {
    readonly ids: readonly string[]
    readonly names: readonly string[]
    readonly apart: number
    readonly side: 'left' | 'right'
    readonly usual: Spacings
  },
): Edit {
  const { ids, names, apart, side, usual } = options
  return {
    label: plan => `Repeat ${thingById(plan, id)}`,
    apply(plan) {
      const plane = planeOf(plan.features)
      const row = rowOf(plan, id)
      const line = roomy(rowLine(row, usual, plane))
      const copies = ids.map((copyId, i): Row => {
        const away = (i + 1) * apart * (side === 'right' ? 1 : -1)
        const geometry = lineOf(beside(line, away), plane)
        return { ...row, id: copyId, geometry, properties: { ...row.properties, ...named(names[i]) } }
      })
      return withReferences(addFeatures(copies).apply(plan), id, ids)
    },
  }
}

/** A row in two, the second beginning with plant number `plant` (counted from 1); every plant stays where it is. */
export function splitRow(id: string, plant: number, newId: string, usual: Spacings): Edit {
  return withoutPlants(plan => `Split ${thingById(plan, id)}`, { id, first: plant, count: 0, newId, usual })
}

/** A row without plants `first` to `first + count - 1` (from 1): in two parts, or shorter where they stood at an end. */
export function gapInRow(id: string, gap: { first: number; count: number }, newId: string, usual: Spacings): Edit {
  return withoutPlants(plan => `Leave a gap in ${thingById(plan, id)}`, { id, ...gap, newId, usual })
}

function withoutPlants(
  label: Edit['label'],
  gap: { id: string; first: number; count: number; newId: string; usual: Spacings },
): Edit {
  const { id, first, count, newId, usual } = gap
  return {
    label,
    apply(plan) {
      const plane = planeOf(plan.features)
      const row = rowOf(plan, id)
      const whole = rowLine(row, usual, plane)
      const all = plantsOf(whole)
      const parts: Piece[] = []
      if (first > 1) parts.push(pieceOf(whole, 0, Math.min(first - 2, all - 1), { isToNext: count === 0 }))
      if (first + count <= all) parts.push(pieceOf(whole, first + count - 1, all - 1))
      return withPieces(plan, row, parts, [newId], plane)
    },
  }
}

/** The row becomes its first piece; the others are new rows with its figures and its own bloom. */
function withPieces(plan: Plan, row: Row, pieces: readonly Piece[], ids: readonly string[], plane: Plane): Plan {
  const [first, ...more] = pieces
  if (first === undefined) throw new RangeError(`${row.id} would have no plants left`)
  const others = more.map(({ line, count }, i): Row => {
    const { count: _, ...kept } = row.properties
    const name = row.properties.name && `${row.properties.name} part ${i + 2}`
    const properties = { ...kept, ...named(name), ...(count === undefined ? {} : { count }) }
    return { ...row, id: ids[i]!, geometry: lineOf(line, plane), properties }
  })
  const changed = compose('', [
    setGeometry(row.id, lineOf(first.line, plane)),
    setProperties(row.id, { count: first.count }),
    addFeatures(others),
  ]).apply(plan)
  return withReferences(changed, row.id, ids.slice(0, others.length))
}

/** Two rows as one that keeps the first one's figures; the ground between them is planted too. */
export function joinRows(id: string, otherId: string, usual: Spacings): Edit {
  return {
    label: plan => `Join ${thingById(plan, id)} and ${thingById(plan, otherId)}`,
    apply(plan) {
      const plane = planeOf(plan.features)
      const [row, other] = [rowOf(plan, id), rowOf(plan, otherId)]
      const { line, count } = joined(rowLine(row, usual, plane), rowLine(other, usual, plane))
      return compose('', [
        setGeometry(id, lineOf(line, plane)),
        setProperties(id, { count, ...named(wholeName(plan, row, other)) }),
        removeFeatures([otherId]),
      ]).apply(plan)
    },
  }
}

/** The name that two parts of one row share, unless a third part still bears it; else the first one's own. */
function wholeName({ features }: Plan, a: Row, b: Row): string | undefined {
  const [whole, same] = [a, b].map(({ properties }) => properties.name?.replace(/ part \d+$/, ''))
  const isTaken = features.some(each => each !== a && each !== b && each.properties.name === whole)
  return whole === same && !isTaken ? whole : a.properties.name
}

/** So many plants more (below 0: fewer) at the beginning or the end of a row; the others stay where they are. */
export function extendRow(id: string, end: 'start' | 'end', plants: number, usual: Spacings): Edit {
  return {
    label: plan => `${plants < 0 ? 'Shorten' : 'Extend'} ${thingById(plan, id)}`,
    apply(plan) {
      const plane = planeOf(plan.features)
      const row = rowOf(plan, id)
      const whole = rowLine(row, usual, plane)
      const by = plants * stepOf(whole)
      const length = lineLength(whole.line)
      const line = end === 'start' ? cut(whole.line, -by, length) : cut(whole.line, 0, length + by)
      const { count } = row.properties
      return compose('', [
        setGeometry(id, lineOf(roomy({ ...whole, line }), plane)),
        setProperties(id, { count: count === undefined ? undefined : count + plants }),
      ]).apply(plan)
    },
  }
}

/** A row or block turned about its middle, degrees clockwise; a block's rows turn with it. */
export function turnPlanting(id: string, degrees: number, key?: string): Edit {
  return {
    label: plan => `Turn ${thingById(plan, id)}`,
    key,
    apply(plan) {
      const plane = planeOf(plan.features)
      const { geometry, properties } = inRowsOf(plan, id)
      const about = (line: readonly LngLat[], middle: Metres): readonly LngLat[] =>
        line.map(at => plane.toLngLat(turned(plane.toMetres(at), middle, degrees)))
      let changed: Geometry
      if (geometry.type === 'LineString') {
        const line = geometry.coordinates.map(plane.toMetres)
        const [, middle] = cut(line, 0, lineLength(line) / 2).slice(-2)
        changed = { type: 'LineString', coordinates: about(geometry.coordinates, middle!) }
      } else {
        const middle = centroid(geometry.coordinates.map(ring => ring.map(plane.toMetres)))
        changed = { type: 'Polygon', coordinates: geometry.coordinates.map(ring => about(ring, middle)) }
      }
      const turnedPlan = setGeometry(id, changed, undefined, { isRigid: true }).apply(plan)
      if (properties.kind !== 'block') return turnedPlan
      const bearing = ((((properties.bearing ?? 0) + degrees) % 180) + 180) % 180
      return setProperties(id, { bearing: Number(bearing.toFixed(4)) % 180 }).apply(turnedPlan)
    },
  }
}

/** A block's rows as rows of their own, each plant where it is. `idOf` is asked for each row by its number, from 0. */
export function breakIntoRows(id: string, idOf: (i: number) => string, usual: Spacings): Edit {
  return {
    label: plan => `Break ${thingById(plan, id)} into rows`,
    apply(plan) {
      const block = inRowsOf(plan, id)
      if (block.properties.kind !== 'block') throw new RangeError(`${id} is no block`)
      const plane = planeOf(plan.features)
      const { bearing = 0, count: _, kind: __, ...kept } = block.properties
      const { spacing = usual.spacing, rowSpacing = usual.rowSpacing } = kept
      const rings = (block as Block).geometry.coordinates.map(ring => ring.map(plane.toMetres))
      const rows = blockRows(rings, { spacing, rowSpacing, bearing }).map(({ plants }, i): Row => {
        const along = rowLineOf(plants, spacing, bearing)
        const name = kept.name && `${kept.name} row ${i + 1}`
        const properties = { ...kept, kind: 'row' as const, ...named(name) }
        return { type: 'Feature', id: idOf(i), geometry: lineOf(along, plane), properties }
      })
      const with_ = withReferences(
        addFeatures(rows).apply(plan),
        id,
        rows.map(row => row.id),
      )
      return removeFeatures([id]).apply(with_)
    },
  }
}

function rowLineOf(plants: readonly Metres[], spacing: number, bearing: number): readonly Metres[] {
  const [first] = plants
  const last = plants.at(-1)
  if (first === undefined || last === undefined) throw new RangeError('a row without plants')
  const angle = (bearing * Math.PI) / 180
  const end =
    first === last
      ? { x: first.x + (Math.sin(angle) * spacing) / 2, y: first.y + (Math.cos(angle) * spacing) / 2 }
      : last
  return roomy({ line: [first, end], spacing })
}

/**
 * Every so manieth plant of a row as single plants of another cultivar, the first of them plant number `first` (from 1).
 * They stand for as much ground as they did in the row, and the rest of the row is in parts between them.
 */
export function cultivarInRow(
  id: string,
  pattern: { readonly every: number; readonly first: number; readonly cultivar: string },
  idOf: (kind: 'plant' | 'row', i: number) => string,
  usual: Spacings,
): Edit {
  const { every, first, cultivar } = pattern
  return {
    label: plan => `Set ${cultivar} in ${thingById(plan, id)}`,
    apply(plan) {
      const plane = planeOf(plan.features)
      const row = rowOf(plan, id)
      const whole = rowLine(row, usual, plane)
      const all = plantsOf(whole)
      const isOther = (i: number) => i + 1 >= first && (i + 1 - first) % every === 0
      const points = rowPoints(whole.line, { spacing: whole.spacing, count: whole.count })
      const others: LngLat[] = []
      const pieces: Piece[] = []
      let from: number | null = null
      for (let i = 0; i <= all; i += 1) {
        const isEnd = i === all || isOther(i)
        if (isEnd && from !== null) pieces.push(pieceOf(whole, from, i - 1))
        if (isEnd) from = null
        else from ??= i
        if (i < all && isOther(i)) others.push(plane.toLngLat({ x: points[2 * i]!, y: points[2 * i + 1]! }))
      }
      if (others.length === 0 || pieces.length === 0) return plan
      const { spacing: _, rowSpacing: __, count: ___, kind: ____, ...kept } = row.properties
      const rowSpacing = row.properties.rowSpacing ?? usual.rowSpacing
      const spread = 2 * Math.sqrt((stepOf({ ...whole, count: undefined }) * rowSpacing) / Math.PI)
      const plant: Plant = {
        type: 'Feature',
        id: idOf('plant', 0),
        geometry: { type: 'MultiPoint', coordinates: others },
        properties: {
          ...kept,
          kind: 'plant',
          cultivar,
          spread: Number(spread.toPrecision(9)),
          ...named(kept.name && `${kept.name} ${cultivar}`),
        },
      }
      const ids = pieces.slice(1).map((_piece, i) => idOf('row', i))
      const cutUp = withPieces(plan, row, pieces, ids, plane)
      return withReferences(addFeatures([plant]).apply(cutUp), id, [plant.id])
    },
  }
}

function inRowsOf(plan: Plan, id: string): Row | Block {
  const feature = plan.features.find(each => each.id === id)
  const kind = feature?.properties.kind
  if (feature === undefined || (kind !== 'row' && kind !== 'block')) throw new RangeError(`the plan has no row ${id}`)
  return feature as Row | Block
}

function rowOf(plan: Plan, id: string): Row {
  const feature = inRowsOf(plan, id)
  if (feature.properties.kind !== 'row') throw new RangeError(`${id} is no row`)
  return feature as Row
}

/** A row for its geometry, with the spacing that counts. */
export function rowLine({ geometry, properties }: Row, usual: Spacings, plane: Plane): RowLine {
  const { spacing = usual.spacing, count } = properties
  return { line: geometry.coordinates.map(plane.toMetres), spacing, count }
}

function lineOf(line: readonly Metres[], plane: Plane): Row['geometry'] {
  return { type: 'LineString', coordinates: line.map(at => plane.toLngLat(at)) }
}

function named(name: string | undefined): { readonly name?: string } {
  return name ? { name } : {}
}

/** A planting's own bloom goes with each of its parts. */
function withReferences(plan: Plan, id: string, ids: readonly string[]): Plan {
  return ids.reduce((changed, copyId) => withCopiedReferences(changed, new Map([[id, copyId]])), plan)
}
