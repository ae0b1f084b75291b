import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openPlan } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { Lane } from '../../../src/worker/lane'
import { createTimingEngine } from '../../../src/worker/timing-engine'
import { adviseRelease, startTiming, stopAdvice } from '../../../src/worker/timing-schedule'
import { smallPlan } from '../../support/builders'
import { fakeWorkers } from './fake-port'

/** What the lane of the advice has, ms. */
const patience = 200

let stop = () => {}
beforeEach(() => void vi.useFakeTimers())
afterEach(() => {
  stop()
  vi.useRealTimers()
})

function started() {
  const store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  const workers = fakeWorkers()
  stop = startTiming(store, createTimingEngine(store, workers.makePort))
  const ask = () => adviseRelease(store, { scope: 'orchard', batches: 2 })
  return { store, workers, ask, advice: () => store.getState().results.advice }
}

const refused = { ok: false, problems: [] }

describe('advice that was stopped and is asked for again before patience has run out', () => {
  it('is not failed by the failure of the one before, and its own failure is told', async () => {
    const { workers, ask, advice, store } = started()
    ask()
    stopAdvice(store)
    expect(advice()).toEqual({ status: 'idle' })
    await vi.advanceTimersByTimeAsync(patience / 2)
    ask()
    const [first] = workers.of('releaseAdvice')
    await first!.fail('too late')
    expect(advice().status).toBe('running')
    const [, second] = workers.of('releaseAdvice')
    expect(second!.worker).toBe(1)
    // The first one's patience is not the second one's.
    await vi.advanceTimersByTimeAsync(patience * 0.9)
    await second!.fail('out of memory')
    expect(advice()).toMatchObject({ status: 'failed', reason: expect.stringMatching(/broke off: out of memory/) })
    expect(workers.ended).toEqual([])
  })

  it('is not answered by the answer to the one before', async () => {
    const { workers, ask, advice, store } = started()
    ask()
    stopAdvice(store)
    ask()
    await workers.of('releaseAdvice')[0]!.answer(refused)
    expect(advice().status).toBe('running')
    expect(workers.of('releaseAdvice')).toHaveLength(2)
  })

  it('goes to a new worker once patience has run out, and nothing of the old one reaches it', async () => {
    const { workers, ask, advice, store } = started()
    ask()
    await vi.advanceTimersByTimeAsync(patience / 2)
    stopAdvice(store)
    ask()
    await vi.advanceTimersByTimeAsync(patience / 2)
    const [first, second] = workers.of('releaseAdvice')
    expect(second!.worker).toBe(2)
    expect(workers.ended).toEqual([1])
    await first!.fail('too late')
    await first!.answer(refused)
    workers.dies(1, 'the old worker died')
    expect(advice().status).toBe('running')
    await second!.fail('out of memory')
    expect(advice()).toMatchObject({ status: 'failed', reason: expect.stringMatching(/out of memory/) })
  })

  it('goes to a new worker where the old one dies first', async () => {
    const { workers, ask, advice, store } = started()
    ask()
    stopAdvice(store)
    ask()
    workers.dies(1, 'no memory')
    expect(advice().status).toBe('running')
    await vi.advanceTimersByTimeAsync(0)
    expect(workers.of('releaseAdvice').map(({ worker }) => worker)).toEqual([1, 2])
  })
})

describe('a lane', () => {
  it('goes on to what waits though telling of a dead worker throws', async () => {
    const workers = fakeWorkers()
    const lane = new Lane(workers.makePort, { patience })
    const job = (kind: string, onFailure: () => void) => ({
      kind,
      call: (api: ReturnType<typeof workers.makePort>['api']) => api.day(1),
      onAnswer: () => {},
      onFailure,
    })
    lane.request(
      job('a', () => {
        throw new Error('a fault in who listens')
      }),
    )
    lane.request(job('b', () => {}))
    expect(() => workers.dies(1, 'no memory')).toThrow('a fault in who listens')
    await vi.advanceTimersByTimeAsync(0)
    expect(workers.calls.map(({ worker }) => worker)).toEqual([1, 2])
  })

  it('tells a job whose worker failed as it was being made, and makes another for the next', async () => {
    let made = 0
    const workers = fakeWorkers()
    const lane = new Lane(
      onFailure => {
        made += 1
        const port = workers.makePort(onFailure)
        if (made === 1) onFailure('no room for a worker')
        return port
      },
      { patience },
    )
    const onFailure = vi.fn()
    const job = { kind: 'a', call: () => new Promise<never>(() => {}), onAnswer: () => {}, onFailure }
    lane.request(job)
    await vi.advanceTimersByTimeAsync(0)
    expect(onFailure).toHaveBeenCalledWith('no room for a worker')
    lane.request({ ...job, onFailure: () => {} })
    await vi.advanceTimersByTimeAsync(0)
    expect(made).toBe(2)
  })
})
