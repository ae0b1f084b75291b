/** Degree-days of a day over `base`, degC d, by the mean of its lowest and highest temperature. */
export function meanDegreeDays(minimum: number, maximum: number, base: number): number {
  return Math.max(0, (minimum + maximum) / 2 - base)
}

/**
 * Degree-days of a day over `base` by a single sine wave through its lowest and highest temperature; above `cutoff`
 * warmth counts no further (horizontal cutoff). Any scale of degrees.
 * Source: Baskerville & Emin 1969, Rapid estimation of heat accumulation from maximum and minimum temperatures,
 * Ecology 50:514-517.
 */
export function sineDegreeDays(
  minimum: number,
  maximum: number,
  base: number,
  cutoff = Number.POSITIVE_INFINITY,
): number {
  return above(minimum, maximum, base) - (cutoff < Number.POSITIVE_INFINITY ? above(minimum, maximum, cutoff) : 0)
}

/** Area of the sine wave above a threshold, over one day. */
function above(minimum: number, maximum: number, threshold: number): number {
  const mean = (minimum + maximum) / 2
  if (threshold <= minimum) return mean - threshold
  if (threshold >= maximum) return 0
  const swing = (maximum - minimum) / 2
  const crossing = Math.asin((threshold - mean) / swing)
  return ((mean - threshold) * (Math.PI / 2 - crossing) + swing * Math.cos(crossing)) / Math.PI
}
