import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { rounded } from './near'

/** Digits that recorded results keep: more would record the order of additions. */
const digits = 4

/**
 * A recorded result, rounded; `UPDATE=1` records `found` first. The text has every row of a table on a line of its own, so
 * that a difference reads as one.
 */
export function golden(name: string, found: unknown): { readonly found: string; readonly expected: string } {
  const file = new URL(`../scenarios/expected/${name}.json`, import.meta.url)
  const text = `${linesOf(rounded(found, digits))}\n`
  if (process.env.UPDATE) writeFileSync(file, text)
  return { found: text, expected: existsSync(file) ? readFileSync(file, 'utf8') : '' }
}

/** JSON with groups of groups opened and what holds only plain values, or one group of them, on one line. */
function linesOf(value: unknown, indent = ''): string {
  if (depthOf(value) <= 2) return JSON.stringify(value)
  const inner = `${indent} `
  const entries = Array.isArray(value)
    ? value.map(entry => linesOf(entry, inner))
    : Object.entries(value as object).map(([key, entry]) => `${JSON.stringify(key)}: ${linesOf(entry, inner)}`)
  const [open, close] = Array.isArray(value) ? '[]' : '{}'
  return `${open}\n${entries.map(entry => inner + entry).join(',\n')}\n${indent}${close}`
}

function depthOf(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0
  return 1 + Math.max(0, ...Object.values(value).map(depthOf))
}
