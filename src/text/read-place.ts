import type { LngLat } from '#geo/space/plane'

export type ReadPlace = { readonly ok: true; readonly at: LngLat } | { readonly ok: false; readonly why: string }

const degrees =
  /([NSEWnsew])?\s*([+-]?\d+(?:[.,]\d+)?)\s*[°º]?\s*(?:(\d+(?:[.,]\d+)?)\s*['′’]\s*)?(?:(\d+(?:[.,]\d+)?)\s*(?:["″”]|'')\s*)?([NSEWnsew])?/y

type Angle = { readonly value: number; readonly axis: 'lat' | 'lng' | null }

/**
 * Reads a place written as latitude, then longitude, in one line: "52.59, 0.16", "52.59 N 0.16 E", "44° 25' 30" N,
 * 123° 9' 54" W". Letters settle the order; without them latitude comes first, as maps and phones write it.
 */
export function readPlace(text: string): ReadPlace {
  const angles: Angle[] = []
  const tidy = text
    .trim()
    .replace(/[−–]/g, '-')
    .replace(/(\d),(?=\s)/g, '$1 ; ')
    .replaceAll(';', ' ; ')
  let at = 0
  while (at < tidy.length) {
    const gap = /[\s;,/]*/y
    gap.lastIndex = at
    at += gap.exec(tidy)?.[0].length ?? 0
    if (at >= tidy.length) break
    degrees.lastIndex = at
    const found = degrees.exec(tidy)
    if (found === null || found[0] === '') return { ok: false, why: `“${text.trim()}” is not a place. ${hint}` }
    angles.push(angleOf(found))
    at = degrees.lastIndex
  }
  return placeOf(angles)
}

const hint = 'Write latitude, then longitude, such as 52.59, 0.16 or 44.4 N, 123.2 W.'

function angleOf(found: RegExpExecArray): Angle {
  const number = (part: string | undefined) => (part === undefined ? 0 : Number(part.replace(',', '.')))
  const [, before, whole, minutes, seconds, after] = found
  const letter = (before ?? after ?? '').toUpperCase()
  const size = Math.abs(number(whole)) + number(minutes) / 60 + number(seconds) / 3600
  const isBelow = whole?.startsWith('-') === true || letter === 'S' || letter === 'W'
  const axis = letter === '' ? null : letter === 'N' || letter === 'S' ? 'lat' : 'lng'
  return { value: isBelow ? -size : size, axis }
}

function placeOf(angles: readonly Angle[]): ReadPlace {
  const [first, second] = angles
  if (first === undefined || second === undefined || angles.length > 2) {
    return { ok: false, why: `A place needs two figures. ${hint}` }
  }
  if (first.axis !== null && first.axis === second.axis) {
    return { ok: false, why: 'Both figures run along the same direction. One should be N or S, the other E or W.' }
  }
  const isTurned = first.axis === 'lng' || second.axis === 'lat'
  const lat = isTurned ? second.value : first.value
  const lng = isTurned ? first.value : second.value
  if (Math.abs(lat) > 85) return { ok: false, why: 'The latitude should lie between −85 and 85.' }
  if (Math.abs(lng) > 180) return { ok: false, why: 'The longitude should lie between −180 and 180.' }
  return { ok: true, at: [lng, lat] }
}

/** "52.59000 N, 0.16000 E": five decimals are about a metre. */
export function placeText([lng, lat]: LngLat): string {
  const one = (value: number, positive: string, negative: string) =>
    `${Math.abs(value).toFixed(5)} ${value < 0 ? negative : positive}`
  return `${one(lat, 'N', 'S')}, ${one(lng, 'E', 'W')}`
}
