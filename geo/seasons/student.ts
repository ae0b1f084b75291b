/**
 * Chance that Student's t with `degrees` (whole, 1 or more) lies between -t and t: the finite series of
 * Abramowitz & Stegun 1964, 26.7.3 and 26.7.4.
 */
export function studentWithin(t: number, degrees: number): number {
  const angle = Math.atan(t / Math.sqrt(degrees))
  const cosine = Math.cos(angle)
  const isOdd = degrees % 2 === 1
  let term = isOdd ? cosine : 1
  let sum = degrees === 1 ? 0 : term
  for (let k = isOdd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k
    sum += term
  }
  return isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum
}

/** The t that Student's distribution stays within, either way, with chance `within`. */
export function studentQuantile(within: number, degrees: number): number {
  if (!(Number.isInteger(degrees) && degrees >= 1)) throw new RangeError(`no t with ${degrees} degrees of freedom`)
  let [low, high] = [0, 1]
  while (studentWithin(high, degrees) < within) high *= 2
  // Halving 60 times leaves nothing of a double's digits open.
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2
    if (studentWithin(middle, degrees) < within) low = middle
    else high = middle
  }
  return (low + high) / 2
}
