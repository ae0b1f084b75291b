import fc from 'fast-check'
import { convertIcsCalendar } from 'ts-ics'
import { describe, expect, test } from 'vitest'
import type { Task } from '#geo/calendar/task'
import { seasonTasks } from '#geo/calendar/tasks'
import { calendarFile } from '#geo/file/calendar'
import type { Plan } from '#geo/plan/plan'
import { addDays } from '#geo/time/day'
import { smallPlan } from '../../support/builders'
import { calendarFaults } from '../../support/calendar-linter'
import { scenarios } from '../../support/scenario-maker'
import { scenarioPlan } from '../../support/scenario-reports'

/** Rules of the file: RFC 5545. Read back by ts-ics, a reader of others' making. */

const made = '2026-03-01T12:30:45.678Z'

function tasksOf(plan: Plan, year: number): readonly Task[] {
  const outcome = seasonTasks(plan, year)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const readBack = (file: string) => convertIcsCalendar(undefined, file)
const dayOf = (date: Date) => date.toISOString().slice(0, 10)

describe.each(scenarios.flatMap(({ name, years }) => years.map(year => [name, year] as const)))(
  '%s in %i',
  (name, year) => {
    const plan = scenarioPlan(name)
    const tasks = tasksOf(plan, year)
    const file = calendarFile(plan, tasks, made)

    test('makes a file without fault', () => {
      expect(calendarFaults(file)).toEqual([])
    })

    test('is read by another program as the same tasks on the same days', () => {
      const { events = [], version, prodId } = readBack(file)
      expect({ version, prodId }).toEqual({ version: '2.0', prodId: '-//Nestreach//Season calendar//EN' })
      expect(events).toHaveLength(tasks.length)
      for (const [i, { uid, date, end = date, title, why, repeats }] of tasks.entries()) {
        const event = events[i]!
        expect(event).toMatchObject({ uid, summary: title, start: { type: 'DATE' }, end: { type: 'DATE' } })
        expect(dayOf(event.start.date)).toBe(date)
        // The last day is within: the end of whole days is the day after.
        expect(dayOf(event.end!.date)).toBe(addDays(end, 1))
        expect(event.description).toContain(why)
        expect(event.stamp.date.toISOString()).toBe('2026-03-01T12:30:45.000Z')
        expect(event.recurrenceRule?.count).toBe(repeats?.times)
        if (repeats !== undefined) expect(event.recurrenceRule).toMatchObject({ frequency: 'WEEKLY', interval: 1 })
      }
    })
  },
)

describe('a file', () => {
  const plan = smallPlan()
  const tasks = tasksOf(plan, 2026)
  const file = calendarFile(plan, tasks, made)

  test('is the same, byte for byte, for the same plan and moment', () => {
    expect(calendarFile(plan, tasksOf(smallPlan(), 2026), made)).toBe(file)
  })

  test('made later has the same entries with a higher number, so that it wins over the one before', () => {
    const later = calendarFile(plan, tasks, '2026-03-02T12:30:45Z')
    const numbers = (text: string) => readBack(text).events!.map(({ uid, sequence }) => [uid, sequence!] as const)
    for (const [i, [uid, sequence]] of numbers(later).entries()) {
      const [before, number] = numbers(file)[i]!
      expect(uid).toBe(before)
      expect(sequence).toBe(number + 24 * 60)
    }
  })

  test('gives the cautions in words, with lengths in the plan’s units', () => {
    const text = (units: 'metric' | 'us') =>
      readBack(calendarFile({ ...plan, units }, tasks, made)).events![0]!.description
    expect(text('metric')).toMatch(/Caution: Higher than 1\.8 m means a ladder/)
    expect(text('us')).toMatch(/Caution: Higher than 5\.9 ft means a ladder/)
  })

  test('needs a moment in UTC, and one event at least', () => {
    expect(() => calendarFile(plan, tasks, '2026-03-01T12:30:45+01:00')).toThrow(RangeError)
    expect(() => calendarFile(plan, tasks, '2026-03-01')).toThrow(RangeError)
    expect(() => calendarFile(plan, [], made)).toThrow(RangeError)
  })

  test('keeps line ends in a name as what they are, and leaves out what no text may hold', () => {
    const odd = { ...tasks[0]!, title: 'One\r\ntwo; three, four\\five\nsix\u0000seven\ud800' }
    const [event] = readBack(calendarFile(plan, [odd], made)).events!
    expect(event!.summary).toBe('One\ntwo; three, four\\five\nsix seven\ufffd')
    expect(calendarFaults(calendarFile(plan, [odd], made))).toEqual([])
  })
})

/** Names as people type them and as files may bring them: any letters, commas, line ends, length. */
const names = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 300 }),
  fc.string({ unit: 'binary', maxLength: 120 }),
  fc.string({ unit: fc.constantFrom('\\', ';', ',', '\n', '\r', ':', '"', 'n', 'é', '桜', '🐝'), maxLength: 200 }),
)

test('whatever the names, the file has no fault and is read back as it was meant', () => {
  fc.assert(
    fc.property(names, names, names, (name, stationName, lot) => {
      const releases = [{ date: '2026-04-06', females: 6, males: 9, lot }]
      const [season] = smallPlan().seasons.slice(1)
      const plan = smallPlan({
        name,
        seasons: [{ ...season!, stations: { 'station-1': { releases } } }],
        features: smallPlan().features.map(feature =>
          feature.id === 'station-1'
            ? ({ ...feature, properties: { kind: 'station', name: stationName } } as never)
            : feature,
        ),
      })
      const tasks = tasksOf(plan, 2026)
      const file = calendarFile(plan, tasks, made)
      expect(calendarFaults(file)).toEqual([])
      const { events = [] } = readBack(file)
      const shown = (text: string) => text.replace(/\p{Surrogate}/gu, '\ufffd').trim()
      expect(events.map(({ uid }) => uid)).toEqual(tasks.map(({ uid }) => uid))
      expect(events.map(({ summary }) => summary!.trim())).toEqual(tasks.map(({ title }) => shown(title)))
    }),
    { seed: 20260406, numRuns: 150 },
  )
})
