import { describe, expect, it } from 'vitest'
import { stretches } from '../../../src/map/layers/dots'
import { type Rgb, squaresOn } from '../../../src/map/layers/squares'

const red: Rgb = [200, 40, 10]
const blue: Rgb = [0, 0, 250]

function pixels({ data }: ReturnType<typeof squaresOn>) {
  return Array.from({ length: data.length / 4 }, (_, i) => [...data.slice(4 * i, 4 * i + 4)])
}

const opacity = (squares: ReturnType<typeof squaresOn>) =>
  pixels(squares).reduce((sum, [, , , alpha = 0]) => sum + alpha / 255, 0)

describe('squares of pixels', () => {
  it('cover as much as their area, wherever they fall between pixels, on any screen', () => {
    for (const ratio of [1, 1.5, 2]) {
      for (const [x, y] of [
        [5, 5],
        [5.25, 4.8],
        [5.5, 5.5],
      ] as const) {
        const squares = squaresOn({ width: 10, height: 10, ratio })
        squares.add(x, y, 2.5, red)
        // An opacity is kept to 1/255, and no square touches more than 49 pixels.
        expect(Math.abs(opacity(squares) - (2.5 * ratio) ** 2)).toBeLessThan(49 / 255)
      }
    }
  })

  it('fill whole pixels with their colour and lie over what was there', () => {
    const squares = squaresOn({ width: 3, height: 1, ratio: 1 })
    squares.add(1, 0.5, 2, red)
    squares.add(2, 0.5, 2, blue)
    expect(pixels(squares)).toEqual([
      [...red, 255],
      [...blue, 255],
      [...blue, 255],
    ])
  })

  it('mix where both cover a part of a pixel, by the rule for layers', () => {
    const squares = squaresOn({ width: 1, height: 1, ratio: 1 })
    squares.add(0, 0.5, 1, red)
    squares.add(1, 0.5, 1, blue)
    // Half of blue over half of red: 1/2 + 1/2 * 1/2 of opacity, two thirds of it blue.
    const [[r = 0, g = 0, b = 0, alpha = 0] = []] = pixels(squares)
    for (const [found, expected] of [
      [alpha, 255 * 0.75],
      [r, 200 / 3],
      [g, 40 / 3],
      [b, (10 + 2 * 250) / 3],
    ] as const) {
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(2)
    }
  })

  it('are all gone for the next picture', () => {
    const squares = squaresOn({ width: 4, height: 4, ratio: 1 })
    squares.add(2, 2, 3, red)
    squares.clear()
    expect(opacity(squares)).toBe(0)
    squares.add(1, 1, 2, blue)
    expect(opacity(squares)).toBe(4)
  })

  it('stay within the picture', () => {
    const squares = squaresOn({ width: 4, height: 4, ratio: 1 })
    for (const [x, y] of [
      [-1, 2],
      [5, 2],
      [2, -9],
      [0, 0],
    ] as const)
      squares.add(x, y, 2, red)
    expect(opacity(squares)).toBe(1)
  })
})

describe('hatched squares', () => {
  it('are filled by stretches that never run round the edge', () => {
    const marked = Uint8Array.of(0, 1, 1, 1, 1, 0, 0, 0, 1)
    expect(stretches(marked, 3)).toEqual([
      { row: 0, from: 1, to: 3 },
      { row: 1, from: 0, to: 2 },
      { row: 2, from: 2, to: 3 },
    ])
  })
})
