import { afterEach, beforeEach, expect, it } from 'vitest'
import { changeAsk } from '../../../src/state/boxes-actions'
import { createPlannerStore } from '../../../src/state/store'
import { keepPrices } from '../../../src/storage/prices'

let stop = () => {}
beforeEach(() => localStorage.clear())
afterEach(() => stop())

function started() {
  const store = createPlannerStore(2026)
  stop = keepPrices(store)
  return store
}

it('brings prices and set size back on the next visit, and nothing else of the question', () => {
  const store = started()
  changeAsk(store, { prices: { station: 45, tube: 0 }, setOf: 20, count: 5 })
  stop()
  expect(started().getState().boxes.ask).toMatchObject({ prices: { station: 45, tube: 0 }, setOf: 20, count: 2 })
})

it.each(['', 'nonsense', 'null', '{"station":"many","tube":-1,"setOf":1.5}'])('takes nothing from %j', text => {
  localStorage.setItem('nestreach.prices', text)
  expect(started().getState().boxes.ask).toMatchObject({ prices: {}, setOf: 1 })
})
