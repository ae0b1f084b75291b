import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { labelOf } from '#geo/plan/edits'
import { setManyProperties } from '#geo/plan/edits-many'
import type { Plan } from '#geo/plan/plan'
import { sampleFile } from '../file/sample-file'

function sample(): Plan {
  const outcome = readPlan(JSON.stringify(sampleFile()))
  if (!outcome.ok) throw new TypeError('the sample does not open')
  return outcome.value
}

const propertiesOf = (plan: Plan, id: string) =>
  plan.features.find(feature => feature.id === id)!.properties as unknown as Readonly<Record<string, unknown>>

describe('the same values for many things', () => {
  const ids = ['row-3', 'block-1', 'trees', 'beds', 's1', 'hedge']

  it('reach each kind as far as it has them, and nothing else', () => {
    const before = sample()
    const after = setManyProperties(ids, { spacing: 3.25, planted: 2019 }).apply(before)
    for (const id of ['row-3', 'block-1'])
      expect(propertiesOf(after, id)).toMatchObject({ spacing: 3.25, planted: 2019 })
    for (const id of ['trees', 'beds', 'hedge']) {
      expect(propertiesOf(after, id).planted).toBe(2019)
      expect(propertiesOf(after, id)).not.toHaveProperty('spacing')
    }
    expect(propertiesOf(after, 's1')).toBe(propertiesOf(before, 's1'))
    const others = (plan: Plan) => plan.features.filter(({ id }) => !ids.includes(id))
    expect(others(after)).toEqual(others(before))
  })

  it('null takes a value away; what changes nothing gives the very same plan', () => {
    const plan = sample()
    const without = setManyProperties(['row-3'], { spacing: null }).apply(plan)
    expect(propertiesOf(without, 'row-3')).not.toHaveProperty('spacing')
    expect(setManyProperties(['row-3'], { spacing: null }).apply(without)).toBe(without)
    expect(setManyProperties(['s1'], { crop: 'pear' }).apply(plan)).toBe(plan)
  })

  it('undo names what was changed, and of how many', () => {
    const plan = sample()
    expect(labelOf(setManyProperties(ids, { crop: 'pear' }), plan)).toBe('Change crop of 4 things')
    expect(labelOf(setManyProperties(['row-3'], { spacing: 2 }), plan)).toMatch(/^Change spacing of row/i)
  })
})
