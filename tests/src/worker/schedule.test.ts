import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { moveFeatures, setGeometry } from '#geo/plan/edits-features'
import { setStationSeason } from '#geo/plan/edits-seasons'
import { setOwnCrop, setOwnParameter } from '#geo/plan/edits-settings'
import { closePlan, edit, openPlan, setTool, setView, setYear, undo } from '../../../src/state/actions'
import { createPlannerStore, idleResults } from '../../../src/state/store'
import { createEngine } from '../../../src/worker/engine'
import { dragStation, endDrag, startSchedule } from '../../../src/worker/schedule'
import { smallPlan, step } from '../../support/builders'
import { type Call, fakeWorkers, settled } from './fake-port'
import { answered, cloud, evaluation, ranges } from './results'

let stop = () => {}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  stop()
  vi.useRealTimers()
})

function started() {
  const store = createPlannerStore(2026)
  const workers = fakeWorkers()
  stop = startSchedule(store, createEngine(store, workers.makePort))
  const answers: Partial<Record<Call['name'], unknown>> = {
    cloud,
    ranges,
    moveStation: evaluation(60),
    day: { day: 114 },
  }
  const done = new Set<Call>()
  const due = () => workers.calls.find(call => !done.has(call))
  return {
    store,
    workers,
    pass: (milliseconds: number) => vi.advanceTimersByTimeAsync(milliseconds),
    /** Answers whatever is asked, until nothing more is. */
    async answerAll() {
      await settled()
      for (let call = due(); call !== undefined; call = due()) {
        done.add(call)
        // A new one each time, as what comes from a worker is.
        await call.answer(call.name === 'evaluate' ? answered(50) : answers[call.name])
      }
    },
    /** What was asked since this was last looked at. */
    asked: () => workers.calls.splice(0).map(({ name }) => name),
    results: () => store.getState().results,
  }
}

/** An open plan with all its results. */
async function evaluated() {
  const all = started()
  openPlan(all.store, smallPlan(), 'plan-1')
  await all.pass(0)
  await all.answerAll()
  await all.pass(600)
  await all.answerAll()
  all.asked()
  return all
}

describe('opening a plan', () => {
  it('asks for points and coverage at once, and for ranges when all is at rest', async () => {
    const { store, pass, answerAll, asked, results } = started()
    openPlan(store, smallPlan(), 'plan-1')
    await pass(0)
    await answerAll()
    expect(asked()).toEqual(['cloud', 'evaluate'])
    await pass(599)
    expect(asked()).toEqual([])
    await pass(1)
    await answerAll()
    expect(asked()).toEqual(['ranges'])
    expect(results()).toMatchObject({
      report: { status: 'ready' },
      cloud: { status: 'ready' },
      ranges: { status: 'ready' },
    })
  })

  it('counts for a plan that was open before the schedule began', async () => {
    const store = createPlannerStore(2026)
    openPlan(store, smallPlan(), 'plan-1')
    const workers = fakeWorkers()
    stop = startSchedule(store, createEngine(store, workers.makePort))
    await vi.advanceTimersByTimeAsync(0)
    expect(workers.calls.map(({ name }) => name)).toEqual(['cloud'])
  })

  it('drops what was asked for the plan before', async () => {
    const { store, workers, pass, results } = started()
    openPlan(store, smallPlan(), 'plan-1')
    await pass(0)
    const [late] = workers.calls
    openPlan(store, smallPlan(), 'plan-2')
    await late!.answer(cloud)
    expect(results().cloud).toEqual({ status: 'idle' })
  })

  it('is undone by closing: no results, nothing asked any more', async () => {
    const { store, pass, asked, results } = await evaluated()
    edit(store, moveFeatures(['station-1'], { lng: 1e-4, lat: 0 }))
    closePlan(store)
    await pass(5000)
    expect(asked()).toEqual([])
    expect(results()).toEqual(idleResults)
  })
})

describe('a change', () => {
  it('is evaluated 150 ms after the last one, with the old result greyed meanwhile', async () => {
    const { store, pass, answerAll, asked, results } = await evaluated()
    edit(store, setStationSeason(2026, 'station-1', { tubes: 80 }))
    expect(results()).toMatchObject({
      report: { status: 'running', last: evaluation(50) },
      ranges: { status: 'running' },
    })
    await pass(100)
    edit(store, setStationSeason(2026, 'station-1', { tubes: 90 }))
    await pass(149)
    expect(asked()).toEqual([])
    await pass(1)
    await answerAll()
    expect(asked()).toEqual(['evaluate'])
    expect(results().report).toMatchObject({ status: 'ready', revision: 3 })
    expect(results().cloud).toMatchObject({ status: 'ready', revision: 3 })
  })

  it('asks for the points again only where they can have changed', async () => {
    const { store, pass, answerAll, asked } = await evaluated()
    const askedBy = async (act: () => void) => {
      act()
      await pass(150)
      await answerAll()
      return asked()
    }
    const step = { lng: 1e-4, lat: 0 }
    expect(await askedBy(() => edit(store, moveFeatures(['station-1', 'forage-1'], step)))).toEqual(['evaluate'])
    expect(await askedBy(() => edit(store, setOwnParameter('site', 'spareTubes', 0.4)))).toEqual(['evaluate'])
    expect(await askedBy(() => edit(store, moveFeatures(['row-1'], step)))).toEqual(['cloud', 'evaluate'])
    expect(await askedBy(() => undo(store))).toEqual(['cloud', 'evaluate'])
    expect(await askedBy(() => edit(store, setOwnCrop('apple', { spacing: 3 })))).toEqual(['cloud', 'evaluate'])
    expect(await askedBy(() => setYear(store, 2025))).toEqual(['cloud', 'evaluate'])
    expect(await askedBy(() => setTool(store, 'row'))).toEqual([])
  })

  it('that is undone at once does not leave the points waiting', async () => {
    const { store, pass, answerAll, results } = await evaluated()
    edit(store, moveFeatures(['row-1'], { lng: 1e-4, lat: 0 }))
    undo(store)
    await pass(150)
    await answerAll()
    expect(results().cloud.status).toBe('ready')
  })

  it('puts the ranges off', async () => {
    const { store, pass, answerAll, asked } = await evaluated()
    edit(store, setStationSeason(2026, 'station-1', { tubes: 80 }))
    await pass(150)
    await answerAll()
    await pass(500)
    edit(store, setStationSeason(2026, 'station-1', { tubes: 90 }))
    await pass(150)
    await answerAll()
    expect(asked()).toEqual(['evaluate', 'evaluate'])
    await pass(600)
    expect(asked()).toEqual(['ranges'])
  })

  it('brings no ranges where the report failed', async () => {
    const { store, workers, pass } = started()
    openPlan(store, smallPlan({ features: [] }), 'plan-1')
    await pass(0)
    await workers.calls[0]!.answer(cloud)
    await workers.calls[1]!.answer({ ok: false, problems: [] })
    await pass(5000)
    expect(workers.calls).toHaveLength(2)
  })
})

describe('a station under way', () => {
  it('shows its coverage without a step of undo, and is evaluated after the edit that ends it', async () => {
    const { store, pass, answerAll, asked, results } = await evaluated()
    dragStation(store, 'station-1', step([6, 1]))
    await answerAll()
    expect(results().report).toMatchObject({ status: 'running', last: evaluation(60) })
    expect(results().ranges.status).toBe('running')
    expect(store.getState().document.past).toEqual([])
    edit(store, setGeometry('station-1', { type: 'Point', coordinates: step([6, 1]) }))
    endDrag(store)
    await pass(150)
    await answerAll()
    expect(asked()).toEqual(['moveStation', 'evaluate'])
    expect(results().report).toMatchObject({ status: 'ready', value: evaluation(50), revision: 2 })
  })

  it('is evaluated where it was when it is called off', async () => {
    const { store, workers, pass, answerAll, results } = await evaluated()
    dragStation(store, 'station-1', step([6, 1]))
    await answerAll()
    dragStation(store, 'station-1', step([7, 1]))
    const late = workers.calls.at(-1)!
    endDrag(store)
    await late.answer(evaluation(70))
    expect(results().report).toMatchObject({ status: 'running', last: evaluation(60) })
    await pass(150)
    await answerAll()
    expect(results().report).toMatchObject({ status: 'ready', value: evaluation(50), revision: 1 })
  })

  it('waits for the evaluation of a change just before it', async () => {
    const { store, answerAll, asked } = await evaluated()
    edit(store, setStationSeason(2026, 'station-1', { tubes: 80 }))
    dragStation(store, 'station-1', step([6, 1]))
    await answerAll()
    expect(asked()).toEqual(['evaluate', 'moveStation'])
  })

  it('keeps the ranges waiting until it is set down', async () => {
    const { store, pass, answerAll, asked } = await evaluated()
    edit(store, setStationSeason(2026, 'station-1', { tubes: 80 }))
    dragStation(store, 'station-1', step([6, 1]))
    await answerAll()
    await pass(5000)
    expect(asked()).toEqual(['evaluate', 'moveStation'])
    endDrag(store)
    await pass(150)
    await answerAll()
    await pass(600)
    expect(asked()).toEqual(['evaluate', 'ranges'])
  })

  it('asks for nothing when a press ends that moved nothing', async () => {
    const { store, pass, asked } = await evaluated()
    endDrag(store)
    await pass(5000)
    expect(asked()).toEqual([])
  })
})

describe('the day that is looked at', () => {
  it('is asked for when it is chosen, again with every new evaluation, and no more when it is left', async () => {
    const { store, pass, answerAll, asked, results } = await evaluated()
    setView(store, { day: 114 })
    await answerAll()
    expect(asked()).toEqual(['day'])
    expect(results().day).toMatchObject({ status: 'ready', value: { day: 114 } })
    edit(store, setStationSeason(2026, 'station-1', { tubes: 50 }))
    await answerAll()
    expect(asked()).toEqual([])
    await pass(150)
    await answerAll()
    expect(asked()).toEqual(['evaluate', 'day'])
    setView(store, { day: null })
    await answerAll()
    expect(asked()).toEqual([])
    expect(results().day).toEqual({ status: 'idle' })
  })

  it('follows a station that is pulled', async () => {
    const { store, answerAll, asked } = await evaluated()
    setView(store, { day: 114 })
    await answerAll()
    asked()
    dragStation(store, 'station-1', step([3, 3]))
    await answerAll()
    expect(asked()).toEqual(['moveStation', 'day'])
  })

  it('waits for a season to be laid out, and goes with the plan', async () => {
    const { store, answerAll, asked, results } = started()
    setView(store, { day: 114 })
    await answerAll()
    expect(asked()).toEqual([])
    openPlan(store, smallPlan(), 'plan-1')
    expect(store.getState().view.day).toBeNull()
    closePlan(store)
    expect(results().day).toEqual({ status: 'idle' })
  })
})
