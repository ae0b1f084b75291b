import { judging } from '#geo/data/judging-figures'

/** A verdict on a share; `unknown` where there is no share to judge. */
export type VerdictWord = 'yes' | 'partly' | 'no' | 'unknown'

/** From here on a share counts as enough, and as partly enough; assumed, and said so in the working. */
export const { enough, partlyEnough } = judging

export function verdictOf(share: number | null): VerdictWord {
  if (share === null) return 'unknown'
  // A share of 0.9 that was added up from parts may fall short of it by the last bit.
  if (share >= enough - 1e-9) return 'yes'
  return share >= partlyEnough - 1e-9 ? 'partly' : 'no'
}
