import { describe, expect, test } from 'vitest'
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
})
