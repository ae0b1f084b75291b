import { describe, expect, test } from 'vitest'
import { type Comparison, compareSeasons } from '#geo/seasons/compare'
import {
  changeText,
  compareSentence,
  foundSentence,
  isFoundNews,
  jointSentence,
  reachSentence,
} from '../../../../src/panels/years/compare/compare-words'
import { linesOf, valueText } from '../../../../src/panels/years/compare/plantings-table'
import { pageScenario } from '../../../support/page-scenario'

function compared(name: string, a = 2024, b = 2025): Comparison {
  const outcome = compareSeasons(pageScenario(name), a, b)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const joint = (comparison: Comparison) => jointSentence(comparison, crop => crop)

describe('the samples tell their stories', () => {
  test('allotment: the plan hardly moved, so what was found is the news; distance is not what changed', () => {
    const comparison = compared('allotment')
    expect(compareSentence(comparison)).toBe(
      'Coverage as planned fell from 13% in 2024 to 12% in 2025: +4 points from bloom ten days later, and −5 points from fewer female cocoons (114 after 120), three batches instead of two.',
    )
    expect(isFoundNews(comparison)).toBe(true)
    expect(foundSentence(comparison)).toMatch(/^As found, .*: 7% to 33% in 2024, 11% to 54% in 2025\.$/)
    expect(reachSentence(comparison)).toMatch(/^100% .* in both seasons: distance is not what changed\./)
  })

  test('mixed orchard: spread and batches', () => {
    const comparison = compared('mixed-orchard')
    expect(compareSentence(comparison)).toMatch(
      /rose from 45% .* to 57% .*; most of it from .*three batches instead of one\.$/,
    )
    expect(comparison.reasons.map(({ text }) => text)).toContain('two new stations')
    expect(reachSentence(comparison)).toMatch(/^What lies in reach of a station rose from 59% in 2024 to 99% in 2025\./)
    expect(joint(comparison)).toMatch(
      /^Later bloom and more batches belong together: .* Early apples, Late apples and Blueberries, and less well at Plums,/,
    )
    expect(isFoundNews(comparison)).toBe(false)
  })

  test('farm: full reach, half the stock', () => {
    expect(reachSentence(compared('farm'))).toMatch(
      /rose from 50% in 2024 to 94% in 2025\. The bees bring 46% of what is wanted there in 2025: what is short now is bees,/,
    )
  })
})

test('a season beside its mirror image turns every sign', () => {
  const [there, back] = [compared('farm'), compared('farm', 2025, 2024)]
  expect(compareSentence(back)).toMatch(
    /^Coverage as planned fell from 46% in 2025 to 38% in 2024; the largest part from fewer female cocoons/,
  )
  expect(back.reasons.map(({ change }) => changeText(-change))).toEqual(
    there.reasons.map(({ change }) => changeText(change)),
  )
})

test('no joint sentence where only one of stock and bloom changed', () => {
  const comparison = compared('mixed-orchard')
  const without = (cause: string) => ({
    ...comparison,
    reasons: comparison.reasons.filter(each => each.cause !== cause),
  })
  expect(joint(without('bloom'))).toBeNull()
  expect(joint(without('stock'))).toBeNull()
})

test('coverage that is not known in a season is said so, not taken for nought', () => {
  const comparison = compared('farm')
  const coverage = { from: null, to: 0.46, change: null }
  const unknown = { ...comparison, orchard: { ...comparison.orchard, coverage } }
  expect(compareSentence(unknown)).toMatch(/^Coverage cannot be said for 2024,/)
  expect(isFoundNews(unknown)).toBe(false)
})

test('plantings come by the size of their change, the orchard first where it has the figure', () => {
  const comparison = compared('mixed-orchard')
  expect(
    linesOf(comparison, 'coverage')
      .map(({ name }) => name)
      .slice(0, 3),
  ).toEqual(['The orchard', 'Blueberries', 'Plums'])
  expect(linesOf(comparison, 'timingMatch')[0]!.name).toBe('Plums')
  expect(valueText('coverage', null)).toBe('no bloom')
  expect(valueText('wanted', 0.2)).toBe('under 1')
})
