/**
 * What is wrong with an iCalendar file, strictly by RFC 5545, as far as calendars of events go: one object, events only.
 * Written apart from the program's own writer, so that neither hides the other's mistakes.
 */
export function calendarFaults(file: string): readonly string[] {
  const faults = [...lineFaults(file)]
  const lines = file
    .replace(/\r\n[ \t]/g, '')
    .replace(/\r\n$/, '')
    .split('\r\n')
  const read = lines.map(contentLine)
  lines.forEach((line, i) => {
    if (read[i] === null) faults.push(`not a content line: ${line}`)
  })
  return [...faults, ...structureFaults(read.filter(line => line !== null))]
}

/** Section 3.1: CRLF ends, 75 octets at most without them, UTF-8, no control characters but the tab. */
function lineFaults(file: string): string[] {
  const faults: string[] = []
  if (!file.endsWith('\r\n')) faults.push('the last line has no end')
  if (/(?<!\r)\n/.test(file)) faults.push('a bare line feed')
  if (/\r(?!\n)/.test(file)) faults.push('a bare carriage return')
  if (/\p{Surrogate}/u.test(file)) faults.push('not UTF-8')
  for (const [i, line] of file.replace(/\r\n$/, '').split('\r\n').entries()) {
    const octets = Buffer.byteLength(line)
    if (octets > 75) faults.push(`line ${i + 1} has ${octets} octets`)
    if (line === '' || line === ' ') faults.push(`line ${i + 1} is empty`)
    if (/(?!\t)\p{Cc}/u.test(line)) faults.push(`line ${i + 1} holds a control character`)
    if (i === 0 && /^[ \t]/.test(line)) faults.push('the first line continues nothing')
  }
  return faults
}

type Content = { readonly name: string; readonly parameters: ReadonlyMap<string, string>; readonly value: string }

const parameter = /;([A-Za-z0-9-]+)=((?:"[^"]*"|[^";:,]*)(?:,(?:"[^"]*"|[^";:,]*))*)/y

/** Section 3.1: name *(";" param) ":" value. */
function contentLine(line: string): Content | null {
  const [name] = /^[A-Za-z0-9-]+/.exec(line) ?? []
  if (name === undefined) return null
  const parameters = new Map<string, string>()
  parameter.lastIndex = name.length
  let at = name.length
  for (let found = parameter.exec(line); found !== null; found = parameter.exec(line)) {
    parameters.set(found[1]!.toUpperCase(), found[2]!)
    at = parameter.lastIndex
  }
  return line[at] === ':' ? { name: name.toUpperCase(), parameters, value: line.slice(at + 1) } : null
}

/** How often a property may stand: section 3.6 for the object, 3.6.1 for events. */
type Rule = { readonly least: number; readonly most: number; readonly form: (line: Content) => boolean }
const once = (form: Rule['form']): Rule => ({ least: 1, most: 1, form })
const atMostOnce = (form: Rule['form']): Rule => ({ least: 0, most: 1, form })
const many = (form: Rule['form']): Rule => ({ least: 0, most: Number.POSITIVE_INFINITY, form })

const noParameters = ({ parameters }: Content) => parameters.size === 0
/** Section 3.3.11: a backslash stands before itself, comma, semicolon or n; the former three stand only so. */
const isText = ({ value }: Content) => /^(?:[^\\;,]|\\[\\;,nN])*$/.test(value)
/** Categories: texts between bare commas. */
const isTexts = ({ value }: Content) => /^(?:[^\\;]|\\[\\;,nN])*$/.test(value)
const isUtc = (line: Content) => noParameters(line) && /Z$/.test(line.value) && momentOf(line) !== null
const isMoment = (line: Content) => momentOf(line) !== null
const isInteger = ({ value }: Content) => /^\d{1,10}$/.test(value) && Number(value) < 2 ** 31
const isOneOf =
  (...values: string[]) =>
  ({ value }: Content) =>
    values.includes(value)

const ofCalendar: Readonly<Record<string, Rule>> = {
  PRODID: once(isText),
  VERSION: once(isOneOf('2.0')),
  CALSCALE: atMostOnce(isOneOf('GREGORIAN')),
  METHOD: atMostOnce(({ value }) => /^[A-Za-z0-9-]+$/.test(value)),
}

const ofEvent: Readonly<Record<string, Rule>> = {
  UID: once(line => isText(line) && line.value !== ''),
  DTSTAMP: once(isUtc),
  DTSTART: once(isMoment),
  DTEND: atMostOnce(isMoment),
  DURATION: atMostOnce(({ value }) => /^[+-]?P(?:\d+W|\d+D|(?:\d+D)?T(?:\d+H)?(?:\d+M)?(?:\d+S)?)$/.test(value)),
  CREATED: atMostOnce(isUtc),
  'LAST-MODIFIED': atMostOnce(isUtc),
  SEQUENCE: atMostOnce(isInteger),
  SUMMARY: atMostOnce(isText),
  DESCRIPTION: atMostOnce(isText),
  LOCATION: atMostOnce(isText),
  TRANSP: atMostOnce(isOneOf('OPAQUE', 'TRANSPARENT')),
  STATUS: atMostOnce(isOneOf('TENTATIVE', 'CONFIRMED', 'CANCELLED')),
  CLASS: atMostOnce(isOneOf('PUBLIC', 'PRIVATE', 'CONFIDENTIAL')),
  CATEGORIES: many(isTexts),
  RRULE: atMostOnce(isRecurrence),
}

/** Section 3.3.10, without the BY parts. */
function isRecurrence({ value }: Content): boolean {
  const parts = value.split(';').map(part => part.split('=') as [string, string | undefined])
  const names = parts.map(([name]) => name)
  if (new Set(names).size < names.length || !names.includes('FREQ')) return false
  if (names.includes('COUNT') && names.includes('UNTIL')) return false
  return parts.every(([name, text = '']) => {
    if (name === 'FREQ') return /^(?:SECOND|MINUTE|HOUR|DAI|WEEK|MONTH|YEAR)LY$/.test(text)
    if (name === 'COUNT' || name === 'INTERVAL') return /^[1-9]\d*$/.test(text)
    return name === 'UNTIL' && /^\d{8}(?:T\d{6}Z?)?$/.test(text)
  })
}

/** Sections 3.3.4 and 3.3.5: a day or a moment that exists, of the type the line says; as a number to compare. */
function momentOf({ parameters, value }: Content): number | null {
  const isDay = parameters.get('VALUE') === 'DATE'
  const form = isDay ? /^(\d{4})(\d\d)(\d\d)$/ : /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z?$/
  const parts = form.exec(value)?.slice(1).map(Number)
  if (parts === undefined) return null
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts
  const time = new Date(0)
  time.setUTCFullYear(year, month - 1, day)
  if (time.getUTCMonth() !== month - 1 || time.getUTCDate() !== day || hour > 23 || minute > 59 || second > 60)
    return null
  return time.setUTCHours(hour, minute, second)
}

function structureFaults(lines: readonly Content[]): string[] {
  const faults: string[] = []
  const open: { readonly name: string; readonly lines: Content[] }[] = []
  const uids = new Set<string>()
  let calendars = 0
  let events = 0
  for (const line of lines) {
    const inside = open.at(-1)
    if (line.name === 'BEGIN') {
      const isAllowed = open.length === 0 ? line.value === 'VCALENDAR' : line.value === 'VEVENT' && open.length === 1
      if (!isAllowed) faults.push(`unknown structure: ${line.value} in ${inside?.name ?? 'nothing'}`)
      if (line.value === 'VCALENDAR') calendars += 1
      if (line.value === 'VEVENT') events += 1
      open.push({ name: line.value, lines: [] })
    } else if (line.name === 'END') {
      if (inside?.name !== line.value) faults.push(`END:${line.value} ends ${inside?.name ?? 'nothing'}`)
      else if (inside.name === 'VCALENDAR') faults.push(...propertyFaults(inside, ofCalendar))
      else if (inside.name === 'VEVENT')
        faults.push(...propertyFaults(inside, ofEvent), ...eventFaults(inside.lines, uids))
      open.pop()
    } else if (inside === undefined) faults.push(`${line.name} outside of the calendar`)
    else inside.lines.push(line)
  }
  for (const { name } of open) faults.push(`${name} has no end`)
  if (calendars !== 1) faults.push(`${calendars} calendars`)
  if (events === 0) faults.push('no event: an object holds one component at least')
  return faults
}

function propertyFaults(
  { name: owner, lines }: { readonly name: string; readonly lines: readonly Content[] },
  rules: Readonly<Record<string, Rule>>,
): string[] {
  const faults: string[] = []
  for (const [name, { least, most }] of Object.entries(rules)) {
    const count = lines.filter(line => line.name === name).length
    if (count < least) faults.push(`${owner} has no ${name}`)
    if (count > most) faults.push(`${owner} has ${count} ${name}`)
  }
  for (const line of lines) {
    const rule = rules[line.name]
    if (rule === undefined && !line.name.startsWith('X-')) faults.push(`${owner} may not have ${line.name}`)
    if (!(rule?.form ?? isText)(line)) faults.push(`${line.name} is wrong: ${line.value}`)
  }
  return faults
}

function eventFaults(lines: readonly Content[], uids: Set<string>): string[] {
  const faults: string[] = []
  const find = (name: string) => lines.find(line => line.name === name)
  const uid = find('UID')?.value
  if (uid !== undefined && uids.has(uid)) faults.push(`twice the UID ${uid}`)
  if (uid !== undefined) uids.add(uid)
  const [start, end] = [find('DTSTART'), find('DTEND')]
  if (end !== undefined && find('DURATION') !== undefined) faults.push('both DTEND and DURATION')
  if (start === undefined || end === undefined) return faults
  if (start.parameters.get('VALUE') !== end.parameters.get('VALUE')) faults.push('DTSTART and DTEND of two types')
  const [from, to] = [momentOf(start), momentOf(end)]
  if (from !== null && to !== null && to <= from) faults.push(`DTEND ${end.value} is not after DTSTART ${start.value}`)
  return faults
}
