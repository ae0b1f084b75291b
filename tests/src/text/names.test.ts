import { describe, expect, test } from 'vitest'
import { limitWords } from '../../../src/text/names'

describe('what holds a planting back', () => {
  test('is several things at once where no single change helps one that is far from enough', () => {
    expect(limitWords({ limit: 'none', reach: 1, coverage: 0.02 })).toBe('no single change is enough')
    expect(limitWords({ limit: 'none', reach: 1, coverage: 0.89 })).toBe('no single change is enough')
  })

  test('is nothing where it has enough, or where nothing is known', () => {
    expect(limitWords({ limit: 'none', reach: 1, coverage: 0.9 })).toBeNull()
    expect(limitWords({ limit: null, reach: 1, coverage: 0.2 })).toBeNull()
    expect(limitWords({ limit: 'none', reach: null, coverage: null })).toBeNull()
  })

  test('is the lack of nests close by, not of reach, where the plants are in reach', () => {
    expect(limitWords({ limit: 'distance', reach: 0.95, coverage: 0.4 })).toBe('in reach, but no nest close by')
    expect(limitWords({ limit: 'distance', reach: 0.5, coverage: 0.4 })).toBe('too far')
  })
})
