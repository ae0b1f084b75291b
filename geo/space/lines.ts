import type { Metres } from './plane'
import { distance, lineLength } from './shape'

/** A line moved `apart` metres to its right (below 0: left); bends stay as far from it as straight pieces do. */
export function beside(line: readonly Metres[], apart: number): readonly Metres[] {
  return line.map((at, i) => {
    const before = i > 0 ? rightOf(line[i - 1]!, at) : null
    const after = i + 1 < line.length ? rightOf(at, line[i + 1]!) : null
    const a = before ?? after
    const b = after ?? before
    if (a === null || b === null) return at
    // The meeting point of both sides moved: along the middle of their normals, by more the sharper the bend.
    const share = apart / Math.max(sharpest, 1 + a.x * b.x + a.y * b.y)
    return { x: at.x + (a.x + b.x) * share, y: at.y + (a.y + b.y) * share }
  })
}

/** Bends sharper than this would send their corner off far; a row never has one. */
const sharpest = 0.2

function rightOf(a: Metres, b: Metres): Metres | null {
  const length = distance(a, b)
  return length > 0 ? { x: (b.y - a.y) / length, y: -(b.x - a.x) / length } : null
}

/**
 * The piece of a line between two distances along it, m. Distances before its beginning or past its end lengthen it
 * straight on.
 */
export function cut(line: readonly Metres[], from: number, to: number): readonly Metres[] {
  const inner: Metres[] = []
  let passed = 0
  for (const [i, at] of line.entries()) {
    if (i > 0) passed += distance(line[i - 1]!, at)
    if (passed > from && passed < to) inner.push(at)
  }
  // The ends themselves are no inner corners where the piece is longer than the line.
  const kept = inner.filter(at => !((at === line[0] && from < 0) || (at === line.at(-1) && to > passed)))
  return [pointAt(line, from), ...kept, pointAt(line, to)]
}

function pointAt(line: readonly Metres[], along: number): Metres {
  if (along === 0) return line[0]!
  if (along === lineLength(line)) return line.at(-1)!
  let passed = 0
  for (let i = 1; i < line.length; i += 1) {
    const a = line[i - 1]!
    const b = line[i]!
    const length = distance(a, b)
    if (length > 0 && (along <= passed + length || i === line.length - 1)) {
      const share = (along - passed) / length
      return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) }
    }
    passed += length
  }
  return line.at(-1)!
}

/** A point turned about another, degrees clockwise. */
export function turned({ x, y }: Metres, about: Metres, degrees: number): Metres {
  const angle = (degrees * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const [dx, dy] = [x - about.x, y - about.y]
  return { x: about.x + dx * cos + dy * sin, y: about.y + dy * cos - dx * sin }
}

/** Whether a corner lies on the straight way between its neighbours, to `within` metres. */
export function isOnTheWay(before: Metres, at: Metres, after: Metres, within: number): boolean {
  const length = distance(before, after)
  if (length === 0) return false
  const across = Math.abs((after.x - before.x) * (at.y - before.y) - (after.y - before.y) * (at.x - before.x)) / length
  const along = ((after.x - before.x) * (at.x - before.x) + (after.y - before.y) * (at.y - before.y)) / length
  return across <= within && along >= -within && along <= length + within
}
