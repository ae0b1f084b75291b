import { expect, it } from 'vitest'
import { gatheredSpellings } from '#geo/file/spelling'

it('a list of more words than any orchard grows is not compared word by word, which would take minutes', () => {
  const few = ['Alfriston', 'Alfristn']
  const many = Array.from({ length: 500 }, (_, i) => `Seedling ${i}`)
  expect(gatheredSpellings(few)).toHaveLength(1)
  expect(gatheredSpellings([...few, ...many])).toHaveLength(502)
  const long = ['a'.repeat(1_000_000), 'a'.repeat(1_000_001)]
  expect(gatheredSpellings(long)).toHaveLength(2)
})

it('says where no spelling is known and none is the commonest', () => {
  const ties = (texts: readonly string[]) => gatheredSpellings(texts).map(({ used, isTie }) => [used, isTie])
  expect(ties(['Alfriston', 'Alfristn'])).toEqual([['Alfristn', true]])
  expect(ties(['Alfriston', 'Alfriston', 'Alfristn'])).toEqual([['Alfriston', false]])
  expect(ties(['Jonagld', 'Jonagold'])).toEqual([['Jonagold', false]])
  expect(ties(['Alfriston'])).toEqual([['Alfriston', false]])
})
