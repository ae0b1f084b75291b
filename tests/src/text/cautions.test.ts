import { describe, expect, test } from 'vitest'
import { type CautionKey, cautions } from '#geo/wording/cautions'
import { cautionIn } from '../../../src/text/cautions'

describe('a caution', () => {
  test('tells the height from which on a ladder is needed in the plan’s units', () => {
    expect(cautionIn('ladder', 'metric').short).toMatch(/^Higher than 1\.8 m means a ladder/)
    expect(cautionIn('ladder', 'us').short).toMatch(/^Higher than 5\.9 ft means a ladder/)
  })

  test('on sprays sends to the label, the rules of the place and a licensed adviser', () => {
    const { short, long } = cautionIn('sprays', 'metric')
    expect(short).toMatch(/label and the local rules, and ask a licensed adviser/)
    expect(long).toMatch(/licensed applicator/)
  })

  test('leaves no gap where a height is to be told, and says something in every part', () => {
    for (const key of Object.keys(cautions) as CautionKey[]) {
      for (const text of Object.values(cautionIn(key, 'us'))) expect(text, key).toMatch(/^[A-Z][^{}]+[^ ]$/)
    }
  })

  test('on opening nests and on cocoons in a fridge tells what keeps people well', () => {
    expect(cautionIn('dust', 'metric').short).toMatch(/outdoors.*mask/)
    expect(cautionIn('dust', 'metric').long).toMatch(/asthma/)
    expect(cautionIn('cleaning', 'metric').short).toMatch(/Never mix/)
    expect(cautionIn('fridge', 'metric').short).toMatch(/no food.*labelled/)
  })
})
