import { figure } from './figure'
import type { Parameter } from './parameter'

const portions = (low: number, value: number, high: number, about: string) =>
  figure('portions', [low, value, high], 'measured', 'davisChill', about)
const hours = (low: number, value: number, high: number) =>
  figure('h', [low, value, high], 'measured', 'nevadaBerries', 'Hours between 0 and 7 degC; range of cultivars.')

/** Winter chill that a crop of the tables needs: chill portions of the dynamic model, or chilling hours. */
export const chillNeeds: Readonly<Record<string, Parameter>> = {
  apple: portions(50, 50, 50, "Of 'Golden Delicious'; other cultivars were not seen."),
  apricot: portions(34, 50, 69, 'Range of cultivars, its middle taken.'),
  'cherry-sweet': portions(30, 48, 70, "Cultivars differ: 'Lapins' 35, 'Rainier' 45, 'Burlat' 48."),
  peach: portions(8, 75, 75, "Of 'Redhaven' 75; cultivars for warm winters 8 to 12."),
  almond: portions(23, 28, 32, 'Range of cultivars, its middle taken.'),
  strawberry: hours(200, 250, 300),
  blueberry: hours(650, 750, 850),
  'blackberry-trailing': hours(700, 700, 700),
  'blackberry-erect': hours(700, 700, 700),
  raspberry: hours(800, 1250, 1700),
}
