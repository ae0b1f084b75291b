/** When the sun is up, in hours of true solar time: 12 = noon. */
export type Daylight = { readonly sunrise: number; readonly sunset: number; readonly length: number }

/** Height of the sun's centre at sunrise, degrees: refraction and half its disc. */
const edge = -0.8333
const radians = Math.PI / 180

/**
 * Daylight at a latitude in degrees on day `day` of the year (any whole number: the formula comes round every 365 days).
 * Source: Spencer 1971, Fourier series representation of the position of the sun, Search 2:172; upper edge of the disc.
 * Beyond the polar circles the day is 0 or 24 hours long.
 */
export function daylight(latitude: number, day: number): Daylight {
  const declination = declinationOf(day)
  const slope = latitude * radians
  const cosine =
    (Math.sin(edge * radians) - Math.sin(slope) * Math.sin(declination)) / (Math.cos(slope) * Math.cos(declination))
  const half = Math.acos(Math.max(-1, Math.min(1, cosine))) / radians / 15
  return { sunrise: 12 - half, sunset: 12 + half, length: 2 * half }
}

/** Declination of the sun, radians. */
function declinationOf(day: number): number {
  const angle = (2 * Math.PI * (day - 1)) / 365
  return (
    0.006918 -
    0.399912 * Math.cos(angle) +
    0.070257 * Math.sin(angle) -
    0.006758 * Math.cos(2 * angle) +
    0.000907 * Math.sin(2 * angle) -
    0.002697 * Math.cos(3 * angle) +
    0.00148 * Math.sin(3 * angle)
  )
}
