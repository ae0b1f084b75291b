import type { Wording } from './wording'

/** Sentences about one season beside another. */
export const yearsWording = {
  'method-changed': v =>
    `${v.name} was not counted in ${v.to} as in ${v.from}: ${v.what}. A difference between the two years may come of that.`,
  'share-out-over': v =>
    `${v.given} cocoons of ${v.year} are written down as given away, but ${v.found} were found. Both are kept; correct one of them, or write down what other nests held.`,
} as const satisfies Record<string, Wording>
