import { type Path, pathText } from '../plan/place'
import type { Outcome, Problem } from '../problem'
import { jsonFault } from './json-fault'

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
    return failed('not-json', '', jsonFault(content))
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
