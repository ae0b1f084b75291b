/** One value a day from day `start` on; 0 on every other day. */
export type DailyCurve = { readonly start: number; readonly values: Float64Array }

/** Value on `day`; 0 outside the curve's days. */
export function valueOn(curve: DailyCurve, day: number): number {
  return curve.values[day - curve.start] ?? 0
}

/** First day after the curve's last. */
export function endOf(curve: DailyCurve): number {
  return curve.start + curve.values.length
}

export function sumOf(curve: DailyCurve): number {
  return curve.values.reduce((sum, value) => sum + value, 0)
}

/** Sum over days of the product of two curves. */
export function sumOfProduct(a: DailyCurve, b: DailyCurve): number {
  let sum = 0
  const from = Math.max(a.start, b.start)
  const to = Math.min(endOf(a), endOf(b))
  for (let day = from; day < to; day += 1) sum += a.values[day - a.start]! * b.values[day - b.start]!
  return sum
}
