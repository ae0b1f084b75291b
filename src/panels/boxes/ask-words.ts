import { bees } from '#geo/data/bees'
import { nameOf, type Plan, type Units } from '#geo/plan/plan'
import type { Role } from '#geo/siting/question'
import type { Prices } from '#geo/stocking/stock'
import { dateText } from '#geo/time/date-text'
import { listed } from '#geo/wording/plain'
import { type Ask, canMove, dateIn, pricesOf } from '../../state/boxes'
import { lengthText } from '../../text/units'
import { counted, grouped } from '../../text/words'

/** For a target a station that moves is stocked anew, or spared; else it takes its bees along. */
export function roleName(role: Role, kind: Ask['kind']): string {
  switch (role) {
    case 'keep':
      return 'stays where it is'
    case 'move':
      return kind === 'target' ? 'may move, stocked anew, or be spared' : 'may move, with its cocoons'
    case 'drop':
      return 'is given up this season'
    default:
      return role satisfies never
  }
}

/** Amounts of money: two decimals, grouped; the currency is the grower's own. */
export function money(amount: number): string {
  const [whole = '0', cents = '00'] = Math.abs(amount).toFixed(2).split('.')
  return `${amount < 0 ? '−' : ''}${grouped(Number(whole))}${cents === '00' ? '' : `.${cents}`}`
}

export function rolesSummary({ roles, kind }: Ask, plan: Plan): string {
  const names = (role: Role) =>
    role === 'move' && !canMove(kind) ? [] : plan.features.filter(({ id }) => roles[id] === role).map(nameOf)
  const [moving, dropped] = [names('move'), names('drop')]
  if (moving.length + dropped.length === 0) return 'Stations that stand: all stay'
  const parts = [
    moving.length > 0 ? `${moving.length > 2 ? counted(moving.length, 'station') : listed(moving)} may move` : '',
    dropped.length > 0
      ? `${dropped.length > 2 ? counted(dropped.length, 'station') : listed(dropped)} ${dropped.length === 1 ? 'is' : 'are'} given up`
      : '',
  ]
  return `Stations that stand: ${listed(parts.filter(Boolean))}`
}

export const priceNames: readonly { readonly name: keyof Prices; readonly label: string }[] = [
  { name: 'station', label: 'A station, without tubes' },
  { name: 'femaleCocoon', label: 'A female cocoon' },
  { name: 'maleCocoon', label: 'A male cocoon' },
  { name: 'tube', label: 'A tube' },
]

/** Which bee new stations hold, and when it is set out. */
export function beeSummary(ask: Ask, plan: Plan, year: number): string {
  const date = dateIn(ask, year)
  const usual = ask.dates === 'advice' ? 'on the dates advised' : 'on the dates of those that stand'
  const when = date === null ? usual : `on ${dateText(date)}`
  return `Bee of new stations: ${bees[ask.bee ?? plan.bee].name}, ${when}`
}

export function pricesSummary(ask: Ask): string {
  const own = priceNames.filter(({ name }) => ask.prices[name] !== undefined).length
  const { station, femaleCocoon } = pricesOf(ask)
  const whose = own === 0 ? 'assumed' : own === priceNames.length ? 'your own' : 'partly your own'
  return `Prices and sizes (${whose}: station ${money(station)}, female cocoon ${money(femaleCocoon)})`
}

export function limitsSummary(ask: Ask, units: Units): string {
  const parts = [
    ask.spacing === null ? '' : `${lengthText(ask.spacing, units)} apart`,
    ask.mudWithin === null ? '' : `mud within ${lengthText(ask.mudWithin, units)}`,
    ask.isSheltered ? 'by shelter' : '',
    ask.withLanes ? 'alleys too' : 'not in alleys',
  ]
  return `Where a station may stand: ${listed(parts.filter(Boolean))}`
}

export function weightsSummary({ weights }: Ask, plan: Plan): string {
  const own = plan.features.filter(({ id }) => weights[id] !== undefined && weights[id] !== 1).length
  return own === 0 ? 'Plantings count alike' : `Plantings count by your own weights (${counted(own, 'planting')})`
}
