import { assumed, figure } from './figure'
import type { Parameter } from './parameter'

/** What rain and wind take from a day's flying time; the temperatures are each bee's own. */
export const flyingModel = {
  rainScale: assumed(
    'mm',
    [2, 5, 10],
    'Rain of a day that leaves 37 % (1/e) of its flying time. A day total says nothing of the hours it fell in; light rain is flown through, a wet day is not.',
  ),
  windFull: figure(
    'm/s',
    [4, 5, 7],
    'assumed',
    ['vicensWeather2000', 'memory'],
    'Wind that takes nothing yet. O. cornuta was seen to work in strong wind; honey bees are held back from about 5 m/s.',
  ),
  windNone: figure(
    'm/s',
    [7, 10, 14],
    'assumed',
    ['vicensWeather2000', 'memory'],
    'Wind in which hardly a bee works; between the two, flying time falls in proportion.',
  ),
} as const satisfies Readonly<Record<string, Parameter>>
