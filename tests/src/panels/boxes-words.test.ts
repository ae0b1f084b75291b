import { expect, it } from 'vitest'
import type { Suggestion } from '#geo/siting/suggestion'
import { answerSentence, moveWords, thinningWords } from '../../../src/panels/boxes/answer-words'
import { shoppingForPlaces } from '../../../src/panels/boxes/shopping'
import { noBoxes } from '../../../src/state/boxes'
import { smallPlan, step } from '../../support/builders'

const station = (id: string, isNew: boolean) => ({
  id,
  at: step([1, 0.5]),
  new: isNew,
  reused: false,
  bought: true,
  bee: 'osmia-lignaria' as const,
  females: 45,
  femaleCocoons: 100,
  maleCocoons: 180,
  tubes: 150,
  sure: 112,
  releases: [],
  why: '',
  source: 'open' as const,
  notes: { mud: null, shelter: null, isInLane: false },
  gains: [],
})

const question = { kind: 'target', coverage: 0.9 } as const
const suggestion: Suggestion = {
  year: 2026,
  before: { coverage: 0.4 },
  after: { coverage: 0.93 },
  bound: { coverage: null, proven: false, method: 'lagrangian', cost: 100 },
  cost: 120,
  stations: [station('station-9', true), station('a', false)],
  dropped: ['b', 'c'],
  spared: ['b'],
  inHand: [
    { id: 'a', femaleCocoons: 60, maleCocoons: 100, tubes: 90 },
    { id: 'b', femaleCocoons: 40, maleCocoons: 80, tubes: 60 },
  ],
  plantings: [],
  places: { count: 100, thinned: 100, pitch: 5 },
  thinning: null,
  reached: true,
  cautions: [],
}

it('a station that a target does without is spared, one that the grower gives up is given up', () => {
  const sentence = answerSentence(suggestion, question)
  expect(sentence).toContain('one moved, one of yours spared and 1 station given up')
})

it('what was weighed is told where stations may move for a target, and only there', () => {
  expect(moveWords({ question, roles: { a: 'move' } })).toMatch(/only some of them was not tried/)
  expect(moveWords({ question, roles: { a: 'drop' } })).toBe('')
  expect(moveWords({ question: { kind: 'stations', count: 1 }, roles: { a: 'move' } })).toBe('')
})

it('a thinning that was not measured is said, save for places of one’s own, which are not thinned', () => {
  expect(thinningWords(suggestion)).toMatch(/has not been measured/)
  expect(thinningWords({ ...suggestion, places: { count: 3, thinned: 3, pitch: 0 } })).toBe('')
})

it('the shopping list leaves out what stations that are stocked anew have, unless they are left as they are', () => {
  const answer = { plan: smallPlan(), year: 2026, wish: { question }, suggestion }
  const count = (boxes = noBoxes) =>
    shoppingForPlaces(answer, boxes).lines.map(({ item, count: many }) => [item.split(',')[0], many])
  // 200 females, 360 males and 300 tubes, of which 100, 180 and 150 are there.
  expect(count()).toEqual([
    ['Stations', 1],
    ['Female cocoons', 100],
    ['Male cocoons', 180],
    ['Tubes', 150],
  ])
  // Left as it is, station a keeps its own: 100, 180 and 150 for the new one, of which b gives 40, 80 and 60.
  expect(count({ ...noBoxes, left: ['a'] })).toEqual([
    ['Stations', 1],
    ['Female cocoons', 60],
    ['Male cocoons', 100],
    ['Tubes', 90],
  ])
})
