import { expect, test } from 'vitest'
import { drawLine } from '../../../../src/map/tools/draw-line'
import { placeWords, withPlace } from '../../../../src/map/tools/place-words'
import { step } from '../../../support/builders'
import { hover, play, tap } from './events'

// A minute of latitude at 52.2° is 1,854.9 m on the WGS 84 ellipsoid, one of longitude 1,139.6 m: a ten-thousandth of a degree is 11.13 and 6.84 m.
test('a place is told as the grid counts it: metres or feet, east or west, north or south', () => {
  expect(placeWords(step([100, 50]), step([0, 0]), 'metric')).toBe('684 m E, 556 m N')
  expect(placeWords(step([-1, -1]), step([0, 0]), 'metric')).toBe('6.8 m W, 11.1 m S')
  expect(placeWords(step([0, 1]), step([0, 0]), 'us')).toBe('0 ft E, 37 ft N')
})

test('nothing is told where a flat grid says nothing', () => {
  expect(placeWords([100, 10], step([0, 0]), 'metric')).toBe('')
})

test('the pointer tells its place until there is a length to tell', () => {
  const before = withPlace(play(drawLine('row'), [hover([20, 4])]).ghost, step([0, 0]), 'metric')
  expect(before?.says).toBe(placeWords(step([20, 4]), step([0, 0]), 'metric'))
  const under = withPlace(play(drawLine('row'), [tap([20, 4]), hover([26, 4])]).ghost, step([0, 0]), 'metric')
  expect(under?.says).toBeUndefined()
})
