import fc from 'fast-check'
import { expect, test } from 'vitest'
import { samplePlanting } from '#geo/coverage/demand'
import { setProperties } from '#geo/plan/edits-features'
import { planeAt } from '#geo/space/plane'
import { measured } from '../../../src/panels/measures'
import { settingsOf } from '../../../src/state/selectors'
import { rowFeature, smallPlan } from '../../support/builders'

const length = fc.double({ min: 0.3, max: 20, noNaN: true })
const figures = fc.record(
  { spacing: length, rowSpacing: length, count: fc.integer({ min: 1, max: 60 }) },
  { requiredKeys: ['spacing', 'rowSpacing'] },
)

test('a row is counted as it is laid out, before and after its figures change', () => {
  fc.assert(
    fc.property(figures, figures, (first, then) => {
      const row = rowFeature('row-9', first, [0, 0], [30, 7])
      let plan = smallPlan({ features: [row] })
      for (const patch of [first, then]) {
        plan = setProperties('row-9', patch).apply(plan)
        const [feature] = plan.features as [typeof row]
        const { points, area } = samplePlanting(feature, settingsOf(plan).crops.apple!, planeAt([-1.7, 52.2]))
        const found = measured(plan, feature)
        expect(found.plants).toBe(points.length / 2)
        expect(found.area).toBeCloseTo((points.length / 2) * area, 6)
      }
    }),
    { seed: 20260408, numRuns: 200 },
  )
})

test('lengths come from a plane close by, wherever the plan lies', () => {
  const row = rowFeature('row-9', {}, [0, 0], [30, 0])
  // 0.003 degrees along the parallel of 52.2 degrees on WGS84: a cos(lat) / sqrt(1 - e2 sin2(lat)) a radian.
  const lat = (52.2 * Math.PI) / 180
  const radius = (6378137 * Math.cos(lat)) / Math.sqrt(1 - 0.00669437999 * Math.sin(lat) ** 2)
  const length = radius * ((0.003 * Math.PI) / 180)
  expect(Math.abs(measured(smallPlan(), row).length! - length)).toBeLessThan(1e-6 * length)
})

test('a spacing of nothing has no count, rather than an endless one', () => {
  expect(measured(smallPlan(), rowFeature('row-9', { spacing: 0 }))).toMatchObject({ plants: null, area: null })
})
