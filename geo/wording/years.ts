import type { Wording } from './wording'

/** Sentences about one season beside another. */
export const yearsWording = {
  'method-changed': v =>
    `${v.name} was not counted in ${v.to} as in ${v.from}: ${v.what}. A difference between the two years may come of that.`,
} as const satisfies Record<string, Wording>
