import { judging } from '#geo/data/judging-figures'
import { pairs } from './table'

export const commandNames = [
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
] as const
export type CommandName = (typeof commandNames)[number]

const optionWords = {
  year: ['--year YEAR', 'the season; without it, the latest in the plan'],
  stations: ['--stations N', 'how many stations to add, each with about 50 nesting females'],
  target: ['--target SHARE', 'what every planting is to get of what it wants, such as 0.9'],
  prove: ['--prove', 'let a general solver prove the answer, for up to a minute'],
  advised: ['--advised', 'new places get the release dates advised for the orchard, not those planned'],
  batches: ['--batches 1|2|3', 'in how many batches at most; without it, 2'],
  station: ['--station ID', 'one station only; without it, all of the season'],
  write: ['--write FILE', 'save the plan with the answer in it'],
  years: ['--years A,B', 'the two seasons, such as 2025,2026'],
  seasons: ['--seasons N', 'how many seasons to look ahead, up to 10; without it, 5'],
  outside: ['--outside', 'nests are left where they are, instead of taken in'],
  to: ['--to gpx|kml|csv|geojson', 'what to make of the plan'],
  table: ['--table NAME', 'with --to csv: plantings (unless told), stations or plants'],
  units: ['--units us|metric', 'units of the table; without it, those of the plan'],
  why: ['--why', 'under each number, how it came about'],
  json: ['--json', 'answer as JSON, always metric, shares from 0 to 1'],
  help: ['--help', 'this text'],
} as const

export type OptionName = keyof typeof optionWords

type Command = {
  readonly use: string
  /** One line for the list of commands. */
  readonly short: string
  readonly long: readonly string[]
  readonly options: readonly OptionName[]
}

const commands: Readonly<Record<CommandName, Command>> = {
  coverage: {
    use: 'coverage <plan file> [options]',
    short: 'how far the bees of a season cover what the plantings want',
    long: [
      'Answers, for every planting, how many nesting females it wants and gets, how much of it is in',
      'reach of a station, how well flight and bloom agree in time, and what holds it back; for every',
      'station, its females, cocoons and tubes. All figures are estimates.',
    ],
    options: ['year', 'units', 'json', 'help'],
  },
  suggest: {
    use: 'suggest <plan file> --stations N | --target SHARE [options]',
    short: 'where to put more stations, and how good that is',
    long: [
      'Answers where stations should stand and what to stock them with: either as many as are asked for,',
      'for the greatest coverage, or as few as it takes, at least cost, for every planting to reach a',
      'target. Every answer says what no other layout of these places could exceed.',
    ],
    options: ['stations', 'target', 'prove', 'advised', 'write', 'year', 'json', 'help'],
  },
  stock: {
    use: 'stock <plan file> [options]',
    short: 'the fewest bees for a target at the stations there are',
    long: [
      'Answers how many cocoons each station needs so that every planting gets the target share of what',
      `it wants (${judging.usualTarget} unless told), within the tubes that the plan names, and which plantings stand in`,
      'the way where it cannot be reached.',
    ],
    options: ['target', 'write', 'year', 'json', 'help'],
  },
  release: {
    use: 'release <plan file> [options]',
    short: 'when to set the cocoons out, in one, two or three batches',
    long: [
      'Answers on which days, in which shares, the cocoons that the stations hold should go out: found by',
      'working out the coverage of many dates, never earlier than blossom near the nests is open for the',
      'first females. Says what it gains over all at once as bloom begins, and over the plan as it is,',
      'and on which blossom each batch leans. Before cocoons are planned, --write saves the plan as it is.',
    ],
    options: ['batches', 'station', 'write', 'year', 'json', 'help'],
  },
  compare: {
    use: 'compare <plan file> --years A,B [options]',
    short: 'one season beside another, and why coverage changed',
    long: [
      'Answers, for the orchard and every planting, how coverage, reach and timing changed from one season',
      'to the other, and how much of it comes of plantings, stations, stock, bloom, weather and figures:',
      'the parts add up to the change. Below, what was counted at stations of both years.',
    ],
    options: ['years', 'json', 'help'],
  },
  project: {
    use: 'project <plan file> [options]',
    short: 'cocoons and coverage in the seasons to come, as ranges',
    long: [
      'Answers how many cocoons, nesting females and filled tubes the seasons after this one may have, and',
      'how much they cover: low, middle and high. What was counted takes the place of what is reckoned.',
    ],
    options: ['year', 'seasons', 'outside', 'json', 'help'],
  },
  calendar: {
    use: 'calendar <plan file> [options]',
    short: 'the work of a season as a calendar file',
    long: [
      'Writes the work of a season to standard output as iCalendar (RFC 5545), for any calendar program:',
      'stations up, mud, every release, rounds, last flight, taking in, cold, opening day, share-out and',
      'order, each with a line of why. Imported again after the plan has changed, it moves the entries',
      'that are there. With --json it lists the same tasks.',
    ],
    options: ['year', 'json', 'help'],
  },
  check: {
    use: 'check <plan file> [options]',
    short: 'what is wrong or doubtful in a plan, and where',
    long: [
      'Lists problems with their severity, place and figures: errors allow no result, warnings make it',
      'doubtful, notes only tell. Without --year the whole file is looked through and its latest',
      'season is worked out.',
    ],
    options: ['year', 'json', 'help'],
  },
  parameters: {
    use: 'parameters [<plan file>] [options]',
    short: 'every number the planner works with, with its range and source',
    long: [
      'Lists the built-in numbers, or with a plan file those that the plan works with: the grower’s own',
      'values then stand in place of the built-in ones and say so.',
    ],
    options: ['units', 'why', 'json', 'help'],
  },
  convert: {
    use: 'convert <plan file> --to gpx|kml|csv|geojson [options]',
    short: 'what is drawn in the plan, for handheld devices, maps and spreadsheets',
    long: [
      'Writes everything drawn, without seasons and records, to standard output: GPX 1.1 (stations and',
      'plants as waypoints, rows as routes, outlines as tracks), KML 2.2, plain GeoJSON (RFC 7946), or',
      'one table as CSV (RFC 4180). With --json it is put into the member “content”, beside “problems”.',
    ],
    options: ['to', 'table', 'json', 'help'],
  },
}

const exitCodes = [
  ['0', 'fine'],
  ['1', 'the plan has problems of severity error'],
  ['2', 'wrong use, or a file that cannot be read'],
  ['70', 'a mistake of the program itself'],
] as const

export function commandOptions(command: CommandName): readonly OptionName[] {
  return commands[command].options
}

/** The text of `nestreach --help`, or of one command's. */
export function helpText(command: CommandName | null): string {
  if (command !== null) {
    const { use, long, options } = commands[command]
    const known = options.map(name => optionWords[name])
    return [`Usage: nestreach ${use}`, '', ...long, '', 'Options:', pairs(known), ''].join('\n')
  }
  return [
    'Nestreach: plan mason bee nest stations so that every fruit planting gets enough bees in bloom.',
    '',
    'Usage: nestreach <command> <plan file> [options]',
    '',
    'Commands:',
    pairs(commandNames.map(name => [name, commands[name].short])),
    '',
    'A plan file is GeoJSON, as the planner saves it (*.plan.geojson); - reads it from standard input.',
    'Every command knows --json and --help. nestreach --version tells the version.',
    '',
    'Exit codes:',
    pairs(exitCodes),
    '',
    'Example: nestreach coverage scenarios/farm.plan.geojson --year 2025',
    '',
  ].join('\n')
}
