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
