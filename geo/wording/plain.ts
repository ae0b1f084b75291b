/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[], last = 'and'): string {
  if (items.length < 2) return items[0] ?? ''
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`
}

/** A name on one line, without characters that no text should hold and that would steer a terminal. */
export function oneLine(text: string): string {
  return text.replace(/[\p{C}\s]+/gu, ' ').trim()
}

/** A number without an exponent, so that it can be read, and typed again. */
export function plainDigits(value: number): string {
  const text = String(value)
  if (!text.includes('e')) return text
  return Math.abs(value) < 1 ? value.toFixed(20).replace(/\.?0+$/, '') : BigInt(Math.round(value)).toString()
}

/** The size of a number, its digits in groups of three: "1,234,567.5". */
export function inThrees(value: number): string {
  const [whole = '', decimals] = plainDigits(Math.abs(value)).split('.')
  return whole.replace(/\B(?=(\d{3})+$)/g, ',') + (decimals === undefined ? '' : `.${decimals}`)
}

/** Rounded to `digits` significant digits. */
export function significant(value: number, digits: number): number {
  return value === 0 || !Number.isFinite(value) ? value : Number(value.toPrecision(digits))
}
