import { expect, it } from 'vitest'
import { keptLots } from '#geo/stocking/kept-lots'

const date = '2026-04-06'

it('gives as many cocoons as asked for, out of the lots that are planned for the day', () => {
  const planned = [
    { date, females: 30, males: 50, lot: 'own' },
    { date: '2026-04-20', females: 99, males: 99, lot: 'late' },
    { date, females: 40, lot: 'bought' },
  ]
  expect(keptLots([{ date, females: 60, males: 108 }], planned)).toEqual([
    { date, females: 30, males: 50, lot: 'own' },
    { date, females: 30, males: 0, lot: 'bought' },
    { date, females: 0, males: 58 },
  ])
})

it('leaves out what is not needed, and asks for what is not planned', () => {
  const planned = [{ date, females: 30, males: 50, lot: 'own' }]
  expect(keptLots([{ date, females: 10, males: 10 }], planned)).toEqual([{ date, females: 10, males: 10, lot: 'own' }])
  expect(keptLots([{ date, females: 10, males: 10 }], [])).toEqual([{ date, females: 10, males: 10 }])
  expect(keptLots([{ date, females: 0, males: 0 }], planned)).toEqual([])
})
