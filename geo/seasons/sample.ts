import { studentQuantile } from './student'

/** One opened tube: its cells (or whatever is counted against), and those of them that are asked about. */
export type SampledTube = { readonly size: number; readonly part: number }

/** A share found in opened tubes, and where it lies for all tubes with 95 in 100 chances. */
export type SampledShare = {
  readonly share: number
  /** null with one tube: how much tubes differ cannot be told from it. */
  readonly low: number | null
  readonly high: number | null
  readonly tubes: number
  readonly cells: number
}

/** Chances that an interval holds what it is about: the custom of the trade, so that figures compare. */
const level = 0.95

/**
 * Share of cells of a kind, with an interval that reckons with tubes being of different quality: a ratio estimator over
 * tubes, not over cells (Cochran 1977, Sampling techniques, 6.3), on the scale of log odds so that it stays between 0
 * and 1, Student's t with one degree less than tubes. `of` = tubes there are in all: the more of them are opened, the
 * less is left open. null without cells.
 *
 * Where no tube, or every tube, is wholly of the kind, tubes show no difference to go by: the far end is then the share
 * that as many alike tubes would hide 1 time in 20 were the trouble to take whole tubes.
 */
export function sampledShare(tubes: readonly SampledTube[], of: number | null = null): SampledShare | null {
  const cells = sum(tubes.map(({ size }) => size))
  if (!(cells > 0)) return null
  const share = sum(tubes.map(({ part }) => part)) / cells
  const found = { share, tubes: tubes.length, cells }
  if (of !== null && tubes.length >= of) return { ...found, low: share, high: share }
  if (tubes.length < 2) return { ...found, low: null, high: null }
  const error = standardError(tubes, share, of)
  if (share === 0 || share === 1) {
    const hidden = 1 - (1 - level) ** (1 / tubes.length)
    return { ...found, low: share === 0 ? 0 : 1 - hidden, high: share === 0 ? hidden : 1 }
  }
  const reach = (studentQuantile(level, tubes.length - 1) * error) / (share * (1 - share))
  const odds = Math.log(share / (1 - share))
  return { ...found, low: logistic(odds - reach), high: logistic(odds + reach) }
}

/** A sum over all tubes, reckoned up from the opened ones; null as above. */
export type SampledTotal = { readonly total: number; readonly low: number | null; readonly high: number | null }

/**
 * What all `of` tubes hold, from the opened ones: mean per tube times tubes, with Student's t over tubes and what is
 * left unopened (Cochran 1977, 2.5). Never below what was counted.
 */
export function sampledTotal(counts: readonly number[], of: number): SampledTotal | null {
  if (counts.length === 0) return null
  const counted = sum(counts)
  if (counts.length >= of) return { total: counted, low: counted, high: counted }
  const mean = counted / counts.length
  const total = mean * of
  if (counts.length < 2) return { total, low: null, high: null }
  const variance = sum(counts.map(count => (count - mean) ** 2)) / (counts.length - 1)
  const error = of * Math.sqrt((variance / counts.length) * (1 - counts.length / of))
  const reach = studentQuantile(level, counts.length - 1) * error
  return { total, low: Math.max(counted, total - reach), high: total + reach }
}

/**
 * How many tubes more to open until the share's interval reaches no further than `half` to either side, if the tubes to
 * come differ as much as those opened. At most all `of` of them. null where fewer than two are opened, or they show no
 * difference to go by.
 */
export function tubesToOpen(tubes: readonly SampledTube[], half: number, of: number): number | null {
  if (!(half > 0)) throw new RangeError(`no interval of half width ${half}`)
  const found = sampledShare(tubes, of)
  if (found === null || tubes.length < 2) return null
  const spread = standardError(tubes, found.share, null) * Math.sqrt(tubes.length)
  if (spread === 0) return null
  for (let opened = tubes.length; opened < of; opened += 1) {
    const reach = studentQuantile(level, opened - 1) * (spread / Math.sqrt(opened)) * Math.sqrt(1 - opened / of)
    if (reach <= half) return opened - tubes.length
  }
  return Math.max(0, of - tubes.length)
}

/** Standard error of the ratio over tubes. */
function standardError(tubes: readonly SampledTube[], share: number, of: number | null): number {
  const n = tubes.length
  const squares = sum(tubes.map(({ size, part }) => (part - share * size) ** 2))
  const mean = sum(tubes.map(({ size }) => size)) / n
  const unopened = of === null ? 1 : Math.max(0, 1 - n / of)
  return Math.sqrt((squares / (n - 1) / n) * unopened) / mean
}

function logistic(odds: number): number {
  return 1 / (1 + Math.exp(-odds))
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
