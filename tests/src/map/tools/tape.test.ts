import { describe, expect, it } from 'vitest'
import { planeAt } from '#geo/space/plane'
import { drawTape } from '../../../../src/map/tools/draw-tape'
import { tapeText } from '../../../../src/map/tools/tape'
import { smallPlan } from '../../../support/builders'
import { hover, play, tap } from './events'

const plane = planeAt([-1.7, 52.2])
const at = (x: number, y: number) => plane.toLngLat({ x, y })

describe('measuring', () => {
  it('tells a way in metres or feet, and the ground that it goes round', () => {
    const two = { points: [at(0, 0), at(30, 40)], isArea: false }
    expect(tapeText(two, 'metric')).toBe('50 m, bearing 37°')
    expect(tapeText(two, 'us')).toBe('164 ft, bearing 37°')
    const three = { points: [at(0, 0), at(30, 40), at(30, 52.5)], isArea: false }
    expect(tapeText(three, 'metric')).toBe('62.5 m in 2 parts, the last 12.5 m')
    const field = { points: [at(0, 0), at(40, 0), at(40, 50), at(0, 50)], isArea: true }
    expect(tapeText(field, 'metric')).toBe('0.2 ha, 180 m round')
  })

  it('leaves the plan alone, and keeps a way or, closed on its first point, an area', () => {
    const plan = smallPlan({ features: [] })
    const way = play(drawTape, [tap([20, 4]), tap([26, 4]), tap([26, 4])], { plan })
    expect(way.edits).toEqual([])
    expect(way.last?.tape).toMatchObject({ isArea: false })
    expect(way.last?.tape?.points).toHaveLength(2)
    const area = play(drawTape, [tap([20, 4]), tap([26, 4]), tap([26, 9]), tap([20, 4])], { plan, isSnapping: false })
    expect(area.last?.tape).toMatchObject({ isArea: true })
    expect(area.last?.isDone).toBe(true)
    const under = play(drawTape, [tap([20, 4]), hover([26, 4])], { plan })
    expect(under.ghost?.says).toMatch(/m, bearing 90°$/)
  })
})
