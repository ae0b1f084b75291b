import type { Metres } from '../space/plane'
import { distance, offset } from '../space/shape'

/** A grid of plots: `rows` across the bearing, `columns` along it, all alike. Metres. */
export type PlotGrid = {
  /** The corner of the first plot; the grid goes from it along the bearing and to the right of it. */
  readonly corner: Metres
  /** Degrees clockwise from north, along a row of plots. */
  readonly bearing: number
  readonly rows: number
  readonly columns: number
  /** Size of a plot along the bearing, and to the right of it. */
  readonly length: number
  readonly width: number
  /** Path between neighbours of one row, and between rows. */
  readonly pathBetween: number
  readonly pathAcross: number
  /** Number of the first plot. */
  readonly first: number
  /** Letters of the parts a plot is divided into along its length: 1 = none, 2 = 12A and 12B. */
  readonly parts: number
  /** Every second row is numbered backwards, as one walks it. */
  readonly isWalked: boolean
}

export type Plot = { readonly name: string; readonly corners: readonly Metres[] }

/** Every plot, or part of one, by number and letter, with its four corners. */
export function plotsOf(grid: PlotGrid): readonly Plot[] {
  const { corner, bearing, rows, columns, length, width, pathBetween, pathAcross, first, parts, isWalked } = grid
  const at = (along: number, across: number) => offset(offset(corner, bearing, along), bearing + 90, across)
  const plots: Plot[] = []
  for (let row = 0; row < rows; row += 1) {
    for (let place = 0; place < columns; place += 1) {
      const column = isWalked && row % 2 === 1 ? columns - 1 - place : place
      const number = first + row * columns + place
      const across = row * (width + pathAcross)
      for (let part = 0; part < parts; part += 1) {
        const from = column * (length + pathBetween) + (part * length) / parts
        const to = from + length / parts
        const corners = [at(from, across), at(to, across), at(to, across + width), at(from, across + width)]
        plots.push({ name: `${number}${parts > 1 ? String.fromCharCode(65 + part) : ''}`, corners })
      }
    }
  }
  return plots
}

/** Ground that a grid covers along its bearing and across it, m. */
export function gridSize(grid: PlotGrid): { readonly along: number; readonly across: number } {
  const { rows, columns, length, width, pathBetween, pathAcross } = grid
  return {
    along: columns * length + (columns - 1) * pathBetween,
    across: rows * width + (rows - 1) * pathAcross,
  }
}

/** Places for `count` plants, evenly along the longer middle line of a plot. */
export function spotsIn({ corners }: Plot, count: number): readonly Metres[] {
  const [a, b, c, d] = corners as [Metres, Metres, Metres, Metres]
  const between = (p: Metres, q: Metres, share: number): Metres => ({
    x: p.x + share * (q.x - p.x),
    y: p.y + share * (q.y - p.y),
  })
  const isLong = distance(a, b) >= distance(b, c)
  const [from, to] = isLong ? [between(a, d, 0.5), between(b, c, 0.5)] : [between(a, b, 0.5), between(d, c, 0.5)]
  return Array.from({ length: count }, (_, i) => between(from, to, (i + 0.5) / count))
}
