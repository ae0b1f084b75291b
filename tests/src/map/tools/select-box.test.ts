import { describe, expect, it } from 'vitest'
import { selectBox } from '../../../../src/map/tools/select-box'
import { drag, hover, play, press, release, tap } from './events'

const touch = { pointer: 'touch' } as const
const all = ['row-1', 'row-2', 'station-1', 'station-2']

describe('a box', () => {
  it.each(['mouse', 'touch'] as const)('is pulled open and selects what lies wholly in it: %s', pointer => {
    const events = [press([-1, -1], { pointer }), drag([5, 1], { pointer }), release([11, 2], { pointer })]
    const { answers, selection, last } = play(selectBox, events)
    // The map must not move along.
    expect(answers[0]?.isCaptured).toBe(true)
    expect(selection).toEqual(all)
    expect(last?.isDone).toBe(true)
    expect(play(selectBox, events.slice(0, 2)).ghost?.box).toHaveLength(2)
  })

  it('is made by two presses across from each other, whichever comes first', () => {
    expect(play(selectBox, [press([-1, 2], touch), tap([-1, 2], touch)]).status.points).toBe(1)
    const events = [press([-1, 2]), tap([-1, 2]), hover([3, 0]), press([11, -1]), tap([11, -1])]
    expect(play(selectBox, events).selection).toEqual(all)
    expect(play(selectBox, events.slice(0, 3)).ghost?.box).toHaveLength(2)
  })

  it('keeps its first corner while two fingers move the map, and forgets a pull that they end', () => {
    const corner = [press([-1, 2], touch), tap([-1, 2], touch)]
    const pinched = [...corner, press([3, 3], touch), { type: 'lost' } as const]
    expect(play(selectBox, pinched).status.points).toBe(1)
    const { ghost, selection } = play(selectBox, [press([3, 3], touch), { type: 'lost' }, release([9, 9], touch)])
    expect(ghost).toBeNull()
    expect(selection).toEqual([])
  })

  it('selects the one thing under two presses on one spot', () => {
    const keyboard = { pointer: 'keyboard' } as const
    const twice = (at: readonly [number, number]) => [tap(at, keyboard), tap(at, keyboard)]
    expect(play(selectBox, twice([5, 1])).selection).toEqual(['station-1'])
    expect(play(selectBox, twice([30, 30])).notices).toEqual(['Nothing lies there.'])
  })

  it('adds with Shift and where the tool is kept, and says when it is empty', () => {
    const events = (shift: boolean) => [press([4, 0.5], { shift }), release([6, 1.5], { shift })]
    const selection = ['row-2']
    expect(play(selectBox, events(false), { selection }).selection).toEqual(['station-1'])
    expect(play(selectBox, events(true), { selection }).selection).toEqual(['row-2', 'station-1'])
    expect(play(selectBox, events(false), { selection, isKept: true }).selection).toEqual(['row-2', 'station-1'])
    const empty = play(selectBox, [press([30, 30]), release([31, 31])], { selection })
    expect(empty.selection).toEqual(['row-2'])
    expect(empty.notices).toEqual(['Nothing lies wholly inside this box.'])
  })

  it('is given up step by step', () => {
    const corner = [press([0, 0]), tap([0, 0])]
    expect(play(selectBox, [...corner, { type: 'back' }]).status.points).toBe(0)
    expect(play(selectBox, [...corner, { type: 'cancel' }]).last?.isLeft).toBeUndefined()
    expect(play(selectBox, [{ type: 'cancel' }]).last?.isLeft).toBe(true)
  })
})
