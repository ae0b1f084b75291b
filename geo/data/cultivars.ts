import { figure } from './figure'
import type { Parameter } from './parameter'

/** Days from a crop's full bloom (the median of its cultivars) to that of one cultivar; by crop, then by name. */
export const cultivarOffsets: Readonly<Record<string, Readonly<Record<string, Parameter>>>> = {
  apple: {
    Boskoop: offset(-2.2, 2),
    Topaz: offset(-1.7, 2),
    'James Grieve': offset(-0.9, 2),
    Jonagold: offset(-0.7, 2),
    Berlepsch: offset(-0.5, 2),
    Braeburn: offset(0.5, 2),
    'Golden Delicious': offset(0.9, 2),
    Cox: offset(1.4, 2),
  },
  'pear-european': { 'Alexander Lucas': fromApple(-12.6, -11.7), Conference: fromApple(-10.6, -11.7) },
  'cherry-sweet': {
    Samba: fromApple(-15.2, -8),
    Burlat: fromApple(-11.6, -8),
    Schneiders: fromApple(-6.4, -8),
    Regina: fromApple(-4.7, -8),
    Sylvia: fromApple(-4.4, -8),
  },
  'plum-european': {
    President: fromApple(-21.6, -14.1),
    Katinka: fromApple(-17.8, -14.1),
    'Krämer Hauszwetsche': fromApple(-11.2, -14.1),
    Wolff: fromApple(-11, -14.1),
  },
}

function offset(days: number, spread: number): Parameter {
  return figure(
    'd',
    [days - spread, days, days + spread],
    'measured',
    'luedeling2024',
    'Mean of 14 to 62 years in the Rhineland; the range is the standard deviation between years, 1.2 to 2.4 days.',
  )
}

/** The difference of two means of days from apple full bloom. */
function fromApple(cultivar: number, crop: number): Parameter {
  const days = Number((cultivar - crop).toFixed(1))
  return figure(
    'd',
    [days - 3, days, days + 3],
    'derived',
    'luedeling2024',
    `Rhineland: ${-cultivar} days before apple, the crop ${-crop}. The range is assumed from that of apple cultivars.`,
  )
}
