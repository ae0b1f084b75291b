import { type LngLat, type Metres, planeAt } from '../space/plane'
import { distance } from '../space/shape'
import type { ImportThing } from './import-thing'

/** A tree, and which of its row it is. */
export type TreeInRow = {
  readonly at: LngLat
  readonly row: string
  readonly tree: number
  readonly properties: ImportThing['properties']
}

/** How well trees stand in rows. */
export type RowFit = {
  /** Rows whose trees lie on a line at even spacing. */
  readonly rows: number
  /** Trees in them. */
  readonly trees: number
  /** Trees that are left single. */
  readonly others: number
  /** How far the worst of the rows' trees is from its even place, m. */
  readonly worst: number
}

export type GatheredRows = RowFit & { readonly things: readonly ImportThing[] }

/** A tree farther from its even place was measured wrong or stands out of its row, m: within what a handheld device is off. */
export const mostOff = 1.5
/** A tree farther off than this share of the spacing could as well be the next one. */
const mostOffShare = 0.3
/** Rows whose directions differ by more do not lie beside each other; sine of the angle. */
const aslant = 0.2
/** More rows are not held against each other. */
const mostCompared = 2000
/** A row's last plant keeps its place however positions are rounded, m. */
const room = 0.01
/** Of distances between trees and rows that are sensible, m. */
const [leastStep, mostStep] = [0.1, 50]

type Even = {
  readonly key: string
  readonly trees: readonly TreeInRow[]
  readonly start: Metres
  readonly step: Metres
  readonly worst: number
}

/**
 * Trees with row and tree numbers as rows: those on a line at even spacing, by least squares over the tree numbers. A
 * missing tree, and a change of cultivar or year, end a part of a row; single ones within a row stay single plants of
 * the ground they had in it.
 */
export function gatheredRows(trees: readonly TreeInRow[], knownRowSpacing?: number): GatheredRows {
  const first = trees[0]
  if (first === undefined) return { rows: 0, trees: 0, others: 0, worst: 0, things: [] }
  const plane = planeAt(first.at)
  const toLngLat = (at: Metres): LngLat => {
    const [lng, lat] = plane.toLngLat(at)
    return [Number(lng.toFixed(9)), Number(lat.toFixed(9))]
  }
  const byRow = new Map<string, TreeInRow[]>()
  for (const tree of trees) {
    const row = byRow.get(tree.row)
    if (row === undefined) byRow.set(tree.row, [tree])
    else row.push(tree)
  }
  const even: Even[] = []
  const things: ImportThing[] = []
  let others = 0
  for (const [key, unsorted] of byRow) {
    const row = evenRow(
      key,
      unsorted.toSorted((a, b) => a.tree - b.tree),
      plane.toMetres,
    )
    if (row !== null) even.push(row)
    else {
      others += unsorted.length
      things.push(...unsorted.map(asPlant))
    }
  }
  const rowSpacing = knownRowSpacing ?? usualDistance(even)
  for (const row of even) things.push(...partsOf(row, rowSpacing, toLngLat))
  return {
    rows: even.length,
    trees: trees.length - others,
    others,
    worst: even.reduce((most, { worst }) => Math.max(most, worst), 0),
    things,
  }
}

/** A row through its trees' numbers; null where they do not stand evenly on a line, or a number is given twice. */
function evenRow(key: string, trees: readonly TreeInRow[], toLocal: (at: LngLat) => Metres): Even | null {
  const count = trees.length
  if (count < 2 || trees.some(({ tree }, i) => tree === trees[i - 1]?.tree)) return null
  const places = trees.map(({ at }) => toLocal(at))
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / count
  const [n, x, y] = [mean(trees.map(({ tree }) => tree)), mean(places.map(at => at.x)), mean(places.map(at => at.y))]
  let [nn, nx, ny] = [0, 0, 0]
  for (const [i, { tree }] of trees.entries()) {
    nn += (tree - n) ** 2
    nx += (tree - n) * (places[i]!.x - x)
    ny += (tree - n) * (places[i]!.y - y)
  }
  const step = { x: nx / nn, y: ny / nn }
  const start = { x: x - n * step.x, y: y - n * step.y }
  const spacing = Math.hypot(step.x, step.y)
  if (!(spacing >= leastStep && spacing <= mostStep)) return null
  const worst = Math.max(...chunked(trees.map(({ tree }, i) => distance(places[i]!, placeOf({ start, step }, tree)))))
  return worst > Math.min(mostOff, mostOffShare * spacing) ? null : { key, trees, start, step, worst }
}

/** The largest of each thousand: a call takes only so many values. */
function chunked(values: readonly number[]): readonly number[] {
  const most: number[] = []
  for (let i = 0; i < values.length; i += 1000) most.push(Math.max(...values.slice(i, i + 1000)))
  return most
}

function placeOf({ start, step }: Pick<Even, 'start' | 'step'>, tree: number): Metres {
  return { x: start.x + tree * step.x, y: start.y + tree * step.y }
}

/** From row to row, m: the median distance from a row's middle to the nearest other that it lies beside; undefined where none does. */
function usualDistance(rows: readonly Even[]): number | undefined {
  if (rows.length < 2 || rows.length > mostCompared) return undefined
  const lines = rows.map(row => {
    const [from, to] = [placeOf(row, row.trees[0]!.tree), placeOf(row, row.trees.at(-1)!.tree)]
    const length = distance(from, to)
    return { from, length, unit: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } }
  })
  const nearest = lines.flatMap((line, i) => {
    const middle = {
      x: line.from.x + (line.unit.x * line.length) / 2,
      y: line.from.y + (line.unit.y * line.length) / 2,
    }
    let least = Number.POSITIVE_INFINITY
    for (const [j, other] of lines.entries()) {
      if (i === j || Math.abs(line.unit.x * other.unit.y - line.unit.y * other.unit.x) > aslant) continue
      const [dx, dy] = [middle.x - other.from.x, middle.y - other.from.y]
      const along = dx * other.unit.x + dy * other.unit.y
      if (along < 0 || along > other.length) continue
      const away = Math.abs(dx * other.unit.y - dy * other.unit.x)
      if (away > leastStep) least = Math.min(least, away)
    }
    return least <= mostStep ? [least] : []
  })
  const median = nearest.sort((a, b) => a - b)[Math.floor(nearest.length / 2)]
  return median === undefined ? undefined : Number(median.toFixed(2))
}

/** To the millimetre, where no plant of the row moves by half of what its end has to spare. */
function plainSpacing(spacing: number, count: number): number {
  const plain = Number(spacing.toFixed(3))
  return Math.abs(plain - spacing) * count < room / 2 ? plain : Number(spacing.toPrecision(7))
}

function asPlant({ at, properties }: TreeInRow): ImportThing {
  return { geometry: { type: 'Point', coordinates: at }, properties }
}

/** A row in parts of trees that follow on and are alike, and the single ones between them. */
function partsOf(row: Even, rowSpacing: number | undefined, toLngLat: (at: Metres) => LngLat): readonly ImportThing[] {
  const { key, trees, step } = row
  const alike = ({ properties: { name: _, ...others } }: TreeInRow) => JSON.stringify(others)
  const runs: TreeInRow[][] = []
  for (const tree of trees) {
    const run = runs.at(-1)
    const last = run?.at(-1)
    if (last !== undefined && tree.tree === last.tree + 1 && alike(tree) === alike(last)) run!.push(tree)
    else runs.push([tree])
  }
  const spacing = Math.hypot(step.x, step.y)
  const given = trees[0]!.properties.name
  const isOneName = given !== undefined && trees.every(({ properties }) => properties.name === given)
  const called = isOneName ? String(given) : /^\d+$/.test(key) ? `Row ${key}` : key
  const long = runs.filter(run => run.length > 1)
  const rows = long.map((run, i): ImportThing => {
    const { name: _, spread: __, ...kept } = run[0]!.properties
    const last = placeOf(row, run.at(-1)!.tree)
    const beyond = room / spacing
    const to = { x: last.x + step.x * beyond, y: last.y + step.y * beyond }
    return {
      geometry: { type: 'LineString', coordinates: [toLngLat(placeOf(row, run[0]!.tree)), toLngLat(to)] },
      properties: {
        ...kept,
        kind: 'row',
        name: i === 0 ? called : `${called} part ${i + 1}`,
        spacing: plainSpacing(spacing, run.length),
        ...(rowSpacing === undefined ? {} : { rowSpacing }),
      },
    }
  })
  // Single trees of one kind in a row are one thing: every ninth of another cultivar.
  const singles = new Map<string, TreeInRow[]>()
  for (const [tree, ...more] of runs) {
    if (more.length > 0) continue
    const like = singles.get(alike(tree!))
    if (like === undefined) singles.set(alike(tree!), [tree!])
    else like.push(tree!)
  }
  const plants = [...singles.values()].map((like): ImportThing => {
    const { name: _, ...kept } = like[0]!.properties
    const ground = rowSpacing === undefined ? undefined : 2 * Math.sqrt((spacing * rowSpacing) / Math.PI)
    const spread = kept.spread ?? (ground === undefined ? undefined : Number(ground.toPrecision(7)))
    const name = kept.cultivar === undefined ? called : `${called} ${kept.cultivar}`
    const coordinates = like.map(({ at }) => at)
    return {
      geometry:
        coordinates.length === 1
          ? { type: 'Point', coordinates: coordinates[0]! }
          : { type: 'MultiPoint', coordinates },
      properties: { ...kept, kind: 'plant', name, ...(spread === undefined ? {} : { spread }) },
    }
  })
  return [...rows, ...plants]
}
