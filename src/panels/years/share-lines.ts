import type { ShareOut } from '#geo/plan/plan'
import { dividedFairly } from '#geo/seasons/share-out'

export type ShareLine = { readonly to: string; readonly measure: number | null }

export type ReadLines =
  | { readonly ok: true; readonly lines: readonly ShareLine[] }
  | { readonly ok: false; readonly why: string }

/** One who gets a share on each line; behind the last `;`, tab or `=` what the rule goes by. */
export function readShareLines(text: string): ReadLines {
  const lines: ShareLine[] = []
  for (const line of text.split('\n')) {
    if (line.trim() === '') continue
    const [, name = '', figure = ''] = /^(.*?)(?:[;\t=]\s*([^;\t=]*))?$/.exec(line.trim()) ?? []
    const to = name.trim()
    const written = figure.trim().replace(',', '.')
    if (to === '') return { ok: false, why: `“${line.trim()}” has no name in front.` }
    if (written !== '' && !/^\d{1,9}(\.\d+)?$/.test(written)) {
      return { ok: false, why: `“${figure.trim()}” behind ${to} is not a figure.` }
    }
    lines.push({ to, measure: written === '' ? null : Number(written) })
  }
  return { ok: true, lines }
}

/** The lines that would be typed for a share-out. */
export function shareLinesText({ shares }: Pick<ShareOut, 'shares'>): string {
  return shares.map(({ to, measure }) => (typeof measure === 'number' ? `${to}; ${measure}` : to)).join('\n')
}

/** Why the lines cannot be divided by the rule; null where they can. */
export function shareFault(lines: readonly ShareLine[], rule: ShareOut['rule']): string | null {
  if (lines.length === 0) return 'Write down who gets a share, one on each line.'
  if (rule === 'equal') return null
  const missing = lines.find(({ measure }) => measure === null)
  if (missing) return `The figure behind ${missing.to} is missing. Not known is not 0: write 0 where nothing is meant.`
  return null
}

/** Whole cocoons or pennies for each line, adding up to the total. */
export function divided(total: number, lines: readonly ShareLine[], rule: ShareOut['rule']): readonly number[] {
  return dividedFairly(
    total,
    lines.map(({ measure }) => (rule === 'equal' ? 1 : (measure ?? 0))),
  )
}
