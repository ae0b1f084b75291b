import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { moveFeatures } from '#geo/plan/edits-features'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { engineApi } from '../../../src/worker/engine.worker'
import { type KeepingApi, keepingPlan, tellingChanges } from '../../../src/worker/kept-plan'
import { Lane } from '../../../src/worker/lane'
import type { EnginePort } from '../../../src/worker/protocol'
import { smallPlan } from '../../support/builders'
import { settled } from './fake-port'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** Workers with the real engine on the far side of a border that clones, and what crossed it. */
function workers() {
  const crossed: { readonly worker: number; readonly isWhole: boolean }[] = []
  let made = 0
  /** Until it is let go, a worker keeps its answers to itself. */
  let gate: Promise<unknown> = Promise.resolve()
  const makePort = (): EnginePort => {
    made += 1
    const worker = made
    const far = keepingPlan(engineApi)
    const near = Object.fromEntries(
      Object.entries(far).map(([name, call]) => [
        name,
        async (...input: unknown[]) => {
          const [first] = input as [object]
          if (typeof first === 'object') crossed.push({ worker, isWhole: 'whole' in first })
          const answer = (call as (...input: unknown[]) => unknown)(...structuredClone(input))
          await gate
          return structuredClone(answer)
        },
      ]),
    )
    return { api: tellingChanges(near as Parameters<typeof tellingChanges>[0]), terminate: () => {} }
  }
  return {
    makePort,
    crossed,
    hold: (until: Promise<unknown>) => {
      gate = until
    },
  }
}

const moved = (plan: Plan, lng: number) => moveFeatures(['station-1'], { lng, lat: 0 }).apply(plan)

async function asked(lane: Lane, plan: Plan) {
  const onAnswer = vi.fn()
  const onFailure = vi.fn()
  lane.request({ kind: 'report', call: api => api.evaluate(plan, 2026), onAnswer, onFailure })
  await vi.advanceTimersByTimeAsync(10)
  return { onAnswer, onFailure }
}

const reportOf = (plan: Plan) => {
  const outcome = evaluate(plan, 2026)
  return outcome.ok && outcome.value
}

it('asks a worker for a plan as it is now, though only the first crosses whole', async () => {
  const { makePort, crossed } = workers()
  const lane = new Lane(makePort, { patience: 1000 })
  let plan = smallPlan()
  for (let i = 0; i < 4; i += 1) {
    const { onAnswer } = await asked(lane, plan)
    expect(onAnswer.mock.calls[0]![0].value.report).toEqual(reportOf(plan))
    plan = moved(plan, 1e-4)
  }
  expect(crossed.map(({ isWhole }) => isWhole)).toEqual([true, false, false, false])
})

it('tells the whole plan to a worker that stands in for one that was ended', async () => {
  const { makePort, crossed, hold } = workers()
  const lane = new Lane(makePort, { patience: 1000 })
  const plan = smallPlan()
  await asked(lane, plan)
  hold(new Promise(() => {}))
  await asked(lane, moved(plan, 1e-4))
  lane.withdraw('report')
  hold(Promise.resolve())
  const { onAnswer } = await asked(lane, moved(plan, 2e-4))
  await vi.advanceTimersByTimeAsync(1000)
  expect(onAnswer.mock.calls[0]![0].value.report).toEqual(reportOf(moved(plan, 2e-4)))
  expect(crossed).toEqual([
    { worker: 1, isWhole: true },
    { worker: 1, isWhole: false },
    { worker: 2, isWhole: true },
  ])
})

it('tells the whole plan again after a call that failed, which may never have arrived', async () => {
  const told: unknown[] = []
  const ask = vi.fn(async (change: unknown) => {
    told.push(change)
    if (told.length === 2) throw new Error('could not be cloned')
    return null
  })
  const api = tellingChanges({ ranges: ask } as unknown as { [Name in keyof KeepingApi]: never })
  await api.ranges(smallPlan(), 2026)
  await expect(api.ranges(smallPlan({ name: 'B' }), 2026)).rejects.toThrow('could not be cloned')
  await settled()
  await api.ranges(smallPlan({ name: 'C' }), 2026)
  expect(told.map(change => Object.keys(change as object).includes('whole'))).toEqual([true, false, true])
})
