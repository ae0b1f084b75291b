import type { ReactNode } from 'react'

export type Column<Row> = {
  readonly key: string
  readonly head: string
  readonly cell: (row: Row) => ReactNode
  /** Figures stand right, with digits of equal width. */
  readonly isFigure?: true
}

type Props<Row> = {
  readonly caption: string
  /** The caption is read aloud but not seen, where a heading above says the same. */
  readonly isCaptionHidden?: boolean
  readonly columns: readonly Column<Row>[]
  readonly rows: readonly Row[]
  readonly keyOf: (row: Row) => string
}

/** A plain table whose first column names the row. It can be scrolled sideways, by keyboard too. */
export function Table<Row>({ caption, isCaptionHidden, columns, rows, keyOf }: Props<Row>) {
  const [first, ...others] = columns
  if (first === undefined) return null
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region has to be reachable by keyboard
    <section className="table-frame" tabIndex={0} aria-label={caption}>
      <table>
        <caption className={isCaptionHidden ? 'unseen' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ key, head, isFigure }) => (
              <th key={key} scope="col" className={isFigure ? 'figure-cell' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(row => (
            <tr key={keyOf(row)}>
              <th scope="row">{first.cell(row)}</th>
              {others.map(({ key, cell, isFigure }) => (
                <td key={key} className={isFigure ? 'figure-cell' : undefined}>
                  {cell(row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
