import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type ParameterRow, parameterRows } from '#geo/data/parameter-rows'

const file = new URL('../README.md', import.meta.url)
const readme = readFileSync(file, 'utf8')
const [start, end] = ['<!-- figures: start -->', '<!-- figures: end -->'] as const

/** The README's table of site and bee figures, made from the tables themselves: never typed again. */
function figures(): string {
  const rows = parameterRows()
  const bees = [...new Set(rows.filter(({ groupId }) => groupId.startsWith('osmia-')).map(({ groupId }) => groupId))]
  const names = [...new Set(rows.filter(({ groupId }) => groupId === bees[0]).map(({ name }) => name))]
  const of = (groupId: string, name: string) => rows.find(row => row.groupId === groupId && row.name === name)!
  const number = (value: number) => String(Number(value.toPrecision(3)))
  const cell = (row: ParameterRow) => `${number(row.value)} (${number(row.low)} to ${number(row.high)})`
  const unit = (row: ParameterRow) => (row.unit === '1' ? '' : row.unit)
  const site = rows.filter(({ groupId }) => groupId === 'site')
  return [
    '| Site | value (low to high) | unit | basis |',
    '|---|---|---|---|',
    ...site.map(row => `| ${row.name} | ${cell(row)} | ${unit(row)} | ${row.basis} |`),
    '',
    `| Bee | unit | ${bees.map(id => `*${of(id, names[0]!).group.split(', ')[1]}*`).join(' | ')} |`,
    `|---|---|${bees.map(() => '---|').join('')}`,
    ...names.map(
      name => `| ${name} | ${unit(of(bees[0]!, name))} | ${bees.map(id => cell(of(id, name))).join(' | ')} |`,
    ),
  ].join('\n')
}

describe('README', () => {
  it('shows the figures of the tables', () => {
    const made = `${readme.split(start)[0]}${start}\n${figures()}\n${end}${readme.split(end)[1]}`
    if (process.env.UPDATE === '1') writeFileSync(file, made)
    else expect(readme).toBe(made)
  })

  it('names the two commands that do everything', () => {
    expect(readme).toContain('npm ci && npm start')
    expect(readme).toContain('npm ci && npm test')
  })
})
