/** What somebody typed into a figure's field, read; or in words why it cannot be. */
export type ReadNumber = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly why: string }

const fraction = /^([+-]?)(?:(\d+)\s+)?(\d+)\/(\d+)$/
const plain = /^[+-]?(\d+(\.\d*)?|\.\d+)$/

/**
 * Reads a figure as people write it: "4.5", "4,5", "1 200", "1,200.5", "1.200,5", "5/16", "1 1/2", with a true minus
 * sign too. "1,200" alone could be either 1200 or 1.2, so it is sent back, except where only whole numbers are meant.
 */
export function readNumber(text: string, options: { isWhole?: boolean } = {}): ReadNumber {
  const tidy = text.trim().replace(/[−–]/g, '-')
  const parts = fraction.exec(tidy)
  if (parts) {
    const [, sign, wholes = '0', above, below] = parts
    if (Number(below) === 0) return { ok: false, why: 'A fraction cannot have 0 below the line.' }
    const value = Number(wholes) + Number(above) / Number(below)
    return { ok: true, value: sign === '-' ? -value : value }
  }
  const joined = tidy.replace(/(?<=\d)[\s'’](?=\d{3}(\D|$))/g, '')
  const decimal = withPoint(joined, options.isWhole ?? false)
  if (decimal === null) {
    const [before = '', after = ''] = joined.split(',')
    return { ok: false, why: `Write ${before}${after} or ${before}.${after}: “${tidy}” can be read both ways.` }
  }
  if (!plain.test(decimal)) return { ok: false, why: `“${tidy}” is not a number.` }
  const value = Number(decimal)
  return Number.isFinite(value) ? { ok: true, value } : { ok: false, why: `“${tidy}” is too large.` }
}

/** The text with a point for the decimals; null where a lone comma could mean either. */
function withPoint(text: string, isWhole: boolean): string | null {
  const commas = text.split(',').length - 1
  const dots = text.split('.').length - 1
  if (commas > 0 && dots > 0) {
    const isCommaLast = text.lastIndexOf(',') > text.lastIndexOf('.')
    return isCommaLast ? text.replaceAll('.', '').replace(',', '.') : text.replaceAll(',', '')
  }
  if (commas > 1) return /^[+-]?\d{1,3}(,\d{3})+$/.test(text) ? text.replaceAll(',', '') : text
  if (commas === 0) return text
  if (!/^[+-]?[1-9]\d{0,2},\d{3}$/.test(text)) return text.replace(',', '.')
  return isWhole ? text.replace(',', '') : null
}
