import { describe, expect, it } from 'vitest'
import { centreOf, planeAt, planeOf } from '#geo/space/plane'

describe('planeAt', () => {
  it('puts its centre at 0, 0 with east right and north up', () => {
    const plane = planeAt([-1.7, 52.2])
    expect(plane.toMetres([-1.7, 52.2]).x).toBeCloseTo(0, 9)
    expect(plane.toMetres([-1.699, 52.2]).x).toBeGreaterThan(60)
    expect(plane.toMetres([-1.7, 52.201]).y).toBeGreaterThan(110)
  })

  it('comes back to where it started within a hundredth of a millimetre, north and south', () => {
    for (const centre of [
      [-1.7, 52.2],
      [172.6, -43.5],
      [179.999, 10],
      [0, 0],
    ] as const) {
      const plane = planeAt(centre)
      for (const place of [
        { x: 0, y: 0 },
        { x: 1500, y: -900 },
        { x: -3000, y: 2500 },
      ]) {
        const back = plane.toMetres(plane.toLngLat(place))
        expect(Math.hypot(back.x - place.x, back.y - place.y)).toBeLessThan(1e-5)
      }
    }
  })

  it('refuses a centre that is no place', () => {
    expect(() => planeAt([Number.NaN, 0])).toThrow(RangeError)
  })
})

describe('centreOf', () => {
  it('is the middle of the box round every position, holes and points alike', () => {
    const features = [
      { geometry: { coordinates: [10, 50] } },
      {
        geometry: {
          coordinates: [
            [
              [11, 50],
              [12, 50.5],
              [11, 51],
              [11, 50],
            ],
          ],
        },
      },
    ]
    expect(centreOf(features)).toEqual([11, 50.5])
  })

  it('is null where there is nothing, and such a plan still has a plane', () => {
    expect(centreOf([])).toBeNull()
    expect(planeOf([]).centre).toEqual([0, 0])
  })
})
