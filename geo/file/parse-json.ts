import type { Outcome, Problem } from '../problem'
import { type Path, pathText } from './place'

/** Characters; a plan of 2,000 rows has about half a million. */
const longest = 50_000_000
/** Levels of lists and members; a plan needs nine. */
const deepest = 64
const mostProblems = 20
const forbiddenKeys: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype'])

/** Text to plain JSON data that is safe to walk: not too large, not too deep, no forbidden names, finite numbers. */
export function parseJson(text: string): Outcome<unknown> {
  if (text.length > longest) {
    const megabytes = Math.ceil(text.length / 1e6)
    return failed('file-too-large', '', { megabytes, limit: longest / 1e6 })
  }
  const content = text.startsWith('\uFEFF') ? text.slice(1) : text
  if (content.trim() === '') return failed('file-empty', '', {})
  let value: unknown
  try {
    value = JSON.parse(content)
  } catch {
    return failed('not-json', '', faultOf(content))
  }
  const problems = unsafeParts(value)
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value, problems }
}

function failed(code: Problem['code'], at: string, values: Problem['values']): Outcome<never> {
  return { ok: false, problems: [{ code, severity: 'error', at, values }] }
}

type Visit = {
  readonly value: unknown
  readonly key: string | number
  readonly parent: Visit | null
  readonly depth: number
}

/** Walks with a list of its own, not by recursion, so that no depth of nesting can exhaust the stack. */
function unsafeParts(root: unknown): Problem[] {
  const problems: Problem[] = []
  const report = (code: Problem['code'], visit: Visit, values: Problem['values']): void => {
    const path = pathText(pathOf(visit))
    problems.push({ code, severity: 'error', at: path, values: { path: path || 'The file', ...values } })
  }
  const open: Visit[] = [{ value: root, key: '', parent: null, depth: 0 }]
  for (let visit = open.pop(); visit !== undefined && problems.length < mostProblems; visit = open.pop()) {
    const { value, depth } = visit
    if (typeof value === 'number' && !Number.isFinite(value)) report('number-too-large', visit, {})
    if (typeof value !== 'object' || value === null) continue
    if (depth >= deepest) {
      report('too-deep', visit, { limit: deepest })
      continue
    }
    const isList = Array.isArray(value)
    for (const [key, part] of Object.entries(value)) {
      const inner: Visit = { value: part, key: isList ? Number(key) : key, parent: visit, depth: depth + 1 }
      if (!isList && forbiddenKeys.has(key)) report('forbidden-key', inner, { key })
      else if (typeof part === 'object' || typeof part === 'number') open.push(inner)
    }
  }
  return problems
}

function pathOf(visit: Visit): Path {
  const path: (string | number)[] = []
  for (let at: Visit | null = visit; at?.parent; at = at.parent) path.unshift(at.key)
  return path.slice(0, 12)
}

/** One token of JSON after white space; anything else does not match. */
const token =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids just these within a text
  /[ \t\n\r]*(?:([{}[\],:])|("[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\u0000-\u001f]*)*")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null))/y

/**
 * Line and column, from 1, at which a text stops being JSON. JSON.parse words this differently in every browser, and
 * in some not at all, so the place is found here.
 */
function faultOf(text: string): { readonly line: number; readonly column: number } {
  const before = text.slice(0, faultIndex(text))
  const line = before.split('\n').length
  return { line, column: before.length - before.lastIndexOf('\n') }
}

type Expected = 'value' | 'value or ]' | 'key' | 'key or }' | 'colon' | 'comma or end' | 'nothing'

function faultIndex(text: string): number {
  const open: string[] = []
  let expected: Expected = 'value'
  for (token.lastIndex = 0; ; ) {
    const start = token.lastIndex
    const match = token.exec(text)
    if (match === null) return skipSpace(text, start)
    const next = after(match, expected, open)
    if (next === null) return skipSpace(text, start)
    expected = next
  }
}

/** What may follow this token; null where the token itself may not stand here. */
function after(match: RegExpExecArray, expected: Expected, open: string[]): Expected | null {
  const [, mark, text, other] = match
  const whole = (): Expected => (open.length === 0 ? 'nothing' : 'comma or end')
  const isKey = expected === 'key' || expected === 'key or }'
  const isValue = expected === 'value' || expected === 'value or ]'
  if (text !== undefined && isKey) return 'colon'
  if (text !== undefined || other !== undefined) return isValue ? whole() : null
  if (mark === ':') return expected === 'colon' ? 'value' : null
  if (mark === ',' && expected === 'comma or end') return open.at(-1) === '{' ? 'key' : 'value'
  if ((mark === '{' || mark === '[') && isValue) {
    open.push(mark)
    return mark === '{' ? 'key or }' : 'value or ]'
  }
  const closes = mark === '}' ? '{' : mark === ']' ? '[' : ''
  const mayClose = expected === 'comma or end' || expected === (mark === '}' ? 'key or }' : 'value or ]')
  if (closes === '' || open.at(-1) !== closes || !mayClose) return null
  open.pop()
  return whole()
}

function skipSpace(text: string, from: number): number {
  let index = from
  while (index < text.length && ' \t\n\r'.includes(text[index]!)) index += 1
  return index
}
