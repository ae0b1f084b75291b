import { assumed, valuesOf } from './figure'

/** What tells a walked track's pauses and spikes from the walk, and its rows from the turns. Coverage does not hang on them. */
export const trackFigures = {
  fastest: assumed(
    'm/s',
    [3, 8, 15],
    'On foot or on a tractor between rows nobody is faster: a walk makes 1 to 2, a run 5. A fix that jumps is.',
  ),
  leastSpike: assumed(
    'm',
    [5, 10, 20],
    'Where a track has no times: a leg of less is within what a fix wanders by under trees.',
  ),
  pauseRadius: assumed('m', [2, 4, 8], 'While a device stands still its fix wanders by some metres.'),
  pauseTime: assumed(
    's',
    [8, 15, 30],
    'Whoever stays within that circle so long has stopped: walking leaves it within 6 s.',
  ),
  rowTolerance: assumed(
    'm',
    [1, 3, 6],
    "A walk along a row stays as near to it as a handheld device's fix is good under an open sky.",
  ),
  leastRow: assumed('m', [5, 10, 20], 'A straight stretch that is shorter is the way from one row to the next.'),
} as const

/** The same as plain numbers. */
export const trackDefaults = valuesOf(trackFigures)
