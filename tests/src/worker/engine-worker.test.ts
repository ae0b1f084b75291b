import { describe, expect, it } from 'vitest'
import { moveFeatures } from '#geo/plan/edits-features'
import { evaluate } from '#geo/report/evaluate'
import { compareSeasons } from '#geo/seasons/compare'
import { project } from '#geo/seasons/project'
import { yearRecord } from '#geo/seasons/year'
import { suggest } from '#geo/siting/suggest'
import { stockFor } from '#geo/stocking/programme'
import { releaseAdvice } from '#geo/timing/release-advice'
import { engineApi } from '../../../src/worker/engine.worker'
import { smallPlan, step } from '../../support/builders'

const plan = smallPlan()

describe('the worker', () => {
  it('answers the report of geo, with the coverage of every point of the cloud', () => {
    const outcome = engineApi.evaluate(plan, 2026)
    const expected = evaluate(plan, 2026)
    if (!outcome.ok || !expected.ok) throw new Error('no report')
    expect(outcome.value.report).toEqual(expected.value)
    expect(outcome.value.coverage.length).toBe(engineApi.cloud(plan, 2026).lngLat.length / 2)
    expect(outcome.value.coverage.length).toBeGreaterThan(20)
  })

  it('moves a station to the coverage that the moved plan has, and back', () => {
    engineApi.evaluate(plan, 2026)
    const moved = engineApi.moveStation('station-1', step([15, 1]))!
    const expected = evaluate(moveFeatures(['station-1'], { lng: 1e-3, lat: 0 }).apply(plan), 2026)
    if (!expected.ok) throw new Error('no report')
    // The plane's middle moves with the station in the one and stays in the other: no more than rounding on the ground.
    expect(moved.report.orchard.coverage).toBeCloseTo(expected.value.orchard.coverage!, 6)
    expect(moved.report.plantings.every(({ limit }) => limit === null)).toBe(true)
    const back = engineApi.moveStation('station-1', step([5, 1]))!
    const start = evaluate(plan, 2026)
    expect(back.report.orchard.coverage).toBeCloseTo((start.ok && start.value.orchard.coverage) || 0, 12)
    expect(moved.report.orchard.coverage).not.toBeCloseTo(back.report.orchard.coverage!, 3)
  })

  it('moves nothing where the season does not use the station, or no season is laid out', () => {
    engineApi.evaluate(plan, 2026)
    expect(engineApi.moveStation('station-2', step([0, 0]))).toBeNull()
    expect(engineApi.evaluate(plan, 1999).ok).toBe(false)
    expect(engineApi.moveStation('station-1', step([0, 0]))).toBeNull()
  })

  it('tells who works where on a day of the season laid out last, as its stations stand', () => {
    expect(engineApi.evaluate(plan, 1999).ok).toBe(false)
    expect(engineApi.day(114)).toBeNull()
    engineApi.evaluate(plan, 2026)
    const day = engineApi.day(114)!
    expect(day.work.length).toBe(engineApi.cloud(plan, 2026).lngLat.length / 2)
    expect(day.stations[0]!.females).toBeGreaterThan(1)
    engineApi.moveStation('station-1', step([60, 60]))
    const moved = engineApi.day(114)!
    expect(moved.stations[0]!.females).toBe(day.stations[0]!.females)
    expect(moved.plantings[0]!.met).toBeLessThan(day.plantings[0]!.met!)
  })

  it('gives ranges round the report', () => {
    const outcome = evaluate(plan, 2026)
    const ranges = engineApi.ranges(plan, 2026)!
    const { coverage } = ranges.orchard
    const mid = (outcome.ok && outcome.value.orchard.coverage) || 0
    expect(coverage!.low).toBeLessThan(mid)
    expect(coverage!.high).toBeGreaterThanOrEqual(mid)
    expect(engineApi.ranges(plan, 1999)).toBeNull()
  })

  it('tries a plan out to the same coverage, without what holds plantings back', () => {
    const outcome = engineApi.tryPlan(plan, 2026)
    const expected = evaluate(plan, 2026)
    if (!outcome.ok || !expected.ok) throw new Error('no report')
    expect(outcome.value.report.orchard).toEqual(expected.value.orchard)
    expect(outcome.value.report.plantings.every(({ limit }) => limit === null)).toBe(true)
    expect(engineApi.moveStation('station-1', step([5, 1]))).not.toBeNull()
  })

  it('suggests what geo suggests, telling how far it is', async () => {
    const wish = { question: { kind: 'stations', count: 1 } } as const
    const stages: string[] = []
    const outcome = await engineApi.suggest(plan, 2026, wish, null, ({ stage }) => stages.push(stage))
    expect(outcome).toEqual(await suggest(plan, 2026, wish))
    expect(stages).toContain('bound')
    expect(engineApi.stock(plan, 2026, { target: 0.6 })).toEqual(stockFor(plan, 2026, { target: 0.6 }))
  })

  it('sets seasons side by side and looks ahead as geo does', () => {
    expect(engineApi.compare(plan, 2025, 2026)).toEqual(compareSeasons(plan, 2025, 2026))
    expect(engineApi.project(plan, 2026, 2, { care: 'outside' })).toEqual(project(plan, 2026, 2, { care: 'outside' }))
    expect(engineApi.yearRecord(plan, 2026, {})).toEqual(yearRecord(plan, 2026))
  })

  it('advises on release dates as geo does', () => {
    const options = { scope: 'orchard', batches: 2 } as const
    expect(engineApi.releaseAdvice(plan, 2026, options)).toEqual(releaseAdvice(plan, 2026, options))
    expect(engineApi.releaseAdvice(plan, 1999, options).ok).toBe(false)
  })

  it('refuses a season that is not there', async () => {
    const wish = { question: { kind: 'stations', count: 1 } } as const
    expect((await engineApi.suggest(plan, 1999, wish, null, () => {})).ok).toBe(false)
    expect(engineApi.tryPlan(plan, 1999).ok).toBe(false)
  })
})
