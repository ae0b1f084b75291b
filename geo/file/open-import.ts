import type { Outcome } from '../problem'
import { decodeText, type Encoding } from './encoding'
import type { Import, ImportForm, ImportGroup, ImportOptions } from './import'
import { type ImportChoices, importThings } from './import-things'
import { readMapFile } from './map-file'
import { type PackedShapes, type PackedThings, packedShapes, packedThings } from './packed-things'
import type { Spelling } from './spelling'
import { guessTable, type TableColumns, type TableGuess } from './tree-columns'
import { readStationTable, readTreeTable, type TableOptions } from './tree-table'

/** A group, and what the page asks about its things without having them. */
export type ShownGroup = ImportGroup & {
  /** Of a thing that is alone in its group. */
  readonly name: string
  /** Whether lines of many points are among its things, and were walked with a device or are only drawn. */
  readonly lines: 'walked' | 'drawn' | null
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
  | { readonly is: 'table'; readonly guess: Outcome<TableGuess>; readonly encoding: Encoding }

/** What each line of a table stands for. */
export type TableOf = 'trees' | 'stations'

/** One file after the other, each kept until the next: it may be large, and stays where it was read. */
export type ImportSession = {
  /** Opens a file by what it holds: what is none of the map formats but text is taken for a table. */
  open(bytes: Uint8Array, options: ImportOptions): OpenedImport
  /** Reads the table by the columns as they were matched. */
  readTable(of: TableOf, columns: TableColumns, options: TableOptions): Outcome<ShownImport>
  /** What was read last, as it would lie on the ground. */
  shapes(choices: ImportChoices): PackedShapes
  /** The same, to be brought in. */
  things(choices: ImportChoices, cultivars: Readonly<Record<string, string>>): PackedThings
}

export function importSession(): ImportSession {
  let found: Import | null = null
  let text = ''
  const shown = (read: Outcome<Import>): Outcome<ShownImport> => {
    found = read.ok ? read.value : null
    return read.ok ? { ...read, value: shownImport(read.value) } : read
  }
  const chosen = (choices: ImportChoices, cultivars?: Readonly<Record<string, string>>) =>
    found === null ? [] : importThings(found, choices, cultivars)
  return {
    open(bytes, options) {
      text = ''
      const read = readMapFile(bytes, options)
      if (read.ok || read.problems.every(({ code }) => code !== 'import-unknown'))
        return { is: 'map', read: shown(read) }
      found = null
      const decoded = decodeText(bytes)
      text = decoded.text
      const guess = guessTable(text)
      return {
        is: 'table',
        encoding: decoded.encoding,
        guess: { ...guess, problems: [...decoded.problems, ...guess.problems] },
      }
    },
    readTable: (of, columns, options) =>
      shown(of === 'trees' ? readTreeTable(text, columns, options) : readStationTable(text, columns, options)),
    shapes: choices => packedShapes(chosen(choices)),
    things: (choices, cultivars) => packedThings(chosen(choices, cultivars)),
  }
}

/** A line of fewer points was drawn corner by corner: there is nothing to clean. */
const manyPoints = 10

function shownImport({ form, items, groups, spellings }: Import): ShownImport {
  const names = new Map<string, string>()
  const lines = new Map<string, 'walked' | 'drawn'>()
  for (const { group, properties, geometry, track } of items) {
    names.set(group, String(properties.name ?? ''))
    if (track !== null && track.times.some(time => time !== null)) lines.set(group, 'walked')
    else if (geometry.type === 'LineString' && geometry.coordinates.length > manyPoints && !lines.has(group))
      lines.set(group, track === null ? 'drawn' : 'walked')
  }
  return {
    form,
    groups: groups.map(group => ({
      ...group,
      name: group.count === 1 ? (names.get(group.key) ?? '') : '',
      lines: lines.get(group.key) ?? null,
    })),
    spellings,
  }
}
