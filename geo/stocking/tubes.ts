import { wholeUp } from './cocoons'

/** Nest tubes a station must offer: F x tubesPerFemale x (1 + spareTubes), rounded up. */
export function tubesFor(females: number, tubesPerFemale: number, spareTubes: number): number {
  return wholeUp(females * tubesPerFemale * (1 + spareTubes))
}
