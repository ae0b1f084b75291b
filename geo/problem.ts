import { calendarWording } from './wording/calendar'
import { checkingWording } from './wording/checking'
import { fieldCheckWording } from './wording/field-checks'
import { importingWording } from './wording/importing'
import { pictureWording } from './wording/pictures'
import { readingWording } from './wording/reading'
import { timingWording } from './wording/timing'
import { timingCheckWording } from './wording/timing-checks'
import { weatherTableWording } from './wording/weather-table'
import type { Wording } from './wording/wording'
import { yearsWording } from './wording/years'

/**
 * Problems with what a grower gave us: plain data, worded in one place.
 * Our own mistakes throw instead (RangeError, TypeError).
 */
export type Severity = 'error' | 'warning' | 'note'

/** Figures and names that the sentence is made of. */
export type ProblemValues = Parameters<Wording>[0]

export type Problem = {
  readonly code: ProblemCode
  readonly severity: Severity
  /** A planting's or station's id, or a path in the file such as `features[3].geometry`; empty = the whole plan. */
  readonly at: string
  readonly values: ProblemValues
  /** Why the grower has put this field check aside; absent = it stands. */
  readonly setAside?: string
}

export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

const wording = {
  ...yearsWording,
  ...pictureWording,
  ...readingWording,
  ...checkingWording,
  ...fieldCheckWording,
  ...calendarWording,
  ...weatherTableWording,
  ...importingWording,
  ...timingWording,
  ...timingCheckWording,
  'no-season': v => `The plan has no season ${v.year}. Seasons in the plan: ${v.seasons || 'none'}.`,
  'no-seasons': () => `The plan has no season yet, so there is nothing to work out. Add a season to it.`,
  'no-bloom': v =>
    `${v.name} has no bloom dates for ${v.year}, so its coverage cannot be computed. Give it or its crop bloom dates.`,
  'no-forage-bloom': v => `The forage area ${v.name} has no bloom dates for ${v.year}; it is left out of the count.`,
  'forage-no-blossom': v =>
    `The forage area ${v.name} has no blossom density${v.isGiven ? ' above 0' : ''}, so it does not count. Give it the number of flowers per m² in full bloom.`,
  frost: v =>
    `Frost over ${v.name} in ${v.year}: ${v.minimum} °C on ${v.date}, at the stage of ${v.stage}${v.nights === 1 ? '' : `, the worst of ${v.nights} nights`}. Half an hour at ${v.tenth} °C kills a tenth of the flowers, at ${v.most} °C nine tenths (${v.source}). Look at the flowers: more bees cannot make up for frosted ones.`,
  'weather-gaps': v =>
    `The weather of ${v.year} lacks the temperatures of ${dayCount(v.days)} on which bees fly and something blooms, the first ${v.first}. ${v.days === 1 ? 'It counts as a typical spring day' : 'They count as typical spring days'}.`,
  'weather-no-rain': v =>
    `The weather of ${v.year} says nothing of rain on ${dayCount(v.days)} on which bees fly and something blooms. ${v.days === 1 ? 'It counts' : 'They count'} as dry.`,
  'no-plants': v => `${v.name} holds no plants: its rows or spacing leave no room for one.`,
} as const satisfies Record<string, Wording>

function dayCount(days: ProblemValues[string] | undefined): string {
  return days === 1 ? '1 day' : `${days} days`
}

export type ProblemCode = keyof typeof wording

/** The sentence for a problem; screen and terminal show the same one. */
export function problemText(problem: Problem): string {
  const word: Wording = wording[problem.code]
  return word(problem.values)
}

/** Whether a problem is about how stations are put up or when, rather than about what the coverage is worked out from. */
export function isFieldCheck({ code }: Problem): boolean {
  return Object.hasOwn(fieldCheckWording, code) || Object.hasOwn(timingCheckWording, code)
}

export function hasErrors(problems: readonly Problem[]): boolean {
  return problems.some(problem => problem.severity === 'error')
}
