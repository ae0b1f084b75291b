import { bees } from '../data/bees'
import type { BeeId } from '../data/own'
import type { CauseFacts } from './cause-facts'
import type { Cause } from './mixture'

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'] as const

function amount(count: number, one: string): string {
  return `${small[count] ?? count} ${count === 1 ? one : `${one}s`}`
}

/** What a cause was, in words that a number of points follows; null where the two years do not differ in it. */
export function causeText(cause: Cause, facts: CauseFacts): string | null {
  switch (cause) {
    case 'plantings':
      return addedAndRemoved(facts.plantings, 'new planting', 'planting gone')
    case 'stations':
      return addedAndRemoved(facts.stations, 'new station', 'station given up')
    case 'stock':
      return stockText(facts.stock)
    case 'bloom': {
      const days = facts.bloomDays === null ? 0 : Math.round(facts.bloomDays)
      if (days === 0) return facts.bloomDays ? 'bloom in another order' : null
      return `bloom ${amount(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'earlier'}`
    }
    case 'weather': {
      const [from, to] = facts.weatherDays
      if (from === 0 && to === 0) return null
      if (from === 0 || to === 0) return `weather known for the ${to === 0 ? 'first' : 'second'} year only`
      return 'other flying weather'
    }
    case 'parameters':
      return null
    default:
      return cause satisfies never
  }
}

function addedAndRemoved(
  { added, removed }: CauseFacts['stations'],
  oneAdded: string,
  oneRemoved: string,
): string | null {
  const [noun, ...rest] = oneRemoved.split(' ')
  const parts = [
    ...(added.length > 0 ? [amount(added.length, oneAdded)] : []),
    ...(removed.length > 0 ? [`${amount(removed.length, noun!)} ${rest.join(' ')}`] : []),
  ]
  return parts.length > 0 ? parts.join(', ') : null
}

function stockText({ females, batches, bees: kinds }: CauseFacts['stock']): string {
  const [then, now] = females.map(Math.round) as [number, number]
  const isOther = kinds[0].join() !== kinds[1].join()
  const parts = [
    ...(then === now ? [] : [`${now > then ? 'more' : 'fewer'} female cocoons (${now} after ${then})`]),
    ...(batches[0] === batches[1] ? [] : [`${batchWords(batches[1])} instead of ${small[batches[0]] ?? batches[0]}`]),
    ...(isOther ? [`${beeWords(kinds[1])} instead of ${beeWords(kinds[0])}`] : []),
  ]
  return parts.length > 0 ? parts.join(', ') : 'the same cocoons on other days or at other stations'
}

function batchWords(count: number): string {
  return count === 1 ? 'one batch' : `${small[count] ?? count} batches`
}

function beeWords(ids: readonly BeeId[]): string {
  return ids.map(id => bees[id].name.toLowerCase()).join(' and ') || 'no bees'
}

/** A change of a share in points of a hundred, with its sign: "+18 points", "-1 point"; words where it is hardly any. */
export function pointsText(change: number): string {
  const points = Math.round(Math.abs(change) * 100)
  if (points === 0) return Math.abs(change) < sameShare ? 'no change' : 'under 1 point'
  return `${change > 0 ? '+' : '-'}${points} ${points === 1 ? 'point' : 'points'}`
}

/** Sums of the same parts in another order differ by less. */
const sameShare = 1e-9
