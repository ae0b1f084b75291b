import { describe, expect, test } from 'vitest'
import type { PointCloud } from '#geo/report/report'
import { layersOf, single } from '../../../src/map/layers/change'
import { changeClass } from '../../../src/map/style'

/** A cloud of plantings with so many points each, all in one place. */
function cloudOf(counts: Readonly<Record<string, number>>): PointCloud {
  let end = 0
  const plantings = Object.entries(counts).map(([id, count]) => {
    const start = end
    end += count
    return { id, start, end, size: 3, isBed: false }
  })
  return { lngLat: new Float64Array(2 * end), plantings }
}

describe('a change of coverage', () => {
  test('is told from five points on, and is large from twenty on, either way alike', () => {
    expect([-1, -0.2, -0.19, -0.05, -0.04, 0, 0.04, 0.05, 0.19, 0.2, 1].map(changeClass)).toEqual([
      0, 0, 1, 1, 2, 2, 2, 3, 3, 4, 4,
    ])
  })

  test('goes by planting, wherever its points stand in either season’s list', () => {
    const then = { cloud: cloudOf({ gone: 1, old: 2 }), coverage: new Float32Array([0.9, 0.1, 0.8]) }
    const now = { cloud: cloudOf({ old: 2, young: 1 }), coverage: new Float32Array([0.5, 0.7, 1]) }
    const [gone, there] = layersOf(then, now)
    expect([...there.classes]).toEqual([4, 1, single])
    expect(gone.plantings.map(({ id }) => id)).toEqual(['gone'])
    expect([...gone.classes.slice(0, 1)]).toEqual([single])
  })

  test('is neither gain nor loss where a season has no bloom, or coverage is of other points', () => {
    const cloud = cloudOf({ row: 2 })
    const half = { cloud, coverage: new Float32Array([0.5, 0.5]) }
    expect([...layersOf({ cloud, coverage: new Float32Array([-1, 0.5]) }, half)[1].classes]).toEqual([single, 2])
    expect([...layersOf({ cloud, coverage: new Float32Array([0.5]) }, half)[1].classes]).toEqual([single, single])
  })
})
