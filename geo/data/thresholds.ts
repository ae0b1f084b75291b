import type { Spread } from './figure'
import type { Basis, Parameter } from './parameter'
import { citation, type SourceKey } from './sources'

/** A figure that a check or an advice measures a plan, or what was counted, against. Coverage does not hang on it. */
export type Threshold = Omit<Parameter, 'unit' | 'source'> & {
  readonly unit: 'm' | 'mm' | 'degrees' | 'd' | 'degC' | 'cocoons' | 'share'
  readonly source: SourceKey | readonly SourceKey[]
}

export function threshold(
  unit: Threshold['unit'],
  [low, value, high]: Spread,
  basis: Basis,
  source: SourceKey | readonly SourceKey[],
  about: string,
): Threshold {
  return { unit, value, low, high, basis, source, about }
}

/** What the field checks hold a station against; bore, depth and tubes go by the bee's own figures instead. */
export const thresholds = {
  heightMost: threshold(
    'm',
    [1.5, 1.8, 2],
    'assumed',
    'assumed',
    'Tubes are looked after at eye level or below: a station that takes a ladder is a risk at every visit. Most stand at 1 to 1.8 m.',
  ),
  heightLeast: threshold(
    'm',
    [0.5, 0.75, 0.9],
    'assumed',
    'memory',
    'Lower down, rain splashes, grass shades the front, and mice and ants come in easily.',
  ),
  facingFrom: threshold(
    'degrees',
    [60, 90, 110],
    'derived',
    'mader2010',
    'The handbook wants the morning sun, east to south-east; east is where that begins.',
  ),
  facingTo: threshold(
    'degrees',
    [135, 160, 180],
    'derived',
    'mader2010',
    'South-east with a good margin: beyond that the sun comes late in the morning.',
  ),
  facingDoubtful: threshold(
    'degrees',
    [180, 200, 225],
    'assumed',
    'assumed',
    'South still has sun before noon; farther round, nests warm late in the day and are hottest in the afternoon.',
  ),
  overhangLeast: threshold(
    'mm',
    [15, 25, 50],
    'assumed',
    'assumed',
    'Rain drives in under a shorter roof. Half of the 50 to 100 mm that keepers like, so that only a roof in name is told of.',
  ),
  mudNear: threshold(
    'm',
    [5, 15, 25],
    'assumed',
    'memory',
    'Keepers put mud within some 5 to 8 m. Twice that costs little; every metre more is flown many times for each cell.',
  ),
  mudFar: threshold(
    'm',
    [25, 50, 100],
    'assumed',
    'memory',
    'Keepers speak of 25 to 50 m, of 100 at the very most: farther off, bees gather mud elsewhere or nest there.',
  ),
  lossHigh: threshold(
    'share',
    [0.15, 0.25, 0.35],
    'assumed',
    'assumed',
    'A fifth to a quarter of cells is lost in usual years; beyond that, mites, flies or mould have the upper hand.',
  ),
  lossRise: threshold(
    'share',
    [0.05, 0.1, 0.15],
    'assumed',
    'assumed',
    'Ten points in one year are more than good and bad seasons alone make at one place.',
  ),
  cappedPoor: threshold(
    'share',
    [0.3, 0.5, 0.7],
    'assumed',
    'assumed',
    'Half of what stations beside it filled for as many bees, two seasons running: the place, not the year.',
  ),
  sampleReach: threshold(
    'share',
    [0.05, 0.1, 0.15],
    'assumed',
    'assumed',
    'Ten points either way tell a bad year from a usual one; to know losses much closer takes most of the tubes.',
  ),
  femaleShareLow: threshold(
    'share',
    [0.15, 0.2, 0.25],
    'assumed',
    'assumed',
    'A worked example of a handbook has 26 % daughters. Well below that, tubes are narrow or short, or the sexes were mistaken.',
  ),
  femaleShareHigh: threshold(
    'share',
    [0.5, 0.6, 0.7],
    'assumed',
    'assumed',
    'Good nests held about half daughters; well above that, sons were missed: they sit in front and leave first.',
  ),
} as const satisfies Readonly<Record<string, Threshold>>

/** Who says that a station is to be fixed so that it cannot sway: bees that come home miss an entrance that moves. */
export const fixedSource: SourceKey = 'mader2010'

/** Where a figure comes from, as running text: "Bosch 1994". */
export function sourceText({ source }: Pick<Parameter, 'source'>): string {
  const keys = typeof source === 'string' ? [source] : source
  return keys.map(key => unpublished[key] ?? citation(key)).join('; ')
}

const unpublished: Partial<Record<SourceKey, string>> = {
  assumed: 'our own choice',
  memory: "a keepers' rule, not checked",
}
