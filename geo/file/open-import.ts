import type { Outcome } from '../problem'
import { type TrackCut, trackCut } from './clean-track'
import { type DecodedText, decodeAs, decodeText, type Encoding } from './encoding'
import type { RowFit } from './gather-rows'
import type { Import, ImportForm, ImportGroup, ImportOptions } from './import'
import { givenTrack, type ImportChoices, importThings, rowFit } from './import-things'
import { readMapFile } from './map-file'
import { type PackedShapes, type PackedThings, packedShapes, packedThings } from './packed-things'
import { readRowTable } from './row-table'
import type { Spelling } from './spelling'
import { guessTable, type TableColumns, type TableGuess, type TableOf, type TableWritten } from './tree-columns'
import { readStationTable, readTreeTable, type TableOptions } from './tree-table'

/** A group, and what the page asks about its things without having them. */
export type ShownGroup = ImportGroup & {
  /** Of a thing that is alone in its group. */
  readonly name: string
  /** Whether lines of many points are among its things, and were walked with a device or are only drawn. */
  readonly lines: 'walked' | 'drawn' | null
  /** What cleaning takes out of those lines, in sum. */
  readonly cut: TrackCut
  /** How its single trees would stand in rows; null where they are not known by row and number, or stand in none. */
  readonly rowFit: RowFit | null
}

/** What a file would bring, without the things themselves: those stay where they were read. */
export type ShownImport = {
  readonly form: ImportForm
  readonly groups: readonly ShownGroup[]
  readonly spellings: readonly Spelling[]
}

/** A file of another program: drawn things as they are read, or a table whose columns are to be matched first. */
export type OpenedImport =
  | { readonly is: 'map'; readonly read: Outcome<ShownImport> }
  | ({ readonly is: 'table' } & OpenedTable)

/** A table as it seems to be written, and what its columns seem to hold. */
export type OpenedTable = { readonly guess: Outcome<TableGuess>; readonly encoding: Encoding }

/** One file after the other, each kept until the next: it may be large, and stays where it was read. */
export type ImportSession = {
  /** Opens a file by what it holds: what is none of the map formats but text is taken for a table. */
  open(bytes: Uint8Array, options: ImportOptions): OpenedImport
  /** The same table, written as somebody says. */
  rewrite(written: TableWritten & { readonly encoding?: Encoding }): OpenedTable
  /** Reads the table by the columns as they were matched. */
  readTable(of: TableOf, columns: TableColumns, options: TableOptions): Outcome<ShownImport>
  /** What was read last, as it would lie on the ground. */
  shapes(choices: ImportChoices): PackedShapes
  /** The same, to be brought in. */
  things(choices: ImportChoices, cultivars: Readonly<Record<string, string>>): PackedThings
}

export function importSession(): ImportSession {
  let found: Import | null = null
  let kept: Uint8Array = new Uint8Array()
  let text = ''
  const shown = (read: Outcome<Import>): Outcome<ShownImport> => {
    found = read.ok ? read.value : null
    return read.ok ? { ...read, value: shownImport(read.value) } : read
  }
  const chosen = (choices: ImportChoices, cultivars?: Readonly<Record<string, string>>) =>
    found === null ? [] : importThings(found, choices, cultivars)
  const table = (decoded: DecodedText, written: TableWritten): OpenedTable => {
    found = null
    text = decoded.text
    const guess = guessTable(text, written)
    return {
      encoding: decoded.encoding,
      guess: { ...guess, problems: [...decoded.problems, ...guess.problems] },
    }
  }
  return {
    open(bytes, options) {
      kept = bytes
      text = ''
      const read = readMapFile(bytes, options)
      if (read.ok || read.problems.every(({ code }) => code !== 'import-unknown'))
        return { is: 'map', read: shown(read) }
      return { is: 'table', ...table(decodeText(bytes), {}) }
    },
    rewrite: ({ encoding, ...written }) =>
      table(encoding === undefined ? decodeText(kept) : decodeAs(kept, encoding), written),
    readTable: (of, columns, options) => shown(tableReaders[of](text, columns, options)),
    shapes: choices => packedShapes(chosen(choices)),
    things: (choices, cultivars) => packedThings(chosen(choices, cultivars)),
  }
}

const tableReaders = { trees: readTreeTable, rows: readRowTable, stations: readStationTable } as const

/** A line of fewer points was drawn corner by corner: there is nothing to clean. */
const manyPoints = 10
const noCut: TrackCut = { strays: 0, pauses: 0 }

function shownImport(found: Import): ShownImport {
  const { form, items, groups, spellings } = found
  const names = new Map<string, string>()
  const lines = new Map<string, 'walked' | 'drawn'>()
  const cuts = new Map<string, TrackCut>()
  for (const { group, properties, geometry, track } of items) {
    names.set(group, String(properties.name ?? ''))
    if (track?.times.some(time => time !== null)) lines.set(group, 'walked')
    else if (geometry.type === 'LineString' && geometry.coordinates.length > manyPoints && !lines.has(group))
      lines.set(group, track === null ? 'drawn' : 'walked')
    if (geometry.type !== 'LineString') continue
    const { strays, pauses } = trackCut(givenTrack(geometry, track))
    const before = cuts.get(group) ?? noCut
    cuts.set(group, { strays: before.strays + strays, pauses: before.pauses + pauses })
  }
  return {
    form,
    groups: groups.map(group => ({
      ...group,
      name: group.count === 1 ? (names.get(group.key) ?? '') : '',
      lines: lines.get(group.key) ?? null,
      cut: cuts.get(group.key) ?? noCut,
      rowFit: group.kinds.includes('plant') ? rowFit(found, group.key) : null,
    })),
    spellings,
  }
}
