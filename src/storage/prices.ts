import type { Prices } from '#geo/stocking/stock'
import { changeAsk } from '../state/boxes-actions'
import type { PlannerStore } from '../state/store'
import { remember, remembered } from './recent'

const key = 'nestreach.prices'
const names = ['station', 'femaleCocoon', 'maleCocoon', 'tube'] as const satisfies readonly (keyof Prices)[]

/** Brings back the prices and the set size of last time, and remembers them from now on: they are the grower's, not a plan's. */
export function keepPrices(store: PlannerStore): () => void {
  changeAsk(store, readKept(remembered(key)))
  return store.subscribe(
    ({ boxes }) => JSON.stringify({ ...boxes.ask.prices, setOf: boxes.ask.setOf }),
    text => remember(key, text),
  )
}

/** Only what is understood is taken: it may come from another version of the program. */
function readKept(text: string | null): { readonly prices: Partial<Prices>; readonly setOf?: number } {
  let value: unknown
  try {
    value = JSON.parse(text ?? '')
  } catch {
    return { prices: {} }
  }
  const members = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>
  const prices: { -readonly [K in keyof Prices]?: number } = {}
  for (const name of names) {
    const price = members[name]
    if (typeof price === 'number' && price >= 0 && price <= 1e6) prices[name] = price
  }
  const { setOf } = members
  const isSize = typeof setOf === 'number' && Number.isInteger(setOf) && setOf >= 1 && setOf <= 10_000
  return { prices, ...(isSize && { setOf }) }
}
