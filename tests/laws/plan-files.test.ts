import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { planFileSchema } from '#geo/file/schema'
import { writePlan } from '#geo/file/write'
import {
  beeLimits,
  cropLimits,
  featureLimits,
  type Limit,
  releaseLimits,
  siteLimits,
  stationLimits,
} from '#geo/plan/limits'
import { hasErrors, problemText } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'
import { type Content, featureOf, sampleFile } from '../geo/file/sample-file'

const seed = 20260417
const example = new URL('../geo/file/fixtures/worked-example.plan.geojson', import.meta.url)
const bases: Content[] = [sampleFile(), JSON.parse(readFileSync(example, 'utf8'))]

type Place = { readonly group: Content; readonly key: string | number }

/** Every member and list entry of a content, from the top down. */
function placesIn(group: Content): Place[] {
  if (typeof group !== 'object' || group === null) return []
  const keys = Array.isArray(group) ? group.keys() : Object.keys(group)
  return [...keys].flatMap(key => [{ group, key }, ...placesIn(group[key])])
}

/** The groups that may carry members of their own: all but lists and maps from ids to groups. */
function groupsIn(value: Content, key = ''): Content[] {
  if (typeof value !== 'object' || value === null) return []
  const isMap = /^(bloom|stations|records|fruitSet|losses|crops|parameters|osmia-.*)$/.test(key)
  const inner = Object.entries(value).flatMap(([name, part]) => groupsIn(part, name))
  return Array.isArray(value) || isMap ? inner : [value, ...inner]
}

describe('what is not known', () => {
  const forbidden = ['__proto__', 'constructor', 'prototype']
  const name = fc.string({ minLength: 1, maxLength: 8, unit: 'grapheme' }).filter(key => !forbidden.includes(key))
  const member = fc.record({
    where: fc.nat(),
    key: name.map(key => `x${key}`),
    value: fc.jsonValue({ maxDepth: 3 }),
  })

  it('survives being read and written, at every level', () => {
    fc.assert(
      fc.property(fc.array(member, { maxLength: 6 }), members => {
        const content = sampleFile()
        for (const { where, key, value } of members) {
          const groups = groupsIn(content)
          groups[where % groups.length][key] = value
        }
        const text = JSON.stringify(content)
        if (/"(__proto__|constructor|prototype)":/.test(text)) return
        const outcome = readPlan(text)
        expect(outcome.problems).toEqual([])
        const written = outcome.ok ? writePlan(outcome.value) : ''
        expect(JSON.parse(written)).toEqual(JSON.parse(text))
        const again = readPlan(written)
        expect(again.ok && writePlan(again.value)).toBe(written)
      }),
      { seed, numRuns: 300 },
    )
  })
})

const values: readonly Content[] = [
  ...[null, true, false, '', 'x', 'wide', [], {}, [[]], [1, 2], [181, 91], { a: 1 }],
  ...[-1, 0, 1, 0.5, 2.5, 1e-12, 1e9, 1e300, -1e300, 45, 1950, 2025, 2026, 2026.5, 2031],
  ...['2026-02-30', '2026-05-01', '2025-12-24', '9999-12-31', '0000-01-01', '2026-04-24'],
  ...['apple', 'row-3', 's1', 'plum', 'pond', 'row', 'block', 'toString', 'osmia-cornuta', 'Point', 'Polygon'],
]

const names = values.filter(value => typeof value === 'string' || typeof value === 'number').map(String)

const change = fc.record({
  way: fc.constantFrom('remove', 'replace', 'repeat', 'swap', 'wrap', 'scale', 'rename'),
  where: fc.nat(),
  other: fc.nat(),
})
type Change = { readonly way: string; readonly where: number; readonly other: number }

function apply(content: Content, { way, where, other }: Change): void {
  const places = placesIn(content)
  const place = places[where % places.length]
  if (place === undefined) return
  const { group, key } = place
  const far = places[other % places.length]!
  const value = group[key]
  if (way === 'remove' && Array.isArray(group)) group.splice(Number(key), 1)
  else if (way === 'remove') delete group[key]
  else if (way === 'replace') group[key] = structuredClone(values[other % values.length])
  else if (way === 'repeat' && Array.isArray(group)) group.push(structuredClone(value))
  else if (way === 'repeat') group[`${key}2`] = structuredClone(value)
  else if (way === 'swap')
    [group[key], far.group[far.key]] = [structuredClone(far.group[far.key]), structuredClone(value)]
  else if (way === 'alike') group[key] = alike(value, other)
  else if (way === 'wrap') group[key] = [value]
  else if (way === 'scale' && typeof value === 'number') group[key] = value * 10 ** ((other % 13) - 6)
  else if (way === 'rename' && !Array.isArray(group)) group[names[other % names.length]!] = value
}

/** Another value of the same type, so that the shape stays sound and only the meaning turns odd. */
function alike(value: Content, other: number): Content {
  const pool = values.filter(each => typeof each === typeof value && !Array.isArray(each) && each !== null)
  return Array.isArray(value) || value === null || pool.length === 0 ? value : pool[other % pool.length]
}

const textChange = fc.record({
  way: fc.constantFrom('cut', 'drop', 'insert', 'none', 'none', 'none'),
  where: fc.nat(),
  other: fc.nat(),
})

function applyToText(text: string, { way, where, other }: Change): string {
  const index = where % text.length
  if (way === 'cut') return text.slice(0, index)
  if (way === 'drop') return text.slice(0, index) + text.slice(index + 1 + (other % 5))
  if (way === 'insert') return text.slice(0, index) + '{}[],:"0-e\\9n '.charAt(other % 14) + text.slice(index)
  return text
}

const spoilt = fc
  .record({
    base: fc.nat({ max: bases.length - 1 }),
    changes: fc.array(change, { minLength: 1, maxLength: 3 }),
    textChange,
  })
  .map(({ base, changes, textChange: last }) => {
    const content = structuredClone(bases[base])
    for (const each of changes) apply(content, each)
    return applyToText(JSON.stringify(content), last)
  })

/** Files that mostly keep their shape: figures, dates and names changed, things repeated and left out. */
const odd = fc
  .record({
    base: fc.nat({ max: bases.length - 1 }),
    changes: fc.array(
      fc.record({
        way: fc.constantFrom('alike', 'alike', 'alike', 'scale', 'scale', 'repeat', 'remove'),
        where: fc.nat(),
        other: fc.nat(),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ base, changes }) => {
    const content = structuredClone(bases[base])
    for (const each of changes) apply(content, each)
    return JSON.stringify(content)
  })

/** Members of a report that may be null; null anywhere else is a number that was lost. */
const mayBeNull = new Set(
  'coverage reach timingMatch supplied shortBy busiestDay limit distance timing numbers competition tubes tube'.split(
    ' ',
  ),
)

function lostNumbers(value: Content, path: string): string[] {
  if (value === null) return [path]
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path]
  if (typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, part]) =>
    part === null && mayBeNull.has(key) ? [] : lostNumbers(part, `${path}.${key}`),
  )
}

const validate = new Ajv2020({ strict: false }).compile(planFileSchema())
/** Faults that a schema cannot see. */
const beyondSchema = new Set([
  'forbidden-key',
  'number-too-large',
  'too-deep',
  'file-empty',
  'not-json',
  'file-too-large',
])

describe('hundreds of files spoilt at random', () => {
  it('give a plan or problems in words, never an exception; a plan can be written and read back', () => {
    const seen = new Map<string, number>()
    fc.assert(
      fc.property(spoilt, text => {
        const outcome = readPlan(text)
        const key = outcome.ok ? (hasErrors(outcome.problems) ? 'to be put right' : 'fine') : 'refused'
        seen.set(key, (seen.get(key) ?? 0) + 1)
        for (const problem of outcome.problems) {
          expect(problemText(problem)).toMatch(/^.{20,}\.$/)
          expect(problemText(problem)).not.toMatch(/undefined|NaN|Infinity|\[object/)
        }
        if (outcome.ok) {
          const written = writePlan(outcome.value)
          const again = readPlan(written)
          expect(again.ok && writePlan(again.value)).toBe(written)
        } else {
          expect(hasErrors(outcome.problems)).toBe(true)
        }
        if (!outcome.problems.some(({ code }) => beyondSchema.has(code))) {
          expect(validate(JSON.parse(text))).toBe(outcome.ok)
        }
      }),
      { seed, numRuns: 800 },
    )
    // So that the law says something about each of the three.
    expect(Math.min(...['fine', 'to be put right', 'refused'].map(key => seen.get(key) ?? 0))).toBeGreaterThan(30)
  })
})

it('plans without an error are evaluated without an exception, and every number of the report is there', () => {
  let evaluated = 0
  fc.assert(
    fc.property(odd, text => {
      const outcome = readPlan(text)
      if (!outcome.ok) return
      for (const year of new Set(outcome.value.seasons.map(season => season.year))) {
        const report = evaluate(outcome.value, year)
        if (!hasErrors(outcome.problems)) expect(report.ok).toBe(true)
        if (!report.ok) continue
        evaluated += 1
        expect(lostNumbers(JSON.parse(JSON.stringify(report.value)), 'report')).toEqual([])
        for (const problem of report.value.problems) expect(problemText(problem)).not.toMatch(/undefined|NaN|\[object/)
      }
    }),
    { seed, numRuns: 400 },
  )
  expect(evaluated).toBeGreaterThan(120)
})

it('figures at the very ends of what they may be, three at a time, are evaluated too', () => {
  type Setting = (content: Content) => void
  const ends = ({ low, high, isAbove }: Limit): number[] => [isAbove ? low + 1e-6 : low, high]
  const settings = (limits: object, groupOf: (content: Content) => Content): Setting[] =>
    Object.entries(limits).flatMap(([name, limit]) =>
      ends(limit).map(
        (end): Setting =>
          content => {
            groupOf(content)[name] = end
          },
      ),
    )
  const all = [
    ...sampleFile().features.flatMap(({ id, properties }: Content) =>
      settings(
        featureLimits[properties.kind as keyof typeof featureLimits],
        content => featureOf(content, id).properties,
      ),
    ),
    ...settings(cropLimits, content => content.plan.crops['apple-late']),
    ...settings(siteLimits, content => content.plan.parameters),
    ...settings(beeLimits, content => content.plan.parameters['osmia-bicornis']),
    ...settings(stationLimits, content => content.plan.seasons[0].stations.s1),
    ...settings(releaseLimits, content => content.plan.seasons[0].stations.s1.releases[0]),
  ] as readonly Setting[]
  let evaluated = 0
  const three = fc.tuple(fc.constantFrom(...all), fc.constantFrom(...all), fc.constantFrom(...all))
  fc.assert(
    fc.property(three, chosen => {
      const content = sampleFile()
      for (const set of chosen) set(content)
      const outcome = readPlan(JSON.stringify(content))
      // Some ends do not go together: a spacing of a hair fills the plan, two thresholds pass each other.
      if (!outcome.ok || hasErrors(outcome.problems)) return
      const report = evaluate(outcome.value, 2026)
      expect(report.ok && lostNumbers(JSON.parse(JSON.stringify(report.value)), 'report')).toEqual([])
      evaluated += 1
    }),
    { seed, numRuns: 300 },
  )
  expect(evaluated).toBeGreaterThan(200)
})
