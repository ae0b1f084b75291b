/** x = r50 / alpha solves (1 + x) exp(-x) = 1/2: half of the trips over uniform blossom end within r50. */
export const halfTripRatio = 1.678346990016661

/** Length scale alpha of distance decay, m, from the radius that holds half of the trips, m. */
export function decayLength(typicalForagingRadius: number): number {
  return typicalForagingRadius / halfTripRatio
}

/** Distance decay k(d) = exp(-d / alpha) for d <= range, else 0; the plain form that the table is checked against. */
export function decay(distance: number, alpha: number, range: number): number {
  return distance <= range ? Math.exp(-distance / alpha) : 0
}

/**
 * Pull of the blossom that nobody drew, W: `density` flowers per m2 weighed by distance decay over the whole disc of
 * radius `range`: density 2 pi alpha^2 (1 - (1 + D) exp(-D)), D = range / alpha.
 */
export function backgroundPull(density: number, alpha: number, range: number): number {
  const ratio = range / alpha
  return density * 2 * Math.PI * alpha * alpha * (1 - (1 + ratio) * Math.exp(-ratio))
}

/** Table steps per alpha, at least. With the cubic below, the error is under (1/512)^4 / 24 = 6e-13 of exp. */
const steps = 256

/** A table of exp(-d/alpha) that one species' distances are looked up in, and what carries on from its entries. */
export type Kernel = {
  readonly alpha: number
  readonly range: number
  /** Entries in a metre: a power of two, so that no place of an entry is rounded. */
  readonly perMetre: number
  /** exp(-i / (perMetre alpha)), as far as the range. */
  readonly table: Float64Array
  /** Added to a distance and taken away again, rounds it to the nearest entry's; the entry stands in its low bits. */
  readonly toNearest: number
  /** exp(l / alpha) for a small rest l of a distance is 1 + l (c1 + l (c2 + l c3)): its first Taylor terms. */
  readonly c1: number
  readonly c2: number
  readonly c3: number
}

export function kernelOf(alpha: number, range: number): Kernel {
  if (!(alpha > 0 && range > 0)) throw new RangeError(`no distance decay with alpha ${alpha} and range ${range}`)
  const perMetre = 2 ** Math.ceil(Math.log2(steps / alpha))
  const table = new Float64Array(Math.ceil(range * perMetre) + 2)
  for (let i = 0; i < table.length; i += 1) table[i] = Math.exp(-i / (perMetre * alpha))
  return {
    alpha,
    range,
    perMetre,
    table,
    toNearest: (1.5 * 2 ** 52) / perMetre,
    c1: 1 / alpha,
    c2: 1 / (2 * alpha * alpha),
    c3: 1 / (6 * alpha * alpha * alpha),
  }
}

/** k(d) from the table, without the cut at the range. The inner loops do the same, operation for operation. */
export function lookUp({ table, perMetre, toNearest, c1, c2, c3 }: Kernel, distance: number): number {
  const nearest = distance + toNearest - toNearest
  const rest = nearest - distance
  return table[(nearest * perMetre) | 0]! * (1 + rest * (c1 + rest * (c2 + rest * c3)))
}
