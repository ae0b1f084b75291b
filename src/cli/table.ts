export type Column = {
  readonly head: string
  /** Words stand to the left, figures to the right. */
  readonly align: 'left' | 'right'
}

const gap = '  '

/** Rows of text under their heads, every column as wide as its widest entry, set in by two spaces. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const heads = columns.map(({ head }) => head)
  const widths = columns.map((_, i) => Math.max(...[heads, ...rows].map(row => shownWidth(row[i] ?? ''))))
  const line = (row: readonly string[]) =>
    columns
      .map(({ align }, i) => {
        const text = row[i] ?? ''
        const space = ' '.repeat(widths[i]! - shownWidth(text))
        return align === 'left' ? text + space : space + text
      })
      .join(gap)
      .trimEnd()
  return [heads, ...rows].map(row => gap + line(row)).join('\n')
}

/** Names and their figures, one pair a line. */
export function pairs(entries: readonly (readonly [string, string])[]): string {
  const width = Math.max(...entries.map(([name]) => shownWidth(name)))
  return entries.map(([name, value]) => `${gap}${name}${' '.repeat(width - shownWidth(name))}${gap}${value}`).join('\n')
}

/** Text over lines of at most `width` characters; words longer than that keep their length. */
export function wrapped(text: string, width: number, indent: string): string {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/)) {
    if (line !== '' && shownWidth(line) + 1 + shownWidth(word) > width - indent.length) {
      lines.push(line)
      line = word
    } else {
      line = line === '' ? word : `${line} ${word}`
    }
  }
  return [...lines, line].map(each => indent + each).join('\n')
}

const wide =
  /[\p{Emoji_Presentation}\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\uff01-\uff60]/u

/** Places that a text takes up in a terminal: accents that join a letter take none, East Asian signs take two. */
function shownWidth(text: string): number {
  let width = 0
  for (const { segment } of new Intl.Segmenter('en').segment(text)) width += wide.test(segment) ? 2 : 1
  return width
}
