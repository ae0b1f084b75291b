import { type Threshold, threshold } from './thresholds'

/** What advice on release dates goes by. */
export const adviceFigures = {
  forageReach: threshold(
    'm',
    [90, 150, 250],
    'derived',
    'hofmann2020',
    'Mean trips of mason bees measured 73 to 121 m, and flowers within 150 m of the nest is the rule drawn from them: blossom farther off does not hold the first females.',
  ),
  starterCocoons: threshold(
    'cocoons',
    [20, 60, 100],
    'assumed',
    'assumed',
    'Fewer female cocoons than this are a starter stock, about one shelter: split up, each batch would be too few to find mates and be seen to work.',
  ),
  batchWorth: threshold(
    'share',
    [0.002, 0.005, 0.02],
    'assumed',
    'assumed',
    'Another morning of setting out is advised for half a point of coverage, not for less.',
  ),
} as const satisfies Readonly<Record<string, Threshold>>
