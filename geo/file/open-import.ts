import type { Outcome } from '../problem'
import { decodeText } from './encoding'
import type { Import, ImportOptions } from './import'
import { readMapFile } from './map-file'
import { guessTable, type TableColumns, type TableGuess } from './tree-columns'
import { readStationTable, readTreeTable, type TableOptions } from './tree-table'

/** A file of another program: drawn things as they are read, or a table whose columns are to be matched first. */
export type OpenedImport =
  | { readonly is: 'map'; readonly read: Outcome<Import> }
  | { readonly is: 'table'; readonly text: string; readonly guess: Outcome<TableGuess> }

/** What each line of a table stands for. */
export type TableOf = 'trees' | 'stations'

/** Opens a file by what it holds: what is none of the map formats but text is taken for a table. */
export function openImport(bytes: Uint8Array, options: ImportOptions): OpenedImport {
  const read = readMapFile(bytes, options)
  if (read.ok || read.problems.every(({ code }) => code !== 'import-unknown')) return { is: 'map', read }
  const { text, problems } = decodeText(bytes)
  const guess = guessTable(text)
  return { is: 'table', text, guess: { ...guess, problems: [...problems, ...guess.problems] } }
}

/** Reads a table of trees or of stations by the columns as they were matched. */
export function readImportTable(
  text: string,
  of: TableOf,
  columns: TableColumns,
  options: TableOptions,
): Outcome<Import> {
  return of === 'trees' ? readTreeTable(text, columns, options) : readStationTable(text, columns, options)
}
