import type { Plane } from '../space/plane'
import type { Row } from './plan'

/**
 * Every so manieth of rows that lie side by side, the first of them number `first` (from 1). They are counted across
 * their common direction, from the west, or from the south where they run east and west.
 */
export function everyRow(
  rows: readonly Row[],
  { every, first }: { readonly every: number; readonly first: number },
  plane: Plane,
): readonly Row[] {
  const placed = rows.map(row => {
    const a = plane.toMetres(row.geometry.coordinates[0]!)
    const b = plane.toMetres(row.geometry.coordinates.at(-1)!)
    return { row, middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, along: { x: b.x - a.x, y: b.y - a.y } }
  })
  const [one] = placed
  if (one === undefined) return []
  const { x, y } = one.along
  // Across: towards the east, or towards the north where the rows run east and west.
  const across =
    Math.abs(y) >= Math.abs(x)
      ? { x: Math.sign(y) * y, y: -Math.sign(y) * x }
      : { x: -Math.sign(x) * y, y: Math.sign(x) * x }
  const distance = ({ middle }: (typeof placed)[number]) => middle.x * across.x + middle.y * across.y
  return placed
    .toSorted((a, b) => distance(a) - distance(b))
    .map(({ row }) => row)
    .filter((_, i) => i + 1 >= first && (i + 1 - first) % every === 0)
}
