import { useState } from 'react'
import type { Change, Comparison, PlantingComparison } from '#geo/seasons/compare'
import { ChoiceField } from '../../../parts/choice-field'
import { Table } from '../../../parts/table'
import { about } from '../../../text/words'
import { Explained } from '../../coverage/figures'
import { useSelect } from '../../hooks'
import { changeText, shareText } from './compare-words'

const figures = [
  { value: 'coverage', name: 'Coverage' },
  { value: 'wanted', name: 'Females wanted' },
  { value: 'supplied', name: 'Females supplied' },
  { value: 'reach', name: 'In reach' },
  { value: 'timingMatch', name: 'In time' },
] as const

export type CompareFigure = (typeof figures)[number]['value']
type Line = {
  readonly id: string | null
  readonly name: string
  readonly isThere: readonly [boolean, boolean]
  readonly change: Change
}

/** More plantings than this are shown on asking. */
const most = 10

/** From, to and change of one figure, planting by planting, those first that changed most. */
export function PlantingsTable({ comparison }: { readonly comparison: Comparison }) {
  const select = useSelect()
  const [figure, setFigure] = useState<CompareFigure>('coverage')
  const [isAll, setAll] = useState(false)
  const { years } = comparison
  const lines = linesOf(comparison, figure)
  const shown = isAll ? lines : lines.slice(0, most + 1)
  const name = figures.find(({ value }) => value === figure)!.name
  const cell = (line: Line, at: 0 | 1) => {
    if (!line.isThere[at]) return 'not there'
    const value = at === 0 ? line.change.from : line.change.to
    return (
      <Explained figure="seasonChange" id={line.id} label={`${name} of ${line.name} in ${years[at]}`}>
        {valueText(figure, value)}
      </Explained>
    )
  }
  return (
    <section className="stack" aria-labelledby="by-planting">
      <h2 id="by-planting">Planting by planting</h2>
      <ChoiceField label="Figure" value={figure} choices={figures} onCommit={setFigure} />
      <Table
        caption={`${name} in ${years[0]} and ${years[1]}`}
        isCaptionHidden
        columns={[
          {
            key: 'name',
            head: 'Planting',
            cell: line =>
              line.id === null ? (
                line.name
              ) : (
                <button type="button" className="link" onClick={() => select([line.id!])}>
                  {line.name}
                </button>
              ),
          },
          { key: 'from', head: String(years[0]), cell: line => cell(line, 0), isFigure: true },
          { key: 'to', head: String(years[1]), cell: line => cell(line, 1), isFigure: true },
          { key: 'change', head: 'Change', cell: line => differenceText(figure, line), isFigure: true },
        ]}
        rows={shown}
        keyOf={line => line.id ?? 'orchard'}
      />
      {shown.length < lines.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show {lines.length - shown.length} more plantings
        </button>
      ) : null}
    </section>
  )
}

/** The orchard, where it has the figure, then plantings by the size of their change; those without one last. */
export function linesOf({ orchard, plantings }: Comparison, figure: CompareFigure): readonly Line[] {
  const sizeOf = ({ change }: Line) => (change.change === null ? -1 : Math.abs(change.change))
  const lines = plantings
    .map((each): Line => {
      const isThere = [each.wanted.from !== null, each.wanted.to !== null] as const
      return { id: each.id, name: each.name, isThere, change: changeOf(each, figure) }
    })
    .toSorted((a, b) => sizeOf(b) - sizeOf(a))
  if (figure === 'timingMatch') return lines
  return [{ id: null, name: 'The orchard', isThere: [true, true], change: orchard[figure] }, ...lines]
}

function changeOf(planting: PlantingComparison, figure: CompareFigure): Change {
  return figure === 'coverage' ? planting : planting[figure]
}

export function valueText(figure: CompareFigure, value: number | null): string {
  if (value === null) return figure === 'wanted' ? 'cannot be said' : 'no bloom'
  return figure === 'wanted' || figure === 'supplied' ? about(value) : shareText(value)
}

function differenceText(figure: CompareFigure, { change: { change }, isThere }: Line): string {
  if (!isThere[0]) return 'new'
  if (!isThere[1]) return 'gone'
  if (change === null) return ''
  if (figure !== 'wanted' && figure !== 'supplied') return changeText(change)
  if (Math.abs(change) < 0.5) return Math.abs(change) < sameCount ? 'no change' : 'under 1'
  return `${change > 0 ? '+' : '−'}${about(Math.abs(change)).replace('about ', '')}`
}

/** Sums of the same parts in another order differ by less. */
const sameCount = 1e-6
