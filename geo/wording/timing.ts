import type { Wording } from './wording'

/** Sentences about dates: advice on when to set cocoons out. */
export const timingWording = {
  'advice-no-stations': v =>
    `No station is in use in ${v.year}, so there is nowhere to set cocoons out. Take a station into use first.`,
  'advice-no-blossom': v =>
    `Nothing that wants bees blooms on known dates in ${v.year} within reach of these stations, so no day is better than another. Put in bloom dates, or set stations nearer.`,
  'advice-station-bare': v =>
    `${v.name}: no blossom drawn within ${v.limit} m (${v.source}) is open when the first bees of these dates would nest, so they may leave. Draw what blooms there as a forage area with its dates, or wait for a crop near it.`,
  'advice-starter': v =>
    `With ${v.cocoons} female cocoons, under ${v.limit} (${v.source}), one batch is best: split up, too few are out at a time to find each other.`,
} as const satisfies Record<string, Wording>
