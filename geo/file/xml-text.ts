import { isPosition, positionsOf } from '../plan/check-ground'
import type { Feature } from '../plan/plan'
import type { LngLat } from '../space/plane'

/** What XML 1.0 can hold no way, not even written as a number: control characters and halves of pairs. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones meant
const unfit = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu

const marks: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  // A reader turns these into other blanks where they stand as they are (XML 1.0, 2.11 and 3.3.3).
  '\r': '&#13;',
  '\n': '&#10;',
  '\t': '&#9;',
}

/** Text as the content or an attribute of an XML element; what XML cannot hold becomes U+FFFD. */
export function xmlText(text: string): string {
  return text.replace(unfit, '\uFFFD').replace(/[&<>"\r\n\t]/g, mark => marks[mark]!)
}

/** `<name a="1">…</name>`; an attribute that is undefined is left out. */
export function xmlElement(
  name: string,
  attributes: Readonly<Record<string, string | undefined>>,
  content: readonly string[],
): string {
  const members = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${xmlText(value)}"`],
  )
  return content.length === 0
    ? `<${name}${members.join('')}/>`
    : `<${name}${members.join('')}>${content.join('')}</${name}>`
}

/** An element that holds a text alone; nothing where there is no text. */
export function xmlLeaf(name: string, text: string): string {
  return text === '' ? '' : `<${name}>${xmlText(text)}</${name}>`
}

/** Beyond any height or depth on earth an altitude is a slip, m. */
const highest = 100_000

/** The altitude of a position, m; undefined where it has none that can be meant. */
export function altitudeOf([, , altitude]: LngLat): number | undefined {
  return altitude !== undefined && Math.abs(altitude) <= highest ? altitude : undefined
}

/** Things that lie on the earth: the others have no place in a format that bounds its degrees. */
export function onEarth(features: readonly Feature[]): readonly Feature[] {
  return features.filter(({ geometry }) => positionsOf(geometry).every(isPosition))
}

/** As many decimals as a plan file keeps of a position; a tenth of a millimetre. Never with an exponent. */
export function degreesText(degrees: number): string {
  const text = degrees.toFixed(9).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}
