import { describe, expect, test } from 'vitest'
import { calendarFaults } from '../../support/calendar-linter'

/** A right file, to be spoilt. Source of all rules: RFC 5545. */
const right = [
  'BEGIN:VCALENDAR',
  'VERSION:2.0',
  'PRODID:-//A//B//EN',
  'BEGIN:VEVENT',
  'UID:one',
  'DTSTAMP:20260301T120000Z',
  'DTSTART;VALUE=DATE:20260406',
  'DTEND;VALUE=DATE:20260407',
  'RRULE:FREQ=WEEKLY;COUNT=3',
  'SUMMARY:Mud\\, water\\; a',
  '  folded line',
  'END:VEVENT',
  'END:VCALENDAR',
]
const text = (lines: readonly string[]) => lines.map(line => `${line}\r\n`).join('')
const event = right.slice(3, 12)
const changed = (from: string, to: string) => text(right).replace(from, to)

test('the linter finds nothing in a right file', () => {
  expect(calendarFaults(text(right))).toEqual([])
})

/** Objects as RFC 5545 prints them, with our product id: sections 3.4 and 3.6.1. */
test.each([
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//A//B//EN',
    'BEGIN:VEVENT',
    'UID:19970610T172345Z-AF23B2@example.com',
    'DTSTAMP:19970610T172345Z',
    'DTSTART:19970714T170000Z',
    'DTEND:19970715T040000Z',
    'SUMMARY:Bastille Day Party',
    'END:VEVENT',
    'END:VCALENDAR',
  ],
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//A//B//EN',
    'BEGIN:VEVENT',
    'UID:20070423T123432Z-541111@example.com',
    'DTSTAMP:20070423T123432Z',
    'DTSTART;VALUE=DATE:20070628',
    'DTEND;VALUE=DATE:20070709',
    'SUMMARY:Festival International de Jazz de Montreal',
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
    'END:VCALENDAR',
  ],
])('the linter accepts the examples of the standard', (...lines) => {
  expect(calendarFaults(text(lines))).toEqual([])
})

describe('the linter finds', () => {
  test.each([
    ['a bare line feed', changed('UID:one\r\n', 'UID:one\n'), /bare line feed/],
    ['a bare carriage return', changed('UID:one\r\n', 'UID:one\r'), /bare carriage return/],
    ['a last line without end', text(right).trimEnd(), /no end/],
    ['a line of 76 octets', changed('UID:one', `UID:${'x'.repeat(72)}`), /76 octets/],
    ['76 octets that are fewer characters', changed('UID:one', `UID:${'é'.repeat(36)}`), /76 octets/],
    ['an empty line', changed('UID:one\r\n', 'UID:one\r\n\r\n'), /empty/],
    ['a control character', changed('UID:one', 'UID:o\u0007ne'), /control/],
    ['half a surrogate pair', changed('UID:one', 'UID:o\ud800ne'), /UTF-8/],
    ['a line that is none', changed('UID:one', 'UID one'), /content line/],
    ['an event without UID', changed('UID:one\r\n', ''), /no UID/],
    ['an event without DTSTAMP', changed('DTSTAMP:20260301T120000Z\r\n', ''), /no DTSTAMP/],
    ['a DTSTAMP that is not in UTC', changed('T120000Z', 'T120000'), /DTSTAMP is wrong/],
    ['a UID twice', text([...right.slice(0, 12), ...event, 'END:VCALENDAR']), /twice the UID/],
    ['an end on the day of the start', changed('20260407', '20260406'), /not after/],
    ['an end before the start', changed('20260407', '20260405'), /not after/],
    ['a day that does not exist', changed('20260407', '20260431'), /DTEND is wrong/],
    ['a day said to be a moment', changed('DTEND;VALUE=DATE:', 'DTEND:'), /DTEND is wrong/],
    ['a bare comma in a text', changed('Mud\\,', 'Mud,'), /SUMMARY is wrong/],
    ['an unknown escape', changed('Mud\\,', 'Mud\\t'), /SUMMARY is wrong/],
    ['a property of another standard', changed('UID:one', 'UID:one\r\nFOO:1'), /may not have FOO/],
    ['a property twice', changed('UID:one', 'UID:one\r\nSEQUENCE:1\r\nSEQUENCE:2'), /2 SEQUENCE/],
    ['a negative SEQUENCE', changed('UID:one', 'UID:one\r\nSEQUENCE:-1'), /SEQUENCE is wrong/],
    ['an unknown component', text(right).replaceAll('VEVENT', 'VHIVE'), /unknown structure/],
    ['an event in an event', changed('UID:one', 'BEGIN:VEVENT\r\nEND:VEVENT\r\nUID:one'), /unknown structure/],
    ['a component that does not end', changed('END:VEVENT\r\n', ''), /ends VEVENT/],
    ['an object that does not end', text(right.slice(0, -1)), /VCALENDAR has no end/],
    ['two objects', text([...right, ...right]), /2 calendars/],
    ['no event', text([...right.slice(0, 3), 'END:VCALENDAR']), /no event/],
    ['no version', changed('VERSION:2.0\r\n', ''), /no VERSION/],
    ['no product', changed('PRODID:-//A//B//EN\r\n', ''), /no PRODID/],
    ['a recurrence without frequency', changed('FREQ=WEEKLY;', ''), /RRULE is wrong/],
    ['a recurrence that ends twice', changed('COUNT=3', 'COUNT=3;UNTIL=20260501'), /RRULE is wrong/],
  ])('%s', (_, file, fault) => {
    expect(file).not.toBe(text(right))
    expect(calendarFaults(file).join('\n')).toMatch(fault)
  })
})
