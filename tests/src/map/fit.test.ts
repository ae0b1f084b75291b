import { describe, expect, it } from 'vitest'
import type { Picture } from '#geo/plan/plan'
import { wholeOf } from '../../../src/map/fit'
import { smallPlan, step } from '../../support/builders'

const corners = [step([20, 10]), step([30, 10]), step([20, 0])] as unknown as Picture['corners']
const picture: Picture = { id: 'p', width: 100, height: 100, corners }
const round = corners.concat([step([30, 0])])

describe('the whole plan', () => {
  it('is its pictures where nothing is drawn, all four corners of them', () => {
    const bare = smallPlan({ features: [], pictures: [picture] })
    expect(wholeOf(bare, null).map(at => at.map(value => Number(value.toFixed(9))))).toEqual(round)
    expect(wholeOf({ ...bare, pictures: [{ ...picture, isHidden: true }] }, null)).toEqual([])
  })

  it('is what is drawn, with the picture that is being placed and no other', () => {
    const plan = smallPlan({ pictures: [picture, { ...picture, id: 'q' }] })
    const drawn = wholeOf(plan, null).length
    expect(drawn).toBe(wholeOf(smallPlan(), null).length)
    expect(wholeOf(plan, 'p')).toHaveLength(drawn + 4)
  })
})
