import type { ReactNode } from 'react'
import { ChoiceField } from './choice-field'
import { Table } from './table'
import './column-match.css'

export type MatchedFigure<F extends string> = {
  readonly figure: F
  readonly label: string
  /** The table is nothing without it: there is no "not in the table". */
  readonly isNeeded?: boolean
}

type Props<F extends string> = {
  readonly names: readonly string[]
  /** The first lines as they stand in the table. */
  readonly sample: readonly (readonly string[])[]
  readonly caption: string
  readonly figures: readonly MatchedFigure<F>[]
  /** Which column, from 0, holds each figure; null where none does. */
  readonly columnOf: (figure: F) => number | null
  readonly onMatch: (figure: F, column: number | null) => void
  /** How the table is written, below. */
  readonly children: ReactNode
}

type Line = { readonly cells: readonly string[]; readonly at: number }

const notThere = 'none'

/** Which column of a table holds what: guessed, and open to be put right. */
export function ColumnMatch<F extends string>({
  names,
  sample,
  caption,
  figures,
  columnOf,
  onMatch,
  children,
}: Props<F>) {
  const columns = names.map((name, at) => ({ value: String(at), name }))
  return (
    <section className="stack" aria-label="Which column is which">
      <h3>Which column is which</h3>
      <p className="aside-note">Guessed from the table. Put right what is wrong; below you see what comes of it.</p>
      <Table
        caption={caption}
        columns={names.map((name, at) => ({ key: String(at), head: name, cell: ({ cells }: Line) => cells[at] ?? '' }))}
        rows={sample.map((cells, at): Line => ({ cells, at }))}
        keyOf={({ at }) => String(at)}
      />
      <div className="columns">
        {figures.map(({ figure, label, isNeeded }) => {
          const at = columnOf(figure)
          return (
            <ChoiceField
              key={figure}
              label={label}
              value={at === null ? notThere : String(at)}
              choices={isNeeded ? columns : [{ value: notThere, name: 'not in the table' }, ...columns]}
              onCommit={value => onMatch(figure, value === notThere ? null : Number(value))}
            />
          )
        })}
      </div>
      {children}
    </section>
  )
}

type DecimalProps = { readonly value: '.' | ','; readonly onCommit: (decimal: '.' | ',') => void }

/** Whether figures have a decimal point or a comma. */
export function DecimalField({ value, onCommit }: DecimalProps) {
  return (
    <ChoiceField
      label="Decimals"
      value={value}
      choices={[
        { value: '.', name: 'point: 4.5' },
        { value: ',', name: 'comma: 4,5' },
      ]}
      onCommit={onCommit}
    />
  )
}
