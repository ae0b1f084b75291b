import type { Task } from '../calendar/task'
import { thresholds } from '../data/thresholds'
import type { Plan, Units } from '../plan/plan'
import { foot } from '../space/units'
import { addDays, type IsoDate } from '../time/day'
import { cautionWith } from '../wording/cautions'

/** When the file is made: UTC, such as `2026-03-01T12:00:00Z`. */
export type Stamp = string

const stampForm = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(?:\.\d+)?Z$/

/**
 * Tasks as an iCalendar file: days without times of their own, so no time zones are needed.
 * Source: RFC 5545, Internet Calendaring and Scheduling Core Object Specification.
 */
export function calendarFile(plan: Pick<Plan, 'name' | 'units'>, tasks: readonly Task[], made: Stamp): string {
  if (tasks.length === 0) throw new RangeError('a calendar holds one event at least')
  const stamp = utcText(made)
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Nestreach//Season calendar//EN',
    'CALSCALE:GREGORIAN',
    ...(plan.name === '' ? [] : [`X-WR-CALNAME:${escaped(plan.name)}`]),
    ...tasks.flatMap(task => eventLines(task, { stamp, sequence: minutesOf(made), units: plan.units })),
    'END:VCALENDAR',
  ]
  return lines.map(line => `${folded(line)}\r\n`).join('')
}

type Making = { readonly stamp: string; readonly sequence: number; readonly units: Units }

function eventLines(task: Task, { stamp, sequence, units }: Making): readonly string[] {
  const { uid, date, end = date, repeats, title } = task
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp}`,
    `LAST-MODIFIED:${stamp}`,
    // Programs keep the higher of two: a file made later must win over one imported before, and nothing else counts them.
    `SEQUENCE:${sequence}`,
    `DTSTART;VALUE=DATE:${dayText(date)}`,
    `DTEND;VALUE=DATE:${dayText(addDays(end, 1))}`,
    ...(repeats === undefined ? [] : [recurrence(repeats)]),
    `SUMMARY:${escaped(title)}`,
    `DESCRIPTION:${escaped(description(task, units))}`,
    // A day with work in it is not a day on which nobody can be met.
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ]
}

function recurrence({ everyDays, times }: NonNullable<Task['repeats']>): string {
  const isWeekly = everyDays % 7 === 0
  const interval = isWeekly ? everyDays / 7 : everyDays
  return `RRULE:FREQ=${isWeekly ? 'WEEKLY' : 'DAILY'};INTERVAL=${interval};COUNT=${times}`
}

function description({ why, steps, cautions }: Task, units: Units): string {
  return [why, ...steps, ...cautions.map(key => `Caution: ${cautionWith(key, heightText(units)).short}`)].join('\n')
}

/** The height above which most people need a ladder. */
export function heightText(units: Units): string {
  const { value } = thresholds.heightMost
  return units === 'us' ? `${(value / foot).toFixed(1)} ft` : `${value} m`
}

function dayText(date: IsoDate): string {
  return date.replaceAll('-', '')
}

function utcText(made: Stamp): string {
  const parts = stampForm.exec(made)
  if (parts === null) throw new RangeError(`not a moment in UTC: ${made}`)
  const [, year, month, day, hour, minute, second] = parts
  return `${year}${month}${day}T${hour}${minute}${second}Z`
}

/** Whole minutes since 1970: a number that only grows, and stays an INTEGER of RFC 5545 (section 3.3.8) until the year 6053. */
function minutesOf(made: Stamp): number {
  return Math.max(0, Math.floor(Date.parse(made) / 60_000))
}

/** TEXT of RFC 5545 (section 3.3.11): no control characters, line ends as \n; lone halves of surrogate pairs have no UTF-8. */
function escaped(text: string): string {
  return text
    .replace(/\r\n?|[\n\u0085\u2028\u2029]/g, '\n')
    .replace(/\p{Surrogate}/gu, '\ufffd')
    .replace(/(?!\n)\p{Cc}/gu, ' ')
    .replace(/[\\;,]/g, character => `\\${character}`)
    .replaceAll('\n', '\\n')
}

/** Octets of a line, without its end (RFC 5545, section 3.1). */
const longestLine = 75

/** A line over several, broken between characters and never within an escaped one; each further one begins with a space. */
function folded(line: string): string {
  const parts: string[] = []
  let part = ''
  let octets = 0
  for (const [piece] of line.matchAll(/\\.|./gsu)) {
    const size = octetsOf(piece)
    if (octets + size > longestLine) {
      parts.push(part)
      part = ' '
      octets = 1
    }
    part += piece
    octets += size
  }
  return [...parts, part].join('\r\n')
}

/** Octets of a text in UTF-8. */
function octetsOf(text: string): number {
  let octets = 0
  for (const character of text) {
    const code = character.codePointAt(0)!
    octets += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
  }
  return octets
}
