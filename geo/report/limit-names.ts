import type { Limit } from './report'

/** What holds a planting back, in the words of the verdict. */
export const limitNames: Readonly<Record<Limit, string>> = {
  distance: 'too far',
  timing: 'out of time',
  numbers: 'too few bees',
  competition: 'rival or wild blossom',
  unserved: 'no bees near',
  none: 'nothing much',
}
