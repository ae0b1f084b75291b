import { describe, expect, it } from 'vitest'
import { readWkt, wktText } from '#geo/file/wkt'

/** Examples of the standard (OGC 06-103r4, 7.2.6), where it has them. */
describe('well-known text', () => {
  it.each([
    ['POINT (10 10)', [{ shape: 'point', parts: [[[10, 10]]] }]],
    ['Point Z(1 1 80)', [{ shape: 'point', parts: [[[1, 1, 80]]] }]],
    [
      'LineString ( 10 10, 20 20, 30 40)',
      [
        {
          shape: 'line',
          parts: [
            [
              [10, 10],
              [20, 20],
              [30, 40],
            ],
          ],
        },
      ],
    ],
    [
      'MULTIPOINT ((10 10), (20 20))',
      [
        {
          shape: 'points',
          parts: [
            [
              [10, 10],
              [20, 20],
            ],
          ],
        },
      ],
    ],
    [
      'MULTIPOINT (10 10, 20 20)',
      [
        {
          shape: 'points',
          parts: [
            [
              [10, 10],
              [20, 20],
            ],
          ],
        },
      ],
    ],
    [
      'SRID=4326;MULTILINESTRING ((0 0, 1 1), (2 2, 3 3))',
      [
        {
          shape: 'line',
          parts: [
            [
              [0, 0],
              [1, 1],
            ],
          ],
        },
        {
          shape: 'line',
          parts: [
            [
              [2, 2],
              [3, 3],
            ],
          ],
        },
      ],
    ],
    [
      'POLYGON ((0 0, 4 0, 4 4, 0 0), (1 1, 2 1, 2 2, 1 1))',
      [
        {
          shape: 'ring',
          parts: [
            [
              [0, 0],
              [4, 0],
              [4, 4],
              [0, 0],
            ],
            [
              [1, 1],
              [2, 1],
              [2, 2],
              [1, 1],
            ],
          ],
        },
      ],
    ],
    [
      'MULTIPOLYGON (((0 0, 1 0, 1 1, 0 0)), ((5 5, 6 5, 6 6, 5 5)))',
      [
        {
          shape: 'ring',
          parts: [
            [
              [0, 0],
              [1, 0],
              [1, 1],
              [0, 0],
            ],
          ],
        },
        {
          shape: 'ring',
          parts: [
            [
              [5, 5],
              [6, 5],
              [6, 6],
              [5, 5],
            ],
          ],
        },
      ],
    ],
  ])('%s', (text, shapes) => expect(readWkt(text)).toEqual(shapes))

  it.each([
    ...['', 'POINT', 'POINT ()', 'POINT (1)', 'POINT (1 x)', 'POINT (1 2', 'POINT (1 2))', 'POINT (1 2) POINT (3 4)'],
    ...['CIRCLE (1 2 3)', '=POINT (1 2)', 'POINT EMPTY', 'POLYGON (((((1 2)))))', 'POINT (1e999 2)', 'POINT (NaN 2)'],
  ])('%s is none', text => expect(readWkt(text)).toBeNull())

  it('brackets without end are none, in no time', () => {
    const start = performance.now()
    for (const text of ['('.repeat(1e6), '(1 2,'.repeat(3e5), `(1 2${')'.repeat(1e6)}`])
      expect(readWkt(`POLYGON ${text}`)).toBeNull()
    expect(performance.now() - start).toBeLessThan(1000)
  })

  it('is written with heights only where all have one', () => {
    expect(
      wktText({
        type: 'LineString',
        coordinates: [
          [1, 2, 3],
          [4, 5, 6],
        ],
      }),
    ).toBe('LINESTRING Z (1 2 3, 4 5 6)')
    expect(
      wktText({
        type: 'LineString',
        coordinates: [
          [1, 2, 3],
          [4, 5],
        ],
      }),
    ).toBe('LINESTRING (1 2, 4 5)')
  })
})
