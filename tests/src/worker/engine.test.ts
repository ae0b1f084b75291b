import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { setPlanMembers } from '#geo/plan/edits-settings'
import { edit, openPlan } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { createEngine } from '../../../src/worker/engine'
import { smallPlan } from '../../support/builders'
import { fakeWorkers, settled } from './fake-port'
import { answered, cloud, evaluation, ranges } from './results'

const at = [-1.7, 52.2] as const

async function started() {
  const store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1')
  const workers = fakeWorkers()
  const engine = createEngine(store, workers.makePort)
  const plan = () => store.getState().document.plan!
  return { store, workers, engine, plan, results: () => store.getState().results }
}

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('a result', () => {
  it('runs, then is ready with the revision that it answers', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2026)
    expect(results().report).toEqual({ status: 'running', last: null, revision: 1 })
    await settled()
    expect(workers.calls).toMatchObject([{ name: 'evaluate', input: [plan(), 2026] }])
    await workers.calls[0]!.answer(answered(50))
    expect(results().report).toEqual({ status: 'ready', value: evaluation(50), revision: 1 })
  })

  it('stays to be seen while the next one runs, and when that fails', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2026)
    await settled()
    await workers.calls[0]!.answer(answered(50))
    engine.evaluate(plan(), 2026)
    expect(results().report).toMatchObject({ status: 'running', last: evaluation(50) })
    await settled()
    await workers.calls[1]!.fail('out of memory')
    expect(results().report).toMatchObject({ status: 'failed', last: evaluation(50) })
    expect(results().report).toHaveProperty('reason', expect.stringContaining('broke off: out of memory'))
  })

  it('fails with the problem in words where the plan allows none', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2030)
    await settled()
    const note = { code: 'no-plants', severity: 'warning', at: 'row-1', values: { name: 'Row 1' } }
    const error = { code: 'no-season', severity: 'error', at: '', values: { year: 2030, seasons: '2025, 2026' } }
    await workers.calls[0]!.answer({ ok: false, problems: [note, error, error] })
    expect(results().report).toMatchObject({
      status: 'failed',
      reason: 'The plan has no season 2030. Seasons in the plan: 2025, 2026. There is 1 more problem like this.',
    })
  })

  it('is idle where a plan without a report has no ranges', async () => {
    const { workers, engine, plan, results } = await started()
    engine.ranges(plan(), 2026)
    await settled()
    await workers.calls[0]!.answer(null)
    expect(results().ranges).toEqual({ status: 'idle' })
  })

  it('is asked again of a new worker after the old one died', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2026)
    await settled()
    workers.dies(1, 'script not found')
    expect(results().report).toHaveProperty('reason', expect.stringContaining('script not found'))
    expect(workers.ended).toEqual([1])
    engine.evaluate(plan(), 2026)
    await settled()
    expect(workers.calls[1]!.worker).toBe(2)
    await workers.calls[1]!.answer(answered(50))
    expect(results().report.status).toBe('ready')
  })

  it('fails where no worker can be started', async () => {
    const { store, plan, results } = await started()
    const engine = createEngine(store, () => {
      throw new Error('workers are not allowed here')
    })
    engine.evaluate(plan(), 2026)
    await settled()
    expect(results().report).toHaveProperty('reason', expect.stringContaining('workers are not allowed here'))
  })
})

describe('a newer request', () => {
  it('ends the older one: its answer is dropped', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2025)
    await settled()
    engine.evaluate(plan(), 2026)
    await workers.calls[0]!.answer(answered(1))
    expect(results().report).toMatchObject({ status: 'running', last: null })
    await workers.calls[1]!.answer(answered(2))
    expect(results().report).toMatchObject({ status: 'ready', value: evaluation(2) })
  })

  it('takes the place of what only waits', async () => {
    const { workers, engine, plan } = await started()
    engine.evaluate(plan(), 2024)
    await settled()
    engine.evaluate(plan(), 2025)
    engine.evaluate(plan(), 2026)
    await workers.calls[0]!.answer(answered(1))
    expect(workers.calls.map(({ input }) => input[1])).toEqual([2024, 2026])
  })

  it('does not wait for a calculation that takes too long: the worker is ended', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2025)
    await settled()
    engine.evaluate(plan(), 2026)
    await vi.advanceTimersByTimeAsync(999)
    expect(workers.ended).toEqual([])
    await vi.advanceTimersByTimeAsync(1)
    expect(workers.ended).toEqual([1])
    expect(workers.calls[1]).toMatchObject({ worker: 2, input: [plan(), 2026] })
    await workers.calls[0]!.answer(answered(1))
    expect(results().report.status).toBe('running')
    await workers.calls[1]!.answer(answered(2))
    expect(results().report).toMatchObject({ status: 'ready', value: evaluation(2) })
  })

  it('ends at once what has taken too long already', async () => {
    const { workers, engine, plan } = await started()
    engine.evaluate(plan(), 2025)
    await vi.advanceTimersByTimeAsync(5000)
    expect(workers.ended).toEqual([])
    engine.evaluate(plan(), 2026)
    await settled()
    expect(workers.ended).toEqual([1])
    expect(workers.calls[1]!.worker).toBe(2)
  })

  it('does not wait for ranges, which have a worker of their own', async () => {
    const { workers, engine, plan, results } = await started()
    engine.ranges(plan(), 2026)
    engine.evaluate(plan(), 2026)
    await settled()
    expect(workers.calls.map(({ name, worker }) => [name, worker])).toEqual([
      ['ranges', 1],
      ['evaluate', 2],
    ])
    await workers.of('evaluate')[0]!.answer(answered(1))
    await workers.of('ranges')[0]!.answer(ranges)
    expect(results()).toMatchObject({ report: { status: 'ready' }, ranges: { status: 'ready', value: ranges } })
  })

  it('asks for the points before the coverage that belongs to them', async () => {
    const { workers, engine, plan, results } = await started()
    engine.cloud(plan(), 2026)
    engine.evaluate(plan(), 2026)
    await settled()
    expect(workers.calls.map(({ name }) => name)).toEqual(['cloud'])
    await workers.calls[0]!.answer(cloud)
    expect(results().cloud).toEqual({ status: 'ready', value: cloud, revision: 1 })
    expect(workers.calls.map(({ name }) => name)).toEqual(['cloud', 'evaluate'])
  })
})

describe('an outdated result', () => {
  it('stays to be seen, and what was asked for it is not answered', async () => {
    const { store, workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2026)
    await settled()
    edit(store, setPlanMembers({ name: 'Hill' }))
    engine.outdate(['report', 'ranges'])
    await workers.calls[0]!.answer(answered(1))
    expect(results().report).toEqual({ status: 'running', last: null, revision: 2 })
    expect(results().ranges).toEqual({ status: 'idle' })
  })

  it('is up to date again when it is confirmed', async () => {
    const { store, workers, engine, plan, results } = await started()
    engine.cloud(plan(), 2026)
    await settled()
    await workers.calls[0]!.answer(cloud)
    edit(store, setPlanMembers({ name: 'Hill' }))
    engine.confirm('cloud')
    expect(results().cloud).toEqual({ status: 'ready', value: cloud, revision: 2 })
    expect(workers.calls).toHaveLength(1)
  })

  it('is forgotten with the plan, also when an answer comes late', async () => {
    const { workers, engine, plan, results } = await started()
    engine.evaluate(plan(), 2026)
    engine.ranges(plan(), 2026)
    await settled()
    engine.clear()
    for (const call of workers.calls) await call.answer(call.name === 'ranges' ? ranges : answered(1))
    expect(results()).toMatchObject({ report: { status: 'idle' }, ranges: { status: 'idle' } })
  })
})

describe('a day', () => {
  it('is answered one at a time, the newest next, and every answer is shown', async () => {
    const { workers, engine, results } = await started()
    for (const day of [100, 101, 102]) engine.day(day)
    await settled()
    await workers.calls[0]!.answer({ day: 100 })
    expect(results().day).toEqual({ status: 'ready', value: { day: 100 }, revision: 1 })
    expect(workers.calls.map(({ input }) => input)).toEqual([[100], [102]])
    await workers.calls[1]!.answer({ day: 102 })
    expect(results().day).toMatchObject({ value: { day: 102 } })
  })

  it('is forgotten when it is left, also when an answer comes late, and where no season is laid out', async () => {
    const { workers, engine, results } = await started()
    engine.day(100)
    await settled()
    engine.day(null)
    await workers.calls[0]!.answer({ day: 100 })
    expect(results().day).toEqual({ status: 'idle' })
    engine.day(100)
    await settled()
    await workers.calls[1]!.answer(null)
    expect(results().day).toEqual({ status: 'idle' })
    engine.day(100)
    await settled()
    await workers.calls[2]!.fail('out of memory')
    expect(results().day).toMatchObject({ status: 'failed', last: null })
  })
})

describe('a station under way', () => {
  it('has at most one move asked for, and only the newest waiting', async () => {
    const { workers, engine, results } = await started()
    for (let i = 0; i < 10; i += 1) engine.moveStation('station-1', [i, 0])
    await settled()
    expect(workers.calls.map(({ input }) => input)).toEqual([['station-1', [0, 0]]])
    await workers.calls[0]!.answer(evaluation(10))
    expect(results().report).toEqual({ status: 'running', last: evaluation(10), revision: 1 })
    expect(workers.calls.map(({ input }) => input)).toEqual([
      ['station-1', [0, 0]],
      ['station-1', [9, 0]],
    ])
    await workers.calls[1]!.answer(evaluation(19))
    expect(results().report).toMatchObject({ status: 'running', last: evaluation(19) })
    expect(workers.calls).toHaveLength(2)
  })

  it('leaves the result as it is where the worker has no answer', async () => {
    const { workers, engine, results } = await started()
    engine.moveStation('station-2', at)
    await settled()
    await workers.calls[0]!.answer(null)
    expect(results().report).toEqual({ status: 'idle' })
  })

  it('does not speak after the evaluation that follows', async () => {
    const { workers, engine, plan, results } = await started()
    engine.moveStation('station-1', at)
    await settled()
    engine.moveStation('station-1', [0, 0])
    engine.evaluate(plan(), 2026)
    await workers.of('moveStation')[0]!.answer(evaluation(10))
    expect(results().report).toMatchObject({ status: 'running', last: null })
    expect(workers.of('moveStation')).toHaveLength(1)
    await workers.of('evaluate')[0]!.answer(answered(2))
    expect(results().report).toMatchObject({ status: 'ready', value: evaluation(2) })
  })
})
