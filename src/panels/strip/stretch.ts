/** The days that the strip shows, from its left edge to its right; days of season, not always whole ones. */
export type Stretch = { readonly from: number; readonly to: number }

/** Closer than this there is nothing more to see, days. */
const fewest = 14

/** What one step of zoom does to the number of days. */
export const closer = 0.6
export const farther = 1 / closer

/** The stretch with `factor` times the days, `at` staying where it is; never beyond the whole season. */
export function zoomed({ from, to }: Stretch, whole: Stretch, factor: number, at: number): Stretch {
  const all = whole.to - whole.from
  const span = Math.min(all, Math.max(Math.min(fewest, all), (to - from) * factor))
  const left = at - ((at - from) / Math.max(1, to - from)) * span
  return within({ from: left, to: left + span }, whole)
}

/** The stretch moved by `days`, as far as the season goes. */
export function panned({ from, to }: Stretch, whole: Stretch, days: number): Stretch {
  return within({ from: from + days, to: to + days }, whole)
}

/** The stretch moved no further than needed to show `day`. */
export function showing(stretch: Stretch, whole: Stretch, day: number): Stretch {
  if (day < stretch.from) return panned(stretch, whole, day - stretch.from)
  return day > stretch.to ? panned(stretch, whole, day - stretch.to) : stretch
}

export function isWhole({ from, to }: Stretch, whole: Stretch): boolean {
  return to - from >= whole.to - whole.from - 1e-9
}

/** A stretch that fits into the season: moved where it hangs over, and all of it where it is longer. */
export function within({ from, to }: Stretch, whole: Stretch): Stretch {
  const span = Math.min(to - from, whole.to - whole.from)
  const left = Math.min(Math.max(from, whole.from), whole.to - span)
  return { from: left, to: left + span }
}
