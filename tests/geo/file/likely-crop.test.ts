import { expect, it } from 'vitest'
import { cropWords } from '#geo/data/crop-words'
import { crops } from '#geo/data/crops'
import { cropFinder } from '#geo/file/suggest-kind'

const meant = cropFinder({ 'own-medlar': { name: 'Medlar' } })
const likely = (text: string) => {
  const { crop, likely } = meant([text])
  expect(crop, text).toBeNull()
  return likely
}

it('guesses a crop from a usual word or a name a letter or two off, in one or several', () => {
  expect(['Aple', 'appel', 'Apples '].map(text => meant([text]))).toEqual([
    { crop: null, likely: 'apple' },
    { crop: null, likely: 'apple' },
    { crop: 'apple', likely: null },
  ])
  expect(
    ['Sweet chery', 'sour chery', 'plumm', 'Plum', 'Pear', 'pears', 'Strawbery', 'Goosberrys', 'Medler'].map(likely),
  ).toEqual([
    'cherry-sweet',
    'cherry-sour',
    'plum-european',
    'plum-european',
    'pear-european',
    'pear-european',
    'strawberry',
    'gooseberry',
    'own-medlar',
  ])
})

it('leaves open what may be several crops, or is another word', () => {
  expect(
    ['Cherry', 'currants', 'peas', 'bean', 'grape', 'leek', '', 'x', 'Quandong', 'a'.repeat(1000)].map(likely),
  ).toEqual(Array.from({ length: 10 }, () => null))
})

it('takes the text that names a crop before one that only may', () => {
  expect(meant(['Pear', 'pear-asian'])).toEqual({ crop: 'pear-asian', likely: null })
})

it('has a crop for every word, and only words that no crop is called by', () => {
  for (const [word, { crop }] of Object.entries(cropWords)) {
    expect(crops).toHaveProperty(crop)
    expect(likely(word)).toBe(crop)
  }
})
