import { useEffect, useState } from 'react'
import type { ImportOptions } from '#geo/file/import'
import type { OpenedImport, ShownImport, TableOf } from '#geo/file/open-import'
import type { TableColumns, TableGuess } from '#geo/file/tree-columns'
import type { TreeGrid } from '#geo/file/tree-table'
import type { Outcome } from '#geo/problem'
import { ChoiceField } from '../../parts/choice-field'
import type { Services } from '../services'
import { reasonOf } from '../use-loaded'
import { ImportChoices } from './bring-choices'
import { ImportColumns } from './bring-columns'
import { Faults } from './bring-faults'
import { Recognised } from './bring-form'
import { ImportGrid } from './bring-grid'
import { type KeptChoices, nothingKept } from './kept-choices'

type Table = Omit<Extract<OpenedImport, { is: 'table' }>, 'is'>
type Props = {
  readonly name: string
  readonly reader: ReturnType<Services['importReader']>
  readonly options: ImportOptions
  readonly kept: KeptChoices
  readonly onKeep: (kept: KeptChoices) => void
  readonly onAgain: () => void
  readonly onClose: () => void
}

/** A table whose columns are matched, with what comes of it below. */
export function ImportTable({ guess, ...props }: Props & Table) {
  if (!guess.ok) return <Faults problems={guess.problems} onAgain={props.onAgain} />
  return <Matched {...props} guess={guess.value} />
}

function Matched({ name, guess, reader, options, kept, onKeep, ...ways }: Props & { readonly guess: TableGuess }) {
  const [of, setOf] = useState<TableOf>('trees')
  const [columns, setColumns] = useState<TableColumns>(guess.columns)
  const [grid, setGrid] = useState<TreeGrid | null>(null)
  const { longitude, latitude, row, tree } = columns.figures
  const isOnGrid = of === 'trees' && (longitude === null || latitude === null) && row !== null && tree !== null
  const isWaiting = isOnGrid && grid === null
  const [read, setRead] = useState<Outcome<ShownImport> | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    setFault(null)
    if (isWaiting) return setRead(null)
    let isCurrent = true
    reader.readTable(of, columns, { ...options, ...(isOnGrid && grid !== null ? { grid } : {}) }).then(
      outcome => isCurrent && setRead(outcome),
      (error: unknown) => isCurrent && setFault(`The table could not be read: ${reasonOf(error)}`),
    )
    return () => {
      isCurrent = false
    }
  }, [reader, of, columns, options, isOnGrid, isWaiting, grid])
  return (
    <div className="stack-wide">
      <Recognised name={name} words="a table" />
      <ChoiceField
        label="Each line of the table is"
        value={of}
        choices={[
          { value: 'trees', name: 'a tree or other plant' },
          { value: 'stations', name: 'a nest station' },
        ]}
        onCommit={next => {
          setOf(next)
          onKeep(nothingKept)
        }}
      />
      <ImportColumns of={of} guess={guess} columns={columns} onChange={setColumns} />
      {isOnGrid ? <ImportGrid onChange={setGrid} /> : null}
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      {isWaiting ? (
        <p>The table says only row and tree. Say above where they stand, and what comes of it is shown here.</p>
      ) : read === null ? (
        <p role="status">Reading …</p>
      ) : read.ok ? (
        <ImportChoices
          {...ways}
          reader={reader}
          kept={kept}
          onKeep={onKeep}
          found={read.value}
          problems={read.problems}
          of="its rows"
        />
      ) : (
        <Faults problems={read.problems} onAgain={ways.onAgain} />
      )}
    </div>
  )
}
