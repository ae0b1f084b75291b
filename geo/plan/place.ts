/** Where something stands in a file: names and list numbers from the top down. */
export type Path = readonly (string | number)[]

const plainKey = /^[\p{L}_][\p{L}\p{N}_-]*$/u
const longestText = 40

/** A path as people write it: `plan.seasons[0].bloom.apple.full`. */
export function pathText(path: Path): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`
    if (!plainKey.test(key) || key.length > longestText) return `${text}["${shortened(key)}"]`
    return text === '' ? key : `${text}.${key}`
  }, '')
}

/** At most 40 characters, on one line. */
export function shortened(text: string): string {
  const line = text.replace(/[\p{C}\s]+/gu, ' ')
  const characters = [...line.slice(0, 2 * longestText + 2)]
  return characters.length > longestText ? `${characters.slice(0, longestText - 1).join('')}…` : line
}

/** What was found where something else was expected, in plain words. */
export function foundText(value: unknown): string {
  if (value === null) return 'null'
  if (value === undefined) return 'missing'
  if (typeof value === 'string') return value === '' ? 'an empty text' : `the text “${shortened(value)}”`
  if (typeof value === 'number') return `the number ${value}`
  if (typeof value === 'boolean') return String(value)
  if (!Array.isArray(value)) return 'a group of members'
  return value.length === 0 ? 'an empty list' : `a list of ${value.length}`
}

/** The value at a path; undefined where there is none. */
export function valueAt(root: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<string | number, unknown>)[key]
        : undefined,
    root,
  )
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
