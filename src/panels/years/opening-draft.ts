import type { NestCounts, Opening } from '#geo/plan/plan'
import { accountedCells } from '#geo/plan/record-faults'
import { counted, grouped } from '../../text/words'
import { causeName, lossCauses } from './losses'

/** Counts as they are typed; null = not counted. */
export type CountsDraft = {
  readonly cells: number | null
  readonly females: number | null
  readonly males: number | null
  readonly losses: Readonly<Record<string, number | null>>
}

export function countsDraft(counts: NestCounts = {}): CountsDraft {
  const none = Object.fromEntries(lossCauses.map(cause => [cause, null]))
  const { cells = null, females = null, males = null, losses = {} } = counts
  return { cells, females, males, losses: { ...none, ...losses } }
}

/** What to keep of typed counts: what was not counted is left out, and so are losses of which none was looked for. */
export function countsOf({ cells, females, males, losses }: CountsDraft): NestCounts {
  const looked = Object.fromEntries(Object.entries(losses).filter(([, lost]) => lost !== null))
  return {
    ...(cells !== null && { cells }),
    ...(females !== null && { females }),
    ...(males !== null && { males }),
    ...(Object.keys(looked).length > 0 && { losses: looked }),
  }
}

export function isEmptyCounts(draft: CountsDraft): boolean {
  return Object.keys(countsOf(draft)).length === 0
}

/** How far the counts account for the cells; null where that cannot be told. */
export function accountText(draft: CountsDraft): string | null {
  const counts = countsOf(draft)
  if (draft.cells === null || (draft.females === null && draft.males === null && counts.losses === undefined))
    return null
  const left = draft.cells - accountedCells(counts)
  if (left < 0) return null
  return left === 0
    ? 'Cocoons and losses account for every cell.'
    : `${grouped(left)} of ${grouped(draft.cells)} cells are not accounted for yet.`
}

/** "12 cells; 4 females, 6 males; 2 lost: 1 pollen mites, 1 mould". */
export function countsText({ cells, females, males, losses }: NestCounts): string {
  const said = (count: number | null | undefined, word: string) =>
    typeof count === 'number' ? counted(count, word) : `${word}s not counted`
  const lost = Object.entries(losses ?? {}).filter(([, count]) => typeof count === 'number')
  const sum = lost.reduce((total, [, count]) => total + count!, 0)
  const causes = lost
    .filter(([, count]) => count! > 0)
    .map(([cause, count]) => `${count} ${causeName(cause).toLowerCase()}`)
  const losing =
    lost.length === 0
      ? 'losses not counted'
      : `${grouped(sum)} lost${causes.length > 0 ? `: ${causes.join(', ')}` : ''}`
  return [said(cells, 'cell'), said(females, 'female'), said(males, 'male'), losing].join('; ')
}

/** The opening's own totals taken out, so that the single tubes speak. */
export const withoutTotals = { cells: undefined, females: undefined, males: undefined, losses: undefined } as const

export function hasTotals({ cells, females, males, losses }: Opening): boolean {
  return [cells, females, males].some(count => typeof count === 'number') || losses !== undefined
}
