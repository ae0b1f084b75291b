import type { SourceKey } from './sources'

/** One class of hours: up to and with `upTo` degC an hour is worth `units`. */
type UtahClass = { readonly upTo: number; readonly units: number }

/**
 * Constants of the published ways of counting chill and heat by the hour, just as their authors give them: parts of a
 * formula, not figures to be varied one by one. Temperatures in degC.
 */
export const chillModels = {
  hours: { from: 0, to: 7.2 },
  utah: [
    { upTo: 1.4, units: 0 },
    { upTo: 2.4, units: 0.5 },
    { upTo: 9.1, units: 1 },
    { upTo: 12.4, units: 0.5 },
    { upTo: 15.9, units: 0 },
    { upTo: 18, units: -0.5 },
    { upTo: Number.POSITIVE_INFINITY, units: -1 },
  ] as readonly UtahClass[],
  dynamic: { e0: 4153.5, e1: 12888.8, a0: 139500, a1: 2.567e18, slope: 1.6, fixed: 277 },
  heat: { base: 4, best: 25, most: 36 },
} as const

/** Where each of them comes from. */
export const chillModelSources: Readonly<Record<keyof typeof chillModels, SourceKey>> = {
  hours: 'linvill1990',
  utah: 'richardson1974',
  dynamic: 'erez1990',
  heat: 'anderson1986',
}
