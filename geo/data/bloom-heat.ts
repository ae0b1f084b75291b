import { figure } from './figure'
import type { Parameter } from './parameter'

/** Heat that a crop takes to full bloom: degree-days by the mean of the day over `base`, from a day of the year on. */
export type BloomHeat = {
  readonly base: Parameter
  /** Month and day, MM-DD, from which heat is counted; in the south half a year later. */
  readonly from: string
  readonly total: Parameter
}

const rhineland = (years: number, error: number) =>
  `Fitted by us to ${years} years at Klein-Altendorf (50.6 N), where it misses full bloom by ${error} days when the year is left out. Totals do not travel between climates: the range is nine days of a mild April either way.`

/** The base is part of the fit, not a figure to vary. */
const base = (degrees: number) =>
  figure('degC', [degrees, degrees, degrees], 'derived', 'luedeling2024', 'The base that the total was fitted with.')

/** Crops of the tables with a total of their own; the others follow apple by their days from it. */
export const bloomHeat: Readonly<Record<string, BloomHeat>> = {
  apple: {
    base: base(2),
    from: '02-01',
    total: figure('degC d', [350, 428, 510], 'derived', 'luedeling2024', rhineland(60, 4.3)),
  },
  'pear-european': {
    base: base(2),
    from: '02-01',
    total: figure('degC d', [250, 328, 410], 'derived', 'luedeling2024', rhineland(60, 4.6)),
  },
  'cherry-sweet': {
    base: base(2),
    from: '03-01',
    total: figure(
      'degC d',
      [220, 291, 370],
      'derived',
      'luedeling2024',
      'Fitted by us to 40 years at Klein-Altendorf (50.6 N), error 3.3 days; 23 years at Zaragoza (41.7 N) ask for 284. A published figure for temperate places is 254.',
    ),
  },
  'plum-european': {
    base: base(-1),
    from: '02-01',
    total: figure('degC d', [400, 513, 620], 'derived', 'luedeling2024', rhineland(16, 5.5)),
  },
  apricot: {
    base: base(2),
    from: '02-01',
    total: figure(
      'degC d',
      [170, 255, 340],
      'derived',
      'luedeling2024',
      'Fitted by us to 21 years at Zaragoza (41.7 N), a warm place, error 2.9 days. Totals do not travel: in cool places trust it least of all.',
    ),
  },
}

/** How far such a date may be off, days (one standard deviation). */
export const bloomErrors = {
  ownTotal: figure(
    'd',
    [3, 5, 6],
    'derived',
    'luedeling2024',
    "With a total from the grower's own dates: 3.2 to 5.5 days for five crops, each year left out of the fit in turn.",
  ),
  tableTotal: figure(
    'd',
    [8, 9, 10],
    'assumed',
    ['luedeling2024', 'assumed'],
    'With the total of another place: the spread of the fit and as much again for the place. One total for the Rhineland and Zaragoza missed by up to 5.7 days.',
  ),
} as const satisfies Readonly<Record<string, Parameter>>
