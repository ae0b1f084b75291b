/**
 * How one level of a file is written: `known` members first and in that order, the others after them by code point;
 * `isMap` = keys are ids, all in natural order (row-2 before row-10). `decimals` rounds every number below.
 */
export type JsonLayout = {
  readonly known?: readonly string[]
  readonly isMap?: boolean
  readonly decimals?: number
  /** Layouts of single members. */
  readonly members?: Readonly<Record<string, JsonLayout>>
  /** Layout of every entry of a list, or of every value of a map; a function where it hangs on the entry. */
  readonly each?: JsonLayout | ((entry: unknown) => JsonLayout)
  /** Texts of a list's entries by the entry itself, for entries that are never changed in place and always stand there. */
  readonly remembered?: WeakMap<object, string>
}

/**
 * JSON text, two spaces a level, lists of plain values (a position, a day's weather) on one line: what changes in the
 * data changes few lines in the text. Throws RangeError at a number that is not finite, or at anything JSON cannot hold.
 */
export function printJson(value: unknown, layout: JsonLayout, indent = ''): string {
  if (typeof value === 'number') return numberText(value, layout.decimals)
  if (typeof value !== 'object' || value === null) return plainText(value)
  const inner = `${indent}  `
  if (Array.isArray(value)) {
    const isPlain = value.every(entry => typeof entry !== 'object' || entry === null)
    const { remembered } = layout
    const entries = value.map(entry => {
      const known = typeof entry === 'object' && entry !== null ? remembered?.get(entry) : undefined
      if (known !== undefined) return known
      const text = printJson(entry, below(eachOf(layout, entry), layout), inner)
      if (typeof entry === 'object' && entry !== null) remembered?.set(entry, text)
      return text
    })
    if (isPlain) return `[${entries.join(', ')}]`
    return `[\n${entries.map(entry => inner + entry).join(',\n')}\n${indent}]`
  }
  const members = value as Readonly<Record<string, unknown>>
  const keys = orderedKeys(members, layout)
  if (keys.length === 0) return '{}'
  const lines = keys.map(key => {
    const isNamed = layout.members !== undefined && Object.hasOwn(layout.members, key)
    const own = isNamed ? layout.members?.[key] : eachOf(layout, members[key])
    return `${inner}${JSON.stringify(key)}: ${printJson(members[key], below(own, layout), inner)}`
  })
  return `{\n${lines.join(',\n')}\n${indent}}`
}

function eachOf(layout: JsonLayout, entry: unknown): JsonLayout | undefined {
  return typeof layout.each === 'function' ? layout.each(entry) : layout.each
}

function below(layout: JsonLayout | undefined, above: JsonLayout): JsonLayout {
  if (above.decimals === undefined) return layout ?? {}
  return { decimals: above.decimals, ...layout }
}

function numberText(value: number, decimals: number | undefined): string {
  if (!Number.isFinite(value)) throw new RangeError(`a plan file cannot hold the number ${value}`)
  return JSON.stringify(decimals === undefined ? value : Number(value.toFixed(decimals)))
}

function plainText(value: unknown): string {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return JSON.stringify(value)
  throw new RangeError(`a plan file cannot hold a ${typeof value}`)
}

function orderedKeys(members: Readonly<Record<string, unknown>>, layout: JsonLayout): string[] {
  const keys = Object.keys(members).filter(key => members[key] !== undefined)
  if (layout.isMap) return keys.sort(naturalOrder)
  const known = (layout.known ?? []).filter(key => Object.hasOwn(members, key) && members[key] !== undefined)
  return [...known, ...keys.filter(key => !known.includes(key)).sort(codePointOrder)]
}

/** By Unicode code point, whatever the language of the machine. */
export function codePointOrder(a: string, b: string): number {
  const left = [...a]
  const right = [...b]
  for (let i = 0; i < left.length && i < right.length; i += 1) {
    const difference = left[i]!.codePointAt(0)! - right[i]!.codePointAt(0)!
    if (difference !== 0) return difference
  }
  return left.length - right.length
}

/** As people count: digits within names compare as numbers; ties by code point. */
export function naturalOrder(a: string, b: string): number {
  const left = a.match(/\d+|\D+/g) ?? []
  const right = b.match(/\d+|\D+/g) ?? []
  for (let i = 0; i < left.length && i < right.length; i += 1) {
    const difference = partOrder(left[i]!, right[i]!)
    if (difference !== 0) return difference
  }
  return left.length - right.length || codePointOrder(a, b)
}

function partOrder(a: string, b: string): number {
  if (!/^\d/.test(a) || !/^\d/.test(b)) return codePointOrder(a, b)
  const left = a.replace(/^0+(?=\d)/, '')
  const right = b.replace(/^0+(?=\d)/, '')
  return left.length - right.length || codePointOrder(left, right)
}
