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

/** Table steps per alpha. With the cubic below, the error is under (1/512)^4 / 24 = 6e-13 of exp. */
const steps = 256

/** A table of exp(-d/alpha) that one species' distances are looked up in. */
export type Kernel = {
  readonly alpha: number
  readonly range: number
  /** Distance in metres times this = position in the table. */
  readonly perMetre: number
  /** exp(-i / steps) */
  readonly table: Float64Array
}

export function kernelOf(alpha: number, range: number): Kernel {
  if (!(alpha > 0 && range > 0)) throw new RangeError(`no distance decay with alpha ${alpha} and range ${range}`)
  const table = new Float64Array(Math.ceil((range / alpha) * steps) + 2)
  for (let i = 0; i < table.length; i += 1) table[i] = Math.exp(-i / steps)
  return { alpha, range, perMetre: steps / alpha, table }
}

// Between entries, exp(f / steps) for -1/2 <= f <= 1/2 by its first four Taylor terms.
export const taylor1 = 1 / steps
export const taylor2 = 1 / (2 * steps * steps)
export const taylor3 = 1 / (6 * steps * steps * steps)

/** k(d) from the table, without the cut at the range: what the inner loops of the field do, for one distance. */
export function lookUp(kernel: Kernel, distance: number): number {
  const position = distance * kernel.perMetre
  const i = (position + 0.5) | 0
  const f = i - position
  return kernel.table[i]! * (1 + f * (taylor1 + f * (taylor2 + f * taylor3)))
}
