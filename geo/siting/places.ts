import type { Metres } from '../space/plane'
import { extentOf, lineLength, type Ring } from '../space/shape'
import { nearestOnLine } from './near'
import type { Planted } from './orchard-rows'

/** Why a place was thought of. */
export type PlaceSource = 'own' | 'station' | 'row-end' | 'windbreak' | 'boundary' | 'in-row' | 'open'

export type Place = Metres & { readonly source: PlaceSource }

/** A post half a metre beyond where a row's last plant ends its room. */
const beyond = 0.5
/** A post needs this much room on either side in a row, m. */
export const clearance = 0.6
/** Steps along lines, m, and how far off them a post stands: off a hedge's shade and roots, off a fence. */
const lineStep = 3
const offHedge = 1.5
const offFence = 1
/** More than this of one source are thinned at once, so that no plan is slow to look at. */
const mostOfSource = 12_000

/** Both ends of every row. */
export function rowEnds({ rows }: Planted): Place[] {
  return rows.flatMap(({ plants, spacing }) => {
    const first = plants[0]!
    const last = plants.at(-1)!
    return [outward(plants[1] ?? last, first, spacing), outward(plants.at(-2) ?? first, last, spacing)]
      .filter(place => place !== null)
      .map(place => ({ ...place, source: 'row-end' as const }))
  })
}

function outward(from: Metres, end: Metres, spacing: number): Metres | null {
  const length = Math.hypot(end.x - from.x, end.y - from.y)
  if (length === 0) return null
  const step = (spacing / 2 + beyond) / length
  return { x: end.x + (end.x - from.x) * step, y: end.y + (end.y - from.y) * step }
}

/** Midway between two plants of a row, where there is room for a post. */
export function rowGaps({ rows }: Planted): Place[] {
  const gaps = rows.reduce((sum, { plants }) => sum + plants.length, 0)
  const every = Math.max(1, Math.ceil(gaps / mostOfSource))
  return rows.flatMap(({ plants, spacing }) => {
    if (spacing < 2 * clearance) return []
    const middle = Math.floor((plants.length - 1) / 2)
    // Counted from the middle outwards, so that the middle is there however many are left out.
    return plants.slice(1).flatMap((plant, i) => {
      if ((i - middle) % every !== 0) return []
      const before = plants[i]!
      return [{ x: (before.x + plant.x) / 2, y: (before.y + plant.y) / 2, source: 'in-row' as const }]
    })
  })
}

/** Along a hedge or other shelter, on both sides of it. */
export function alongWindbreak(line: readonly Metres[]): Place[] {
  return besideLine(line, offHedge).flatMap(pair => pair.map(place => ({ ...place, source: 'windbreak' as const })))
}

/** Along the inner side of an outline. */
export function alongBoundary(ring: Ring): Place[] {
  return besideLine(ring, offFence).flatMap(pair => pair.map(place => ({ ...place, source: 'boundary' as const })))
}

function besideLine(line: readonly Metres[], off: number): (readonly [Metres, Metres])[] {
  const length = lineLength(line)
  const steps = Math.max(1, Math.min(mostOfSource, Math.floor(length / lineStep)))
  const pairs: (readonly [Metres, Metres])[] = []
  let piece = 1
  let passed = 0
  for (let i = 0; i < steps; i += 1) {
    const along = ((i + 0.5) * length) / steps
    while (piece < line.length - 1 && along > passed + pieceLength(line, piece)) {
      passed += pieceLength(line, piece)
      piece += 1
    }
    const a = line[piece - 1]!
    const b = line[piece]!
    const full = pieceLength(line, piece)
    if (full === 0) continue
    const [ux, uy] = [(b.x - a.x) / full, (b.y - a.y) / full]
    const [x, y] = [a.x + ux * (along - passed), a.y + uy * (along - passed)]
    pairs.push([
      { x: x - uy * off, y: y + ux * off },
      { x: x + uy * off, y: y - ux * off },
    ])
  }
  return pairs
}

function pieceLength(line: readonly Metres[], piece: number): number {
  return Math.hypot(line[piece]!.x - line[piece - 1]!.x, line[piece]!.y - line[piece - 1]!.y)
}

/** A square grid over all of some positions and a margin round them. */
export function gridOver(positions: readonly Metres[], margin: number): Place[] {
  if (positions.length === 0) return []
  const { minX, maxX, minY, maxY } = extentOf(positions)
  const [width, height] = [maxX - minX + 2 * margin, maxY - minY + 2 * margin]
  const step = Math.max(lineStep, Math.sqrt((width * height) / mostOfSource))
  const columns = Math.max(1, Math.round(width / step))
  const rows = Math.max(1, Math.round(height / step))
  return Array.from({ length: columns * rows }, (_, i) => ({
    x: minX - margin + ((i % columns) + 0.5) * (width / columns),
    y: minY - margin + (Math.floor(i / columns) + 0.5) * (height / rows),
    source: 'open' as const,
  }))
}

/** Nearest of some lines to a place; null where there are none. */
export function nearestLine<T extends { readonly line: readonly Metres[] }>(
  lines: readonly T[],
  place: Metres,
): (ReturnType<typeof nearestOnLine> & { readonly of: T }) | null {
  let best: (ReturnType<typeof nearestOnLine> & { readonly of: T }) | null = null
  for (const of of lines) {
    const near = nearestOnLine(of.line, place)
    if (best === null || near.distance < best.distance) best = { ...near, of }
  }
  return best
}
