import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { addFeatures } from '#geo/plan/edits-features'
import type { Plan } from '#geo/plan/plan'
import type { Progress } from '#geo/siting/question'
import type { Suggestion } from '#geo/siting/suggestion'
import { stockFor } from '#geo/stocking/programme'
import { edit, openPlan } from '../../../src/state/actions'
import { changeBoxes, discardSuggestion, movePlace, takePlace } from '../../../src/state/boxes-actions'
import { createPlannerStore } from '../../../src/state/store'
import { createSitingEngine } from '../../../src/worker/siting-engine'
import {
  drawCurve,
  lookForPlaces,
  proveAnswer,
  startSiting,
  stopCurve,
  stopLooking,
} from '../../../src/worker/siting-schedule'
import { smallPlan, stationFeature, step } from '../../support/builders'
import { type Call, fakeWorkers, settled } from './fake-port'
import { answered, evaluation } from './results'

let stop = () => {}
beforeEach(() => vi.useFakeTimers())
afterEach(() => {
  stop()
  vi.useRealTimers()
})

/** A suggestion of `count` new stations that can be told apart by its coverage. */
function suggestion(coverage: number, count = 2): Suggestion {
  const stations = Array.from({ length: count }, (_, i) => ({
    id: `station-${i + 3}`,
    at: step([2 * i, 0.5]),
    new: true,
    reused: false,
    bought: true,
    bee: 'osmia-lignaria' as const,
    females: 50,
    femaleCocoons: 112,
    maleCocoons: 202,
    tubes: 167,
    sure: 123,
    releases: [{ date: '2026-04-06', females: 112, males: 202 }],
    why: '',
    source: 'open' as const,
    notes: { mud: null, shelter: null, isInLane: false },
    gains: [],
  }))
  return {
    year: 2026,
    before: { coverage: 0.4 },
    after: { coverage },
    bound: { coverage: 0.95, proven: false, method: 'lagrangian' },
    cost: 100 * count,
    stations,
    dropped: [],
    spared: [],
    inHand: [],
    plantings: [],
    places: { count: 100, thinned: 100, pitch: 5 },
    thinning: null,
    reached: null,
    cautions: [],
  }
}

const found = (coverage: number, count?: number) => ({ ok: true, value: suggestion(coverage, count), problems: [] })
const tell = (call: Call, progress: Progress, best: Suggestion | null = null) =>
  (call.input[4] as (progress: Progress, best: Suggestion | null) => void)(progress, best)

function started() {
  const store = createPlannerStore(2026)
  const workers = fakeWorkers()
  stop = startSiting(store, createSitingEngine(store, workers.makePort))
  openPlan(store, smallPlan(), 'plan-1')
  return { store, workers, results: () => store.getState().results, boxes: () => store.getState().boxes }
}

async function looked() {
  const all = started()
  lookForPlaces(all.store)
  await settled()
  await all.workers.of('suggest')[0]!.answer(found(0.8))
  return all
}

describe('a search', () => {
  it('runs with progress, then is ready with the plan that it answers', async () => {
    const { store, workers, results, boxes } = started()
    lookForPlaces(store)
    await settled()
    expect(results().suggestion).toEqual({ status: 'running', last: null, revision: 1 })
    const progress: Progress = { stage: 'search', coverage: 0.7, bound: null }
    tell(workers.calls[0]!, progress)
    expect(boxes().progress).toEqual(progress)
    await workers.calls[0]!.answer(found(0.8))
    const { plan } = store.getState().document
    expect(results().suggestion).toMatchObject({
      status: 'ready',
      value: { plan, year: 2026, suggestion: suggestion(0.8) },
    })
    expect(boxes().progress).toBeNull()
  })

  it('is ended by a newer one, which has a worker of its own', async () => {
    const { store, workers, results } = started()
    lookForPlaces(store)
    await settled()
    await vi.advanceTimersByTimeAsync(500)
    lookForPlaces(store)
    await settled()
    expect(workers.ended).toEqual([1])
    await workers.calls[0]!.answer(found(0.1))
    expect(results().suggestion.status).toBe('running')
    await workers.calls[1]!.answer(found(0.9))
    expect(results().suggestion).toMatchObject({ value: { suggestion: { after: { coverage: 0.9 } } } })
  })

  it('that is stopped ends its worker and keeps the answer before', async () => {
    const { store, workers, results, boxes } = await looked()
    lookForPlaces(store)
    await settled()
    await vi.advanceTimersByTimeAsync(500)
    tell(workers.of('suggest')[1]!, { stage: 'search', coverage: 0.9, bound: 0.9 })
    stopLooking(store)
    expect(workers.ended).toEqual([workers.of('suggest')[1]!.worker])
    // The bound of another question is none of this answer's.
    expect(results().suggestion).toMatchObject({ status: 'ready', value: { suggestion: suggestion(0.8) } })
    expect(boxes().progress).toBeNull()
  })

  it('tells its answer before what thinning costs is known, and keeps what was done to it since', async () => {
    const { store, workers, results, boxes } = started()
    lookForPlaces(store)
    await settled()
    tell(workers.calls[0]!, { stage: 'report', coverage: 0.8, bound: null }, suggestion(0.8))
    expect(results().suggestion).toMatchObject({ status: 'ready', value: { suggestion: { thinning: null } } })
    expect(boxes().progress).toBeNull()
    takePlace(store, 'station-3', false)
    const thinning = { places: 100, doubled: 190, loss: 0.001 }
    await workers.calls[0]!.answer({ ok: true, value: { ...suggestion(0.8), thinning }, problems: [] })
    expect(results().suggestion).toMatchObject({ status: 'ready', value: { suggestion: { thinning } } })
    expect(boxes().left).toEqual(['station-3'])
  })

  it('that was told early and discarded does not come back', async () => {
    const { store, workers, results } = started()
    lookForPlaces(store)
    await settled()
    tell(workers.calls[0]!, { stage: 'report', coverage: 0.8, bound: null }, suggestion(0.8))
    discardSuggestion(store)
    await workers.calls[0]!.answer(found(0.8))
    expect(results().suggestion).toEqual({ status: 'idle' })
  })

  it('that is stopped keeps the best answer so far', async () => {
    const { store, workers, results, boxes } = started()
    lookForPlaces(store)
    await settled()
    tell(workers.calls[0]!, { stage: 'search', coverage: 0.7, bound: null }, suggestion(0.7))
    tell(workers.calls[0]!, { stage: 'search', coverage: 0.75, bound: null })
    stopLooking(store)
    expect(results().suggestion).toMatchObject({ status: 'ready', value: { suggestion: suggestion(0.7) } })
    expect(boxes().progress).toBeNull()
    lookForPlaces(store)
    await settled()
    stopLooking(store)
    expect(results().suggestion).toMatchObject({ status: 'ready', value: { suggestion: suggestion(0.7) } })
  })

  it('says why there is no answer', async () => {
    const { store, workers, results } = started()
    lookForPlaces(store)
    await settled()
    await workers.calls[0]!.fail('out of memory')
    expect(results().suggestion).toMatchObject({ status: 'failed', reason: expect.stringContaining('out of memory') })
  })

  it('is forgotten with its plan', async () => {
    const { store, workers, results } = started()
    lookForPlaces(store)
    await settled()
    openPlan(store, smallPlan(), 'plan-2')
    await workers.calls[0]!.answer(found(0.8))
    expect(results().suggestion).toEqual({ status: 'idle' })
  })
})

describe('a proof', () => {
  it('keeps what was moved by hand where the layout is the same, and drops it where a better one was found', async () => {
    const { store, workers, boxes } = await looked()
    movePlace(store, 'station-3', step([1, 1]))
    proveAnswer(store)
    await settled()
    await workers.of('suggest')[1]!.answer(found(0.8))
    expect(boxes().moved).toEqual({ 'station-3': step([1, 1]) })
    proveAnswer(store)
    await settled()
    await workers.of('suggest')[2]!.answer(found(0.9, 1))
    expect(boxes().moved).toEqual({})
  })

  it('that is stopped never loosens the bound', async () => {
    const { store, workers, results } = await looked()
    proveAnswer(store)
    await settled()
    tell(workers.of('suggest')[1]!, { stage: 'proof', coverage: 0.8, bound: 0.99 })
    stopLooking(store)
    expect(results().suggestion).toMatchObject({ value: { suggestion: { bound: { coverage: 0.95 } } } })
  })
})

describe('trying out', () => {
  it('counts the plan with the taken stations, and again without one that is left', async () => {
    const { store, workers, results } = await looked()
    const first = workers.of('tryPlan')[0]!
    const ids = (call: Call) => (call.input[0] as ReturnType<typeof smallPlan>).features.map(({ id }) => id)
    expect(ids(first)).toEqual(expect.arrayContaining(['station-3', 'station-4']))
    await first.answer(answered(70))
    expect(results().trial).toMatchObject({ status: 'ready', value: evaluation(70) })
    takePlace(store, 'station-4', false)
    await settled()
    expect(ids(workers.of('tryPlan')[1]!)).not.toContain('station-4')
  })

  it('follows a station under way at once, and counts from the ground up when it rests', async () => {
    const { store, workers, results } = await looked()
    await workers.of('tryPlan')[0]!.answer(answered(70))
    for (let i = 1; i <= 10; i += 1) movePlace(store, 'station-3', step([i, 0]))
    await settled()
    expect(workers.of('moveStation').map(({ input }) => input)).toEqual([['station-3', step([1, 0])]])
    await workers.of('moveStation')[0]!.answer(evaluation(60))
    expect(results().trial).toMatchObject({ status: 'running', last: evaluation(60) })
    expect(workers.of('moveStation')[1]!.input).toEqual(['station-3', step([10, 0])])
    await workers.of('moveStation')[1]!.answer(evaluation(61))
    await vi.advanceTimersByTimeAsync(250)
    expect(workers.of('tryPlan')).toHaveLength(2)
  })

  it('is not begun anew when what thinning costs becomes known', async () => {
    const { store, workers } = started()
    lookForPlaces(store)
    await settled()
    tell(workers.calls[0]!, { stage: 'report', coverage: 0.8, bound: null }, suggestion(0.8))
    await settled()
    const thinning = { places: 100, doubled: 190, loss: 0.001 }
    await workers.calls[0]!.answer({ ok: true, value: { ...suggestion(0.8), thinning }, problems: [] })
    await workers.of('tryPlan')[0]!.answer(answered(70))
    await vi.advanceTimersByTimeAsync(1000)
    expect(workers.of('tryPlan')).toHaveLength(1)
  })

  it('has a worker that is loaded while the search is under way', async () => {
    const { store, workers } = started()
    const loaded = vi.fn(workers.makePort)
    const engine = createSitingEngine(store, loaded)
    engine.look(smallPlan(), 2026, { question: { kind: 'stations', count: 1 } } as never)
    await settled()
    expect(loaded).toHaveBeenCalledTimes(2)
    engine.tryOut(smallPlan(), 2026)
    await settled()
    expect(workers.of('tryPlan')).toHaveLength(1)
    expect(loaded).toHaveBeenCalledTimes(2)
    engine.stop()
  })

  it('lets a slow trial of an answer before finish, and goes on in its worker', async () => {
    const { store, workers, results } = await looked()
    const [slow] = workers.of('tryPlan')
    await vi.advanceTimersByTimeAsync(3000)
    lookForPlaces(store)
    await settled()
    await workers.of('suggest')[1]!.answer(found(0.9))
    expect(workers.ended).not.toContain(slow!.worker)
    await slow!.answer(answered(70))
    expect(results().trial).toMatchObject({ status: 'running', last: null })
    expect(workers.of('tryPlan')[1]!.worker).toBe(slow!.worker)
    await workers.of('tryPlan')[1]!.answer(answered(71))
    expect(results().trial).toMatchObject({ status: 'ready', value: evaluation(71) })
  })

  it('shows the trial before as outdated while the newest is waited for', async () => {
    const { store, workers, results } = await looked()
    takePlace(store, 'station-4', false)
    await workers.of('tryPlan')[0]!.answer(answered(70))
    expect(results().trial).toMatchObject({ status: 'running', last: evaluation(70) })
    await workers.of('tryPlan')[1]!.answer(answered(71))
    expect(results().trial).toMatchObject({ status: 'ready', value: evaluation(71) })
  })

  it('stops with the plan that was asked about', async () => {
    const { store, workers } = await looked()
    await workers.of('tryPlan')[0]!.answer(answered(70))
    edit(store, addFeatures([stationFeature('station-9')]))
    changeBoxes(store, { left: ['station-3'] })
    await vi.advanceTimersByTimeAsync(500)
    expect(workers.of('tryPlan')).toHaveLength(1)
  })
})

describe('a stock', () => {
  it('is tried out, so that the map can be shaded by it, and not with what was tried before', async () => {
    const { store, workers, results } = await looked()
    await workers.of('tryPlan')[0]!.answer(answered(70))
    changeBoxes(store, { ask: { ...store.getState().boxes.ask, kind: 'stock', target: 0.5 } })
    lookForPlaces(store)
    await settled()
    expect(results().trial).toEqual({ status: 'idle' })
    const outcome = stockFor(smallPlan(), 2026, { target: 0.5 })
    await workers.of('stock')[0]!.answer(outcome)
    const [tried] = workers.of('tryPlan').at(-1)!.input as [Plan]
    const released = tried.seasons.find(({ year }) => year === 2026)!.stations!['station-1']!.releases![0]!.females
    expect(released).toBe(outcome.ok && outcome.value.stations[0]!.femaleCocoons)
  })
})

describe('the curve', () => {
  const point = (count: number, coverage: number) => ({ count, coverage, bound: 0.95, cost: 100 * count })
  const told = (call: Call, ...points: readonly ReturnType<typeof point>[]) => {
    for (const each of points) (call.input[4] as (told: typeof each) => void)(each)
  }

  it('goes some beyond the answer with as many cocoons each, and is seen as it grows', async () => {
    const { store, workers, results } = await looked()
    drawCurve(store)
    await settled()
    const [call] = workers.of('curve')
    expect(call!.input[3]).toEqual({ most: 5, cocoons: 112 })
    told(call!, point(0, 0.4), point(1, 0.6))
    expect(results().curve).toMatchObject({ status: 'running', last: [point(0, 0.4), point(1, 0.6)] })
    const value = [point(0, 0.4), point(1, 0.6), point(2, 0.8)]
    await call!.answer({ ok: true, value, problems: [] })
    expect(results().curve).toMatchObject({ status: 'ready', value })
  })

  it('runs through the answer to the same question, never falling after it', async () => {
    const { store, workers, results } = await looked()
    drawCurve(store)
    await settled()
    const value = [point(0, 0.4), point(1, 0.6), point(2, 0.78), point(3, 0.79), point(4, 0.9)]
    await workers.of('curve')[0]!.answer({ ok: true, value, problems: [] })
    const { curve } = results()
    expect(curve.status === 'ready' && curve.value.map(({ coverage }) => coverage)).toEqual([0.4, 0.6, 0.8, 0.8, 0.9])
  })

  it('keeps what is there when it is stopped', async () => {
    const { store, workers, results } = await looked()
    drawCurve(store)
    await settled()
    told(workers.of('curve')[0]!, point(0, 0.4), point(1, 0.6))
    stopCurve(store)
    told(workers.of('curve')[0]!, point(2, 0.7))
    expect(results().curve).toMatchObject({ status: 'ready', value: [{ count: 0 }, { count: 1 }] })
  })
})
