import { expect, test } from 'vitest'
import { sharedNames, sharedPart } from '../../../src/map/layers/shared-names'

test.each([
  ['Row 1, tree 12', 'Row 1'],
  ['Row 1 12', 'Row 1'],
  ['Brook-3', 'Brook'],
  ['Top field no. 7', 'Top field'],
  ['Old pear', null],
  ['12', null],
])('what %s has in common with its row', (name, part) => expect(sharedPart(name)).toBe(part))

const row = (gap: number, count = 6, name = 'Row 1') =>
  Array.from({ length: count }, (_, i) => ({ id: `${name}-${i}`, name: `${name}, tree ${i + 1}`, x: 0, y: i * gap }))
const width = () => 80

test('plants that stand too close for their names show one for all of the row', () => {
  const shown = sharedNames([...row(20), ...row(20, 4, 'Row 2')], width)
  expect([...shown.values()].filter(text => text !== null)).toEqual(['Row 1', 'Row 2'])
  expect(shown.size).toBe(10)
})

test('closer, where there is room, each has its own again; so have two alone', () => {
  expect(sharedNames(row(100), width).size).toBe(0)
  expect(sharedNames(row(20, 2), width).size).toBe(0)
})
