import fc from 'fast-check'
import { expect, it } from 'vitest'
import { placeAlong } from '#geo/space/along'
import { bearing, distance, lineLength, offset } from '#geo/space/shape'

const fixed = { seed: 20260615, numRuns: 100 }
const coordinate = fc.integer({ min: -300, max: 300 })
const place = fc.record({ x: coordinate, y: coordinate })

it('lies as far along and aside as was asked, to the right of the way the row runs', () => {
  const metres = fc.double({ min: -50, max: 50, noNaN: true })
  fc.assert(
    fc.property(place, place, metres, metres, (from, to, along, aside) => {
      fc.pre(distance(from, to) > 0)
      const found = placeAlong([from, to], along, aside)!
      const towards = bearing(from, to)
      const expected = offset(offset(from, towards, along), towards + 90, aside)
      expect(distance(found, expected)).toBeLessThan(1e-9)
    }),
    fixed,
  )
})

it('goes round the corners of a row: its whole length ends at its end', () => {
  fc.assert(
    fc.property(fc.array(place, { minLength: 2, maxLength: 6 }), line => {
      const length = lineLength(line)
      fc.pre(length > 0)
      expect(distance(placeAlong(line, length, 0)!, line.at(-1)!)).toBeLessThan(1e-9)
      expect(distance(placeAlong(line, 0, 0)!, line[0]!)).toBeLessThan(1e-9)
    }),
    fixed,
  )
})

it('a row without length leads nowhere', () => {
  expect(
    placeAlong(
      [
        { x: 1, y: 1 },
        { x: 1, y: 1 },
      ],
      5,
      0,
    ),
  ).toBeNull()
})
