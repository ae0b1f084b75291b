import { expect, it } from 'vitest'
import { importSession } from '#geo/file/open-import'

const utf8 = (text: string) => new TextEncoder().encode(text)

/** Milliseconds of the processor beside the answer: what else the machine does meanwhile does not count. */
function timed<T>(work: () => T): { readonly value: T; readonly time: number } {
  const before = process.cpuUsage()
  const value = work()
  return { value, time: process.cpuUsage(before).user / 1000 }
}

const lines = (count: number, of: (i: number) => string) => Array.from({ length: count }, (_, i) => of(i)).join('\n')
const point = 'POINT (-1.7 52.2)'

it.each([
  ['one line without end', 'x'.repeat(19e6)],
  ['nothing but tabs', '\t'.repeat(19e6)],
  ['nothing but ends of lines', '\n'.repeat(5e6)],
  ['a quote that is never closed', `row\ttree\n"${'a\t'.repeat(8e6)}`],
  ['a million columns', `${'row\t'.repeat(1e6)}\n${'1\t'.repeat(1e6)}\n1\t2`],
  [
    'fifty thousand trees in one row',
    `row\ttree\tlongitude\tlatitude\n${lines(50_000, i => `1\t${i}\t-1.7\t${52 + i * 1e-6}`)}`,
  ],
  ['fifty thousand rows of one tree', `row\ttree\tlongitude\tlatitude\n${lines(50_000, i => `${i}\t1\t-1.7\t52.2`)}`],
  [
    'a row of two trees, over and over',
    `row\ttree\tlongitude\tlatitude\n${lines(50_000, i => `${i >> 1}\t${i % 2}\t${(i >> 1) * 1e-5}\t${52 + (i % 2) * 1e-5}`)}`,
  ],
  [
    'fifty thousand cultivars',
    `row\ttree\tlongitude\tlatitude\tcultivar\n${lines(50_000, i => `1\t${i}\t-1.7\t52.2\tcultivar ${i.toString(36)}`)}`,
  ],
  ['a geometry of brackets', `name\tWKT\na\tPOLYGON ${'('.repeat(9e6)}\nb\t${point}`],
  ['a geometry of a million points', `name\tWKT\na\tMULTIPOINT (${'1 2, '.repeat(9e5)}1 2)\nb\t${point}`],
  [
    'names of columns that patterns could lose themselves in',
    `${'row tree '.repeat(1e6)}\t${'lon_'.repeat(1e6)}\tlat\n1\t2\t3\n1\t2\t3`,
  ],
])('%s is read, or refused, each step within two seconds of work', (_, text) => {
  const session = importSession()
  const bytes = utf8(text)
  const { value: opened, time } = timed(() => session.open(bytes, {}))
  expect(time).toBeLessThan(2000)
  if (opened.is !== 'table' || !opened.guess.ok) return
  const { of, columns } = opened.guess.value
  const { value: read, time: reading } = timed(() => session.readTable(of, columns, {}))
  expect(reading).toBeLessThan(2000)
  if (!read.ok) return
  const choices = read.value.groups.map(({ key, rowFit }) => [
    key,
    { kind: 'plant', crop: 'apple', ...(rowFit === null ? {} : { inRows: true }) } as const,
  ])
  expect(timed(() => session.things(Object.fromEntries(choices), {})).time).toBeLessThan(2000)
})
