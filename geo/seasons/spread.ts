import type { BeeParameterName } from '../data/bees'
import type { BeeId } from '../data/own'
import { type BeeSettings, type OwnValues, settingsFor } from '../data/settings'

/** Lowest, middle and highest that a figure must be reckoned with. */
export type Spread = { readonly low: number; readonly mid: number; readonly high: number }

export const ends = ['low', 'mid', 'high'] as const
export type End = (typeof ends)[number]

export function spreadOf(of: (end: End) => number): Spread {
  return { low: of('low'), mid: of('mid'), high: of('high') }
}

/** A figure known to the last one. */
export function known(value: number): Spread {
  return { low: value, mid: value, high: value }
}

/** A bee's figures at both ends of their ranges; the grower's own values have no range. */
export function beeSpreads(own: OwnValues, names: readonly BeeParameterName[]): (bee: BeeId, end: End) => BeeSettings {
  const vary = (end: 'low' | 'high') => settingsFor(own, Object.fromEntries(names.map(name => [`bee.${name}`, end])))
  const settings = { low: vary('low'), mid: settingsFor(own), high: vary('high') }
  return (bee, end) => settings[end].bees[bee]
}

/** A figure that falls to nothing at one end is held to a factor of a thousand, as in a report's ranges. */
const mostFactor = Math.log(1000)

/**
 * Values of several parameters that multiply, each taken so far towards its end that their product comes to the end it
 * has when they err independently: by the root of the sum of their logarithms' squares.
 */
export function jointValues(
  names: readonly BeeParameterName[],
  valueAt: (end: End) => BeeSettings,
  end: End,
): Readonly<Record<string, number>> {
  const mid = valueAt('mid')
  const moves = names.map(name => {
    const [from, to] = [mid[name], valueAt(end)[name]]
    if (!(from > 0) || from === to) return 0
    return to > 0 ? Math.max(-mostFactor, Math.min(mostFactor, Math.log(to / from))) : -mostFactor
  })
  const straight = moves.reduce((sum, move) => sum + Math.abs(move), 0)
  const joint = Math.hypot(...moves)
  return Object.fromEntries(
    names.map((name, i) => [name, straight > 0 ? mid[name] * Math.exp((moves[i]! * joint) / straight) : mid[name]]),
  )
}
