import { useEffect, useState } from 'react'
import type { ImportOptions } from '#geo/file/import'
import type { OpenedTable, ShownImport } from '#geo/file/open-import'
import type { TableGround } from '#geo/file/table-places'
import type { TableColumns, TableGuess, TableOf } from '#geo/file/tree-columns'
import { numberOf } from '#geo/file/weather-cells'
import type { Outcome } from '#geo/problem'
import { foot } from '#geo/space/units'
import { ChoiceField } from '../../parts/choice-field'
import type { Services } from '../services'
import { reasonOf } from '../use-loaded'
import { ImportChoices } from './bring-choices'
import { ImportColumns } from './bring-columns'
import { Faults } from './bring-faults'
import { Recognised, tableWords, type Written, WrittenChoices } from './bring-form'
import { type GroundAsked, ImportGround } from './bring-ground'
import { type KeptChoices, nothingKept } from './kept-choices'

type Props = {
  readonly name: string
  readonly opened: OpenedTable
  readonly reader: ReturnType<Services['importReader']>
  readonly options: ImportOptions
  readonly kept: KeptChoices
  readonly onKeep: (kept: KeptChoices) => void
  readonly onAgain: () => void
  readonly onClose: () => void
}

/** A table whose columns are matched, with what comes of it below. */
export function ImportTable({ opened, ...props }: Props) {
  const { reader, name, onAgain, onKeep } = props
  const [table, setTable] = useState<{ readonly opened: OpenedTable; readonly turn: number }>({ opened, turn: 0 })
  const [fault, setFault] = useState<string | null>(null)
  const { guess, encoding } = table.opened
  if (!guess.ok) return <Faults problems={guess.problems} onAgain={onAgain} />
  const rewrite = async (written: Written) => {
    try {
      const next = await reader.rewrite(written)
      setFault(null)
      onKeep(nothingKept)
      setTable(({ turn }) => ({ opened: next, turn: turn + 1 }))
    } catch (error) {
      setFault(`The table could not be read: ${reasonOf(error)}`)
    }
  }
  const { columns, hasHead } = guess.value
  return (
    <div className="stack-wide">
      <Recognised name={name} words={tableWords(guess.value, encoding)} onAgain={onAgain}>
        <WrittenChoices value={{ separator: columns.separator, encoding, hasHead }} onChange={rewrite} />
        {fault === null ? null : (
          <p className="field-fault" role="alert">
            {fault}
          </p>
        )}
      </Recognised>
      <Matched key={table.turn} {...props} guess={guess.value} />
    </div>
  )
}

type MatchedProps = Omit<Props, 'opened' | 'name'> & { readonly guess: TableGuess }

function Matched({ guess, reader, options, kept, onKeep, onAgain, onClose }: MatchedProps) {
  const [of, setOf] = useState<TableOf>(guess.of)
  const [columns, setColumns] = useState<TableColumns>(guess.columns)
  const [ground, setGround] = useState<TableGround | null>(null)
  const asked = groundAsked(of, columns)
  const isWaiting = asked !== null && ground === null
  const [read, setRead] = useState<Outcome<ShownImport> | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    setFault(null)
    if (isWaiting) return setRead(null)
    let isCurrent = true
    reader.readTable(of, columns, { ...options, ...(asked !== null && ground !== null ? { ground } : {}) }).then(
      outcome => isCurrent && setRead(outcome),
      (error: unknown) => isCurrent && setFault(`The table could not be read: ${reasonOf(error)}`),
    )
    return () => {
      isCurrent = false
    }
  }, [reader, of, columns, options, asked, isWaiting, ground])
  return (
    <>
      <ChoiceField
        label="Each line of the table is"
        value={of}
        choices={[
          { value: 'trees', name: 'a tree or other plant' },
          { value: 'rows', name: 'a row, block or bed' },
          { value: 'stations', name: 'a nest station' },
        ]}
        onCommit={next => {
          setOf(next)
          if (next === 'stations' && columns.places === 'numbers') setColumns({ ...columns, places: 'degrees' })
          onKeep(nothingKept)
        }}
      />
      <ImportColumns of={of} guess={guess} columns={columns} onChange={setColumns} />
      {asked === null ? null : (
        <ImportGround key={asked} asked={asked} zero={zeroOf(guess, columns)} onChange={setGround} />
      )}
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      {isWaiting ? (
        <p className="bring-end" role="status">
          The table does not say where things lie. Say it above, and what comes of it is shown here.
        </p>
      ) : read === null ? (
        <p role="status">Reading …</p>
      ) : read.ok ? (
        <ImportChoices
          reader={reader}
          kept={kept}
          onKeep={onKeep}
          onClose={onClose}
          found={read.value}
          problems={read.problems}
          of="its rows"
        />
      ) : (
        <Faults problems={read.problems} onAgain={onAgain} />
      )}
    </>
  )
}

/** What of the ground has to be said; nothing where the columns that would need it are not there either. */
function groundAsked(of: TableOf, { places, figures }: TableColumns): GroundAsked | null {
  if (places === 'metres') return figures.x !== null && figures.y !== null ? 'metres' : null
  if (places !== 'numbers' || of === 'stations') return null
  if (of === 'trees') return figures.row !== null && figures.tree !== null ? 'numbers of trees' : null
  const hasLength = figures.rowLength !== null || (figures.count !== null && figures.spacing !== null)
  return hasLength ? 'numbers of rows' : null
}

/** Coordinates of a survey or a national grid are counted from far away; those within so many metres are a farm's own. */
const farOff = 10_000

function zeroOf({ sample }: TableGuess, { figures, decimal, length }: TableColumns): { x: number; y: number } {
  const [x, y] = ([figures.x, figures.y] as const).map(at => numberOf(sample[0]?.[at ?? -1] ?? '', decimal) ?? 0)
  if (Math.max(Math.abs(x!), Math.abs(y!)) < farOff) return { x: 0, y: 0 }
  const scale = length === 'ft' ? foot : 1
  return { x: x! * scale, y: y! * scale }
}
