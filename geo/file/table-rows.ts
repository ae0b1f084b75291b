import { parse } from 'papaparse'

/** Signs between columns, in the order in which they are tried: a comma may also stand for the decimal point. */
const separators = ['\t', ';', '|', ','] as const
export type Separator = (typeof separators)[number]

/** Lines that the separator is guessed from. */
const lookedAt = 60

/** Rows of a table of text, at most `most`; cells without blanks around them. Quotes as in RFC 4180. */
export function tableRows(text: string, most: number, separator?: Separator): readonly (readonly string[])[] {
  const plain = text.replace(/^\uFEFF/, '')
  const { data } = parse(plain, { delimiter: separator ?? separatorOf(plain), preview: most })
  return data.map(row => row.map(cell => cell.trim()))
}

/** The first separator that cuts most lines into as many columns, two at least. */
export function separatorOf(text: string): Separator {
  const scores = separators.map(separator => {
    const { data } = parse(text, { delimiter: separator, preview: lookedAt })
    const counts = data.map(row => row.length).filter(count => count > 1)
    const usual = counts.sort((a, b) => a - b)[Math.floor(counts.length / 2)] ?? 0
    return { separator, share: counts.filter(count => count === usual).length / data.length }
  })
  return (
    scores.find(({ share }) => share > 0.8) ?? scores.reduce((best, each) => (each.share > best.share ? each : best))
  ).separator
}
