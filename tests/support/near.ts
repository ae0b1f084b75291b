/** Less than this is what is left of a difference of equal numbers. */
const nothing = 1e-9

/** Value rounded to `digits` significant digits, and to 0 where it is next to nothing; infinities and NaN stay. */
export function significant(value: number, digits: number): number {
  if (Math.abs(value) < nothing) return 0
  return Number.isFinite(value) ? Number(value.toPrecision(digits)) : value
}

/** A copy of plain data with every number rounded to `digits` significant digits: what golden files hold. */
export function rounded(data: unknown, digits: number): unknown {
  if (typeof data === 'number') return significant(data, digits)
  if (Array.isArray(data)) return data.map(entry => rounded(entry, digits))
  if (typeof data !== 'object' || data === null) return data
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, rounded(value, digits)]))
}

/** How far `found` is from `expected`, as a share of `expected`. */
export function relativeError(found: number, expected: number): number {
  return Math.abs(found - expected) / Math.abs(expected)
}

/**
 * The first place where two pieces of plain data differ by more than `tolerance` in a number, or at all in anything
 * else, as `path: found, expected`; null where they agree.
 */
export function firstDifference(found: unknown, expected: unknown, tolerance: number, path = ''): string | null {
  if (typeof found === 'number' && typeof expected === 'number') {
    return Math.abs(found - expected) <= tolerance ? null : `${path}: ${found}, ${expected}`
  }
  if (typeof found !== 'object' || typeof expected !== 'object' || found === null || expected === null) {
    return Object.is(found, expected) ? null : `${path}: ${found}, ${expected}`
  }
  const [left, right] = [Object.keys(found), Object.keys(expected)]
  if (left.join() !== right.join()) return `${path}: ${left.join()}, ${right.join()}`
  for (const key of left) {
    const member = (data: object) => (data as Record<string, unknown>)[key]
    const difference = firstDifference(member(found), member(expected), tolerance, `${path}/${key}`)
    if (difference !== null) return difference
  }
  return null
}
