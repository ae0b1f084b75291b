import { expect, test } from 'vitest'
import type { ShownGroup } from '#geo/file/open-import'
import { choicesNow, type KeptChoices } from '../../../src/panels/elsewhere/kept-choices'

const group = (key: readonly string[], patch: Partial<ShownGroup> = {}): ShownGroup => ({
  key: JSON.stringify(key),
  label: '',
  shape: 'point',
  count: 5,
  kind: 'plant',
  kinds: ['station', 'plant'],
  crop: null,
  likely: null,
  name: '',
  lines: null,
  cut: { strays: 0, pauses: 0 },
  rowFit: null,
  ...patch,
})
const kept = (touched: KeptChoices['touched']): KeptChoices => ({ touched, cultivars: {} })
const all = group(['plant', 'point', '', ''])

test('what nobody touched follows what the file suggests', () => {
  expect(choicesNow([all], kept({}))).toEqual({ [all.key]: { kind: 'plant', crop: '' } })
  const walk = group(['row', 'line', '', ''], { shape: 'line', kind: 'row', kinds: ['row'], lines: 'walked' })
  expect(choicesNow([walk], kept({}))[walk.key]).toEqual({ kind: 'row', crop: '', walked: 'cleaned' })
})

test('a choice goes with things that a newly matched column calls otherwise; the words for a crop go before it', () => {
  const touched = { [all.key]: { kind: 'plant', crop: 'apple' } as const }
  const pears = group(['plant', 'point', '', 'pear'], { crop: 'pear' })
  const others = group(['plant', 'point', '', 'quince'])
  expect(choicesNow([pears, others], kept(touched))).toEqual({
    [pears.key]: { kind: 'plant', crop: 'pear' },
    [others.key]: { kind: 'plant', crop: 'apple' },
  })
  // And it is there again once the column is taken back.
  expect(choicesNow([all], kept(touched))).toEqual(touched)
})

test('choices that contradict each other, or that a group does not allow, are not carried over', () => {
  const [a, b] = [group(['plant', 'point', 'a', '']), group(['plant', 'point', 'b', ''])]
  const touched = { [a.key]: { kind: 'plant', crop: 'apple' } as const, [b.key]: null }
  expect(choicesNow([all], kept(touched))[all.key]).toEqual({ kind: 'plant', crop: '' })
  expect(choicesNow([a, b], kept(touched))).toEqual(touched)
  const mud = kept({ [a.key]: { kind: 'mud' } })
  expect(choicesNow([all], mud)[all.key]).toEqual({ kind: 'plant', crop: '' })
})

test('what was left out stays out', () => {
  const cut = kept({ [all.key]: null })
  const renamed = group(['plant', 'point', 'trees', ''])
  expect(choicesNow([renamed], cut)[renamed.key]).toBeNull()
})

test('a crop that is likely meant is chosen until another is', () => {
  const guessed = group(['plant', 'point', '', 'Aple'], { likely: { crop: 'apple', from: 'Aple' } })
  expect(choicesNow([guessed], kept({}))[guessed.key]).toEqual({ kind: 'plant', crop: 'apple' })
  const other = { kind: 'plant', crop: 'quince' } as const
  expect(choicesNow([guessed], kept({ [guessed.key]: other }))[guessed.key]).toEqual(other)
})
