/**
 * The next whole number up. A quotient such as 70 / (0.35 x 0.8) comes out a hair over 250 in floating point; what lies
 * within a billionth of a whole number is that number, so that nobody buys a cocoon for a rounding error.
 */
export function wholeUp(value: number): number {
  // + 0: nothing is 0, not the -0 that ceil makes of a small negative number.
  return Math.ceil(value - 1e-9 * Math.max(1, Math.abs(value))) + 0
}

/** What turns nesting females into cocoons; shares and males per female. */
export type CocoonSettings = {
  readonly emergence: number
  readonly establishment: number
  readonly malesPerFemale: number
}

/** Cocoons to set out so that `females` nest: F / (emergence x establishment), and males beside them; whole numbers. */
export function cocoonsFor(
  females: number,
  settings: CocoonSettings,
): { readonly female: number; readonly male: number } {
  const share = settings.emergence * settings.establishment
  // With no share that nests, no number of cocoons would do: none are asked for where no females are wanted.
  if (!(share > 0)) return { female: 0, male: 0 }
  const female = females / share
  return { female: wholeUp(female), male: wholeUp(female * settings.malesPerFemale) }
}
