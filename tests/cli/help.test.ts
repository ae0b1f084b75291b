import { readFileSync } from 'node:fs'
import { devNull } from 'node:os'
import { describe, expect, test } from 'vitest'
import { nestreach, scenario } from './nestreach'

const commands = [
  'coverage',
  'suggest',
  'stock',
  'release',
  'compare',
  'project',
  'calendar',
  'check',
  'parameters',
  'convert',
]

test('--help lists the commands that work, and no others', () => {
  const { out, err, exitCode } = nestreach(['--help'])
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
  const listed = out.slice(out.indexOf('Commands:'), out.indexOf('A plan file')).match(/^ {2}[a-z]+/gm)
  expect(listed?.map(name => name.trim())).toEqual(commands)
  expect(nestreach(['-h']).out).toBe(out)
})

test.each(commands)(
  '%s --help says how it is used and what its options are',
  command => {
    const { out, err, exitCode } = nestreach([command, '--help'])
    expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
    expect(out.split('\n')[0]).toMatch(new RegExp(`^Usage: nestreach ${command} `))
    expect(out).toContain('--json')
    const values: Readonly<Record<string, readonly string[]>> = {
      '--year': ['2025'],
      '--to': ['csv'],
      '--table': ['plants'],
      '--units': ['us'],
      '--stations': ['1'],
      '--target': ['0.5'],
      '--write': [devNull],
      '--years': ['2024,2025'],
      '--seasons': ['2'],
      '--batches': ['1'],
      '--station': ['a1'],
    }
    const known = [...new Set(out.match(/--[a-z]+/g))].filter(
      // Of suggest's two questions one is asked at a time.
      option => option !== '--help' && !(command === 'suggest' && option === '--target'),
    )
    const words = known.flatMap(option => [option, ...(values[option] ?? [])])
    expect(nestreach([command, scenario('allotment'), ...words])).toMatchObject({ err: '', exitCode: 0 })
    // A proof may take a minute of its own.
  },
  150_000,
)

test('no help text is wider than a terminal', () => {
  const texts = [[], ...commands.map(command => [command])].map(words => nestreach([...words, '--help']).out).join('\n')
  expect(Math.max(...texts.split('\n').map(line => line.length))).toBeLessThanOrEqual(100)
})

test('--version tells the version of the package', () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'))
  expect(nestreach(['--version'])).toEqual({ out: `${version}\n`, err: '', exitCode: 0 })
})

describe('wrong use ends with 2 and a sentence that helps', () => {
  test.each([
    [
      [],
      /Say what to do: coverage, suggest, stock, release, compare, project, calendar, check, parameters or convert\./,
    ],
    [['covrage', 'x'], /no command “covrage”.*Did you mean coverage\?/],
    [['compare', 'x'], /Say which two seasons: --years 2025,2026\./],
    [['compare', 'x', '--years', '2025'], /--years should be two years such as 2025,2026, but is “2025”/],
    [['project', 'x', '--seasons', '11'], /--seasons should be a whole number from 1 to 10, but is “11”/],
    [['release', 'x', '--batches', '4'], /--batches should be 1, 2 or 3, but is “4”/],
    [['coverage'], /Name the plan file/],
    [['coverage', 'a', 'b'], /“b” is one too many/],
    [['coverage', 'x', '--yaer', '2025'], /no option --yaer\. Did you mean --year\?/],
    [['coverage', 'x', '-y'], /no option -y/],
    [['coverage', 'x', '--year'], /--year needs a value/],
    [['coverage', 'x', '--year', 'soon'], /--year should be a year such as 2026, but is “soon”/],
    [['coverage', 'x', '--year=20255'], /--year should be a year/],
    [['coverage', 'x', '--units', 'feet'], /--units should be us or metric, but is “feet”/],
    [['coverage', 'x', '--json=yes'], /--json takes no value/],
    [['coverage', 'x', '--to', 'geojson'], /--to does not go with coverage/],
    [['parameters', '--year', '2025'], /--year does not go with parameters/],
    [['convert', 'x'], /--to gpx, kml, csv or geojson/],
    [['convert', 'x', '--to', 'shapefile'], /--to should be gpx, kml, csv or geojson, but is “shapefile”/],
    [
      ['convert', 'x', '--to', 'csv', '--table', 'bees'],
      /--table should be plantings, stations or plants, but is “bees”/,
    ],
    [['convert', 'x', '--to', 'gpx', '--table', 'plants'], /--table goes with --to csv/],
    [['check', 'no-such-file'], /“no-such-file” cannot be read: there is no such file/],
    [['check', '.'], /“\.” cannot be read: it is a folder/],
    [['\u001b[31mred', 'x'], /no command “ \[31mred”|no command “\[31mred”/],
  ])('%j', (words, sentence) => {
    const { out, err, exitCode } = nestreach(words)
    expect({ out, exitCode }).toEqual({ out: '', exitCode: 2 })
    expect(err).toMatch(sentence)
    expect(err).toMatch(/^nestreach: .*\n$/)
  })
})
