import { describe, expect, it } from 'vitest'
import type { Feature, Geometry } from '#geo/plan/plan'
import { planeAt } from '#geo/space/plane'
import { measureText } from '../../../src/map/measure'
import { blockFeature, rowFeature, smallPlan } from '../../support/builders'

const plane = planeAt([-1.7, 52.2])
const line = (length: number): Geometry => ({
  type: 'LineString',
  coordinates: [plane.toLngLat({ x: 0, y: 0 }), plane.toLngLat({ x: 0, y: length })],
})
const outline = (width: number, length: number): Geometry => {
  const corners = [
    [0, 0],
    [width, 0],
    [width, length],
    [0, length],
    [0, 0],
  ] as const
  return { type: 'Polygon', coordinates: [corners.map(([x, y]) => plane.toLngLat({ x, y }))] }
}
const spacingOf = (crop: string) => (crop === 'apple' ? { spacing: 2.5, rowSpacing: 4 } : null)
const context = { plan: smallPlan(), plane, spacingOf }
const american = { ...context, plan: smallPlan({ units: 'us' }) }

describe('what is under way in figures', () => {
  it('counts the plants of a row, both ends included', () => {
    expect(measureText({ kind: 'row', geometry: line(92) }, context)).toBe('92 m, about 37 plants')
    expect(measureText({ kind: 'row', geometry: line(1) }, context)).toBe('1 m, about 1 plant')
    expect(measureText({ kind: 'row', geometry: line(92) }, american)).toBe('302 ft, about 37 plants')
  })

  it('goes by the figures of the row itself', () => {
    const feature = (properties: Parameters<typeof rowFeature>[1]): Feature => rowFeature('row-1', properties)
    const text = (properties: Parameters<typeof rowFeature>[1]) =>
      measureText({ kind: 'row', geometry: line(92), feature: feature(properties) }, context)
    expect(text({ spacing: 1 })).toBe('92 m, about 93 plants')
    expect(text({ count: 12 })).toBe('92 m, about 12 plants')
    expect(text({ crop: 'unheard-of' })).toBe('92 m')
  })

  it('lays out a block under way along its longest side, and a drawn one by its own direction', () => {
    // Along 40 m: 5 rows of 16 plants; across: 10 rows of 8.
    expect(measureText({ kind: 'block', geometry: outline(20, 40) }, context)).toBe('800 m², about 80 plants')
    const feature = blockFeature('block-1', { bearing: 90, spacing: 15 })
    expect(measureText({ kind: 'block', geometry: outline(20, 40), feature }, context)).toBe('800 m², about 10 plants')
    expect(measureText({ kind: 'block', geometry: outline(20, 90) }, american)).toBe('0.445 acres, about 180 plants')
  })

  it('reckons a large block from its area', () => {
    expect(measureText({ kind: 'block', geometry: outline(500, 400) }, context)).toBe('20 ha, about 20,000 plants')
  })

  it('gives other outlines their area, lines their length, marks nothing', () => {
    expect(measureText({ kind: 'forage', geometry: outline(20, 40) }, context)).toBe('800 m²')
    expect(measureText({ kind: 'windbreak', geometry: line(40) }, context)).toBe('40 m')
    expect(measureText({ kind: 'block', geometry: line(40) }, context)).toBe('40 m')
    expect(measureText({ kind: 'mud', geometry: { type: 'Point', coordinates: [0, 0] } }, context)).toBe('')
  })

  it('measures where the first thing of a plan is drawn, wherever its plane lies', () => {
    const bare = { ...context, plan: smallPlan({ features: [] }), plane: planeAt([120, -30]) }
    expect(measureText({ kind: 'windbreak', geometry: line(400) }, bare)).toBe('400 m')
  })
})
