import { parseArgs } from 'node:util'
import { type CsvTable, csvTables } from '#geo/file/csv-tables'
import { editDistance } from '#geo/file/spelling'
import type { Units } from '#geo/plan/plan'
import { mostSeasons } from '#geo/seasons/project'
import { listed, oneLine } from '#geo/wording/plain'
import { type Target, targets } from './convert'
import { type CommandName, commandNames, commandOptions, type OptionName } from './help'

/** What was asked for, understood; every option that a command knows is there, with its default. */
export type Request =
  | { readonly kind: 'help'; readonly command: CommandName | null }
  | { readonly kind: 'version' }
  | {
      readonly kind: 'command'
      readonly command: CommandName
      /** null where the command works without a file and none was given; `-` = standard input. */
      readonly file: string | null
      readonly isJson: boolean
      /** null = the latest season. */
      readonly year: number | null
      /** null = the plan's own. */
      readonly units: Units | null
      readonly isWhy: boolean
      readonly stations: number | null
      readonly target: number | null
      readonly isProving: boolean
      readonly isAdvised: boolean
      /** Batches at most. */
      readonly batches: 1 | 2 | 3 | null
      /** Id of the one station that is asked about. */
      readonly station: string | null
      /** Two seasons to compare. */
      readonly years: readonly [number, number] | null
      /** Seasons to look ahead. */
      readonly seasons: number | null
      /** Nests are left outside rather than taken in. */
      readonly isOutside: boolean
      /** Where to save the plan with the answer in it. */
      readonly write: string | null
      /** What to make of the plan; null where nothing is to be made of it. */
      readonly to: Target | null
      readonly table: CsvTable
    }

/** Wrong use: the sentence says what to do instead. */
export type Wrong = { readonly kind: 'wrong'; readonly command: CommandName | null; readonly reason: string }

const types = {
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean' },
  json: { type: 'boolean' },
  why: { type: 'boolean' },
  year: { type: 'string' },
  units: { type: 'string' },
  to: { type: 'string' },
  table: { type: 'string' },
  stations: { type: 'string' },
  target: { type: 'string' },
  prove: { type: 'boolean' },
  advised: { type: 'boolean' },
  batches: { type: 'string' },
  station: { type: 'string' },
  years: { type: 'string' },
  seasons: { type: 'string' },
  outside: { type: 'boolean' },
  write: { type: 'string' },
} as const

/** Understands the words behind `nestreach`. */
export function readArguments(words: readonly string[]): Request | Wrong {
  // Not strict: node's own sentences name rules of argument lists, not what this program knows.
  const { values, positionals, tokens } = parseArgs({
    args: [...words],
    options: types,
    strict: false,
    allowPositionals: true,
    tokens: true,
  })
  const [name, ...files] = positionals
  const command = commandNames.find(each => each === name) ?? null
  const wrong = (reason: string): Wrong => ({ kind: 'wrong', command, reason })
  if (values.help === true && (name === undefined || command !== null)) return { kind: 'help', command }
  if (values.version === true && name === undefined) return { kind: 'version' }
  if (name === undefined) return wrong(`Say what to do: ${listed(commandNames, 'or')}.`)
  if (command === null) {
    return wrong(
      `There is no command “${oneLine(name)}”. There are ${listed(commandNames)}.${meant(name, commandNames)}`,
    )
  }
  const allowed = commandOptions(command)
  for (const token of tokens) {
    if (token.kind !== 'option') continue
    const fault = optionFault(token.name, token.rawName, token.value, command, allowed)
    if (fault !== null) return wrong(fault)
  }
  const [file, ...more] = files
  if (file === undefined && command !== 'parameters') return wrong(`Name the plan file, or - for standard input.`)
  if (more.length > 0) return wrong(`One plan file at a time: “${oneLine(more[0]!)}” is one too many.`)
  const { year, units, stations, target, write, years, seasons, batches, station } = values
  const to = targets.find(each => each === values.to) ?? null
  const table = csvTables.find(each => each === values.table) ?? null
  if (typeof year === 'string' && !/^\d{4}$/.test(year)) {
    return wrong(`--year should be a year such as 2026, but is “${oneLine(year)}”.`)
  }
  if (units !== undefined && units !== 'us' && units !== 'metric') {
    return wrong(`--units should be us or metric, but is “${oneLine(String(units))}”.`)
  }
  if (command === 'convert' && values.to === undefined) {
    return wrong(`Say what to make of the plan: --to ${listed(targets, 'or')}.`)
  }
  if (values.to !== undefined && to === null) {
    return wrong(`--to should be ${listed(targets, 'or')}, but is “${oneLine(String(values.to))}”.`)
  }
  if (values.table !== undefined && table === null) {
    return wrong(`--table should be ${listed(csvTables, 'or')}, but is “${oneLine(String(values.table))}”.`)
  }
  if (table !== null && to !== 'csv') return wrong('--table goes with --to csv.')
  if (typeof stations === 'string' && !(/^\d{1,3}$/.test(stations) && Number(stations) >= 1)) {
    return wrong(`--stations should be a whole number from 1 to 999, but is “${oneLine(stations)}”.`)
  }
  if (typeof target === 'string' && !(/^[01](\.\d+)?$/.test(target) && Number(target) <= 1)) {
    return wrong(`--target should be a share from 0 to 1 such as 0.9, but is “${oneLine(target)}”.`)
  }
  if (typeof batches === 'string' && !/^[123]$/.test(batches)) {
    return wrong(`--batches should be 1, 2 or 3, but is “${oneLine(batches)}”.`)
  }
  if (command === 'suggest' && (stations === undefined) === (target === undefined)) {
    return wrong('Say what to look for: --stations N or --target SHARE, one of the two.')
  }
  if (command === 'compare' && years === undefined) return wrong('Say which two seasons: --years 2025,2026.')
  if (typeof years === 'string' && !/^\d{4},\d{4}$/.test(years)) {
    return wrong(`--years should be two years such as 2025,2026, but is “${oneLine(years)}”.`)
  }
  if (
    typeof seasons === 'string' &&
    !(/^\d{1,2}$/.test(seasons) && Number(seasons) >= 1 && Number(seasons) <= mostSeasons)
  ) {
    return wrong(`--seasons should be a whole number from 1 to ${mostSeasons}, but is “${oneLine(seasons)}”.`)
  }
  return {
    kind: 'command',
    command,
    file: file ?? null,
    isJson: values.json === true,
    year: typeof year === 'string' ? Number(year) : null,
    units: units ?? null,
    isWhy: values.why === true,
    stations: typeof stations === 'string' ? Number(stations) : null,
    target: typeof target === 'string' ? Number(target) : null,
    isProving: values.prove === true,
    isAdvised: values.advised === true,
    batches: typeof batches === 'string' ? (Number(batches) as 1 | 2 | 3) : null,
    station: typeof station === 'string' ? station : null,
    years: typeof years === 'string' ? (years.split(',').map(Number) as [number, number]) : null,
    seasons: typeof seasons === 'string' ? Number(seasons) : null,
    isOutside: values.outside === true,
    write: typeof write === 'string' ? write : null,
    to,
    table: table ?? 'plantings',
  }
}

function optionFault(
  name: string,
  rawName: string,
  value: string | undefined,
  command: CommandName,
  allowed: readonly OptionName[],
): string | null {
  if (!Object.hasOwn(types, name)) {
    const near = meant(name, allowed, option => `--${option}`)
    return `There is no option ${oneLine(rawName)}.${near}`
  }
  if (!allowed.includes(name as OptionName)) return `${rawName} does not go with ${command}.`
  const { type } = types[name as OptionName]
  if (type === 'boolean' && value !== undefined) return `${rawName} takes no value.`
  if (type === 'string' && (value === undefined || value === '')) return `${rawName} needs a value.`
  return null
}

/** " Did you mean …?" where one known word is near; else nothing. */
function meant<T extends string>(word: string, known: readonly T[], shown: (name: T) => string = name => name): string {
  const near = known.find(each => editDistance(word.toLowerCase(), each) <= 2)
  return near === undefined ? '' : ` Did you mean ${shown(near)}?`
}
