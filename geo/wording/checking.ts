import type { Wording } from './wording'

/** Sentences for plans that can be read but do not make sense as they stand. */
export const checkingWording = {
  'id-repeated': v =>
    `The id ${v.id} is used ${v.count} times; all are kept and shown. Give every drawn thing an id of its own.`,
} as const satisfies Record<string, Wording>
