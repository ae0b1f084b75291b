import type { Unit } from '#geo/data/parameter'
import type { ParameterRow } from '#geo/data/parameter-rows'
import { beeLimits, cropLimits, type Limit, siteLimits } from '#geo/plan/limits'
import type { Units } from '#geo/plan/plan'
import { regionNames } from '../../text/names'
import { quantityOf, withUnit } from '../../text/units'
import { capitalised } from '../../text/words'

type Limits = Readonly<Record<string, Limit>>

const others: Readonly<Record<string, string>> = {
  firstToFull: 'days from first to full bloom',
  fullToEnd: 'days from full bloom to its end',
  flowers: 'flowers in full bloom',
  femalesPerPlant: 'females per plant, rule of thumb',
  rainScale: 'rain of a day that takes all but 37% of its flying time',
  windFull: 'wind that takes nothing from flying time',
  windNone: 'wind in which no bee flies',
  bloomDays: 'days from first to last flower',
  shareOfFlowersThatMustSet: 'share of flowers that must set fruit',
  stationsUp: 'stations up before the first release',
  stationsUpDays: 'days to put stations up',
  mudBefore: 'mud wet before the first release',
  roundEvery: 'days between rounds',
  flightOver: 'share of the busiest day at which flight is over',
  takeInAfter: 'nests taken in after the last flight',
  eggToAdult: 'egg to grown bee',
  adultToCold: 'grown bee to cold',
  'coldDays osmia-lignaria': 'days in the cold, blue orchard bee',
  'coldDays osmia-bicornis': 'days in the cold, red mason bee',
  'coldDays osmia-cornuta': 'days in the cold, European orchard bee',
  'coldDays osmia-cornifrons': 'days in the cold, hornfaced bee',
  openAfterCold: 'cold to opening day',
  shareOutAfter: 'opening day to share-out',
  orderBefore: 'order before the next release',
  stationPrice: 'price of a station',
  femaleCocoonPrice: 'price of a female cocoon',
  maleCocoonPrice: 'price of a male cocoon',
  tubePrice: 'price of a tube',
  usualFemales: 'nesting females at a new station',
  mostTubes: 'tubes at a station before another does more good',
  stationSpacing: 'least distance between stations',
  enough: 'share of what is wanted that counts as enough',
  partlyEnough: 'share of what is wanted that counts as enough in part',
  usualTarget: 'share asked for where a question names none',
  sureChance: 'chance that counts as sure',
  toldTimes: 'factor from which a change of tubes for each female is told',
  fastest: 'fastest that a track is walked',
  leastSpike: 'least jump of a track without times',
  pauseRadius: 'circle that the fix of a resting device wanders in',
  pauseTime: 'time within that circle that is a pause',
  rowTolerance: 'how far a walk may be off its row',
  leastRow: 'shortest straight stretch that is a row',
  shareOfReach: 'share of the most within reach that is asked for where a target is out of it',
}

/** Groups whose rows already have a name in words. */
const namedInFull: ReadonlySet<string> = new Set(['heat', 'cultivar', 'chill', 'frost'])

/** What a figure is called: the words that its limits have, or those above. */
export function parameterLabel({ group, groupId, name }: ParameterRow): string {
  const label = limitOf(groupId, name)?.label ?? others[name]
  if (label !== undefined) return capitalised(label)
  if (namedInFull.has(groupId)) return capitalised(name.replaceAll('-', ' '))
  const region = regionNames[name as keyof typeof regionNames]
  if (region !== undefined) return capitalised(region)
  const [plant = name, regionId] = name.split(' ')
  const of = regionNames[regionId as keyof typeof regionNames]
  return of === undefined ? `${group}: ${name}` : `${capitalised(plant.replaceAll('-', ' '))}: ${of}`
}

/** Between which bounds a grower's own value may lie; undefined where the figure cannot be one's own. */
export function limitOf(groupId: string, name: string): Limit | undefined {
  if (groupId === 'site') return (siteLimits as Limits)[name]
  if (groupId.startsWith('osmia-')) return (beeLimits as Limits)[name]
  if (groupId === 'bloom' || groupId === 'work' || groupId === 'siting') return undefined
  return (cropLimits as Limits)[name]
}

const nouns: Partial<Readonly<Record<Unit, string>>> = {
  'females/ha': 'females',
  'females/plant': 'per plant',
  'flowers/m2': 'flowers',
  'flowers/plant': 'per plant',
  'flowers/m': 'flowers',
  cells: 'cells',
  tubes: 'tubes',
  females: 'females',
}

/** A table value in the plan's units: "618 females per ha", "90%", "67.1 m". */
export function valueText(value: number, unit: Unit, units: Units): string {
  const text = withUnit(value, quantityOf(unit), units)
  const noun = nouns[unit]
  if (noun === undefined) return text
  const [figure, ...rest] = text.split(' ')
  return [figure, noun, ...rest].join(' ')
}
