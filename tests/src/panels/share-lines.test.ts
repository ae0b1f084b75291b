import { expect, test } from 'vitest'
import { readShareLines, shareFault, shareLinesText } from '../../../src/panels/years/share-lines'

test('each line names one who gets a share, with a figure behind it or without', () => {
  expect(readShareLines('Plot 1; 24,5\n\n Plot 12A\t3 \nSmith = 0\nJones')).toEqual({
    ok: true,
    lines: [
      { to: 'Plot 1', measure: 24.5 },
      { to: 'Plot 12A', measure: 3 },
      { to: 'Smith', measure: 0 },
      { to: 'Jones', measure: null },
    ],
  })
})

test('what cannot be read is told', () => {
  expect(readShareLines('Plot 1; many')).toMatchObject({ ok: false, why: '“many” behind Plot 1 is not a figure.' })
  expect(readShareLines('; 3')).toMatchObject({ ok: false })
})

test('a figure that is missing is not taken for nothing, but where shares are equal none is needed', () => {
  const lines = [
    { to: 'a', measure: 1 },
    { to: 'b', measure: null },
  ]
  expect(shareFault(lines, 'area')).toContain('behind b')
  expect(shareFault(lines, 'equal')).toBeNull()
  expect(shareFault([], 'equal')).not.toBeNull()
})

test('a saved share-out reads as it was typed', () => {
  const shares = [{ to: 'Plot 1', measure: 2, cocoons: 5 }, { to: 'Plot 2' }]
  expect(shareLinesText({ shares })).toBe('Plot 1; 2\nPlot 2')
})
