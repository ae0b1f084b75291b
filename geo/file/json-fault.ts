/** One mark, number or word of JSON; texts are passed over by hand, since a long one would exhaust a pattern's stack. */
const token = /([{}[\],:])|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y

/**
 * Line and column, from 1, at which a text stops being JSON. JSON.parse words this differently in every browser, and
 * in some not at all, so the place is found here.
 */
export function jsonFault(text: string): { readonly line: number; readonly column: number } {
  const before = text.slice(0, faultIndex(text))
  const line = before.split('\n').length
  return { line, column: before.length - before.lastIndexOf('\n') }
}

type Expected = 'value' | 'value or ]' | 'key' | 'key or }' | 'colon' | 'comma or end' | 'nothing'

function faultIndex(text: string): number {
  const open: string[] = []
  let expected: Expected = 'value'
  for (let start = afterSpace(text, 0); ; ) {
    const isText = text[start] === '"'
    token.lastIndex = start
    const match = isText ? null : token.exec(text)
    const end = isText ? afterText(text, start) : match === null ? null : token.lastIndex
    if (end === null) return start
    const next = after(isText ? 'text' : (match?.[1] ?? 'value'), expected, open)
    if (next === null) return start
    expected = next
    start = afterSpace(text, end)
  }
}

/** What may follow a mark, a text or another value; null where that may not stand here. */
function after(part: string, expected: Expected, open: string[]): Expected | null {
  const whole = (): Expected => (open.length === 0 ? 'nothing' : 'comma or end')
  const isValue = expected === 'value' || expected === 'value or ]'
  switch (part) {
    case 'text':
      if (expected === 'key' || expected === 'key or }') return 'colon'
      return isValue ? whole() : null
    case 'value':
      return isValue ? whole() : null
    case ':':
      return expected === 'colon' ? 'value' : null
    case ',':
      if (expected !== 'comma or end') return null
      return open.at(-1) === '{' ? 'key' : 'value'
    case '{':
    case '[':
      if (!isValue) return null
      open.push(part)
      return part === '{' ? 'key or }' : 'value or ]'
    default: {
      const [opening, mayBeEmpty] = part === '}' ? ['{', 'key or }'] : ['[', 'value or ]']
      if (open.at(-1) !== opening || (expected !== 'comma or end' && expected !== mayBeEmpty)) return null
      open.pop()
      return whole()
    }
  }
}

function afterSpace(text: string, from: number): number {
  let index = from
  while (index < text.length && ' \t\n\r'.includes(text[index]!)) index += 1
  return index
}

/** The index after a text's closing quote; null where it is not closed, or holds what a text may not. */
function afterText(text: string, from: number): number | null {
  for (let index = from + 1; index < text.length; index += 1) {
    const character = text[index]!
    if (character === '"') return index + 1
    if (character < ' ') return null
    if (character !== '\\') continue
    escaped.lastIndex = index
    if (!escaped.test(text)) return null
    index = escaped.lastIndex - 1
  }
  return null
}
