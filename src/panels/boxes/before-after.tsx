import { type ReactNode, useState } from 'react'
import { type Column, Table } from '../../parts/table'
import { changeBoxes } from '../../state/boxes-actions'
import { featureById } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { percent } from '../../text/words'
import { Explained } from '../coverage/figures'
import { usePlan } from '../hooks'
import { changeWords } from './answer-words'
import { useBoxes } from './use-boxes'

/** Coverage of a planting, or (`id` null) of the orchard, now and with what is answered; null = no bloom. */
export type Change = {
  readonly id: string | null
  readonly name: string
  readonly before: number | null
  readonly after: number | null
}

type Props<Row extends Change> = {
  readonly caption: string
  /** The first is the orchard. */
  readonly rows: readonly Row[]
  /** Figures open their working only while they answer the plan on the screen. */
  readonly isFresh: boolean
  /** The figures of "then" are being counted again. */
  readonly isBusy?: boolean
  /** Plantings count by the grower’s weights: the orchard’s figure is not that of the page Coverage. */
  readonly isWeighed?: boolean
  /** In place of the change. */
  readonly last?: Column<Row>
  readonly children?: ReactNode
}

/** More plantings than this are shown on asking. */
const most = 12

/** Coverage of each planting now and then. */
export function BeforeAfter<Row extends Change>({
  caption,
  rows,
  isFresh,
  isBusy,
  isWeighed,
  last,
  children,
}: Props<Row>) {
  const plan = usePlan()
  const [isAll, setAll] = useState(false)
  const shown = isAll ? rows : rows.slice(0, most + 1)
  const cell = (figure: 'coverage' | 'wouldBe', { id, name }: Row, share: number | null) => {
    if (share === null) return 'no bloom'
    if (!isFresh || (id !== null && !featureById(plan, id))) return percent(share)
    const label = `coverage of ${name} ${figure === 'coverage' ? 'now' : 'as it would be'}`
    return (
      <Explained figure={id === null && isWeighed === true ? 'wouldBe' : figure} id={id} label={label}>
        {percent(share)}
      </Explained>
    )
  }
  return (
    <section className="stack" aria-labelledby="before-after">
      <h2 id="before-after">Before and after</h2>
      {children}
      <div className={isBusy === true ? 'stale' : undefined}>
        <Table
          caption={caption}
          isCaptionHidden
          columns={[
            { key: 'name', head: 'Planting', cell: row => row.name },
            { key: 'before', head: 'Now', cell: row => cell('coverage', row, row.before), isFigure: true },
            { key: 'after', head: 'Then', cell: row => cell('wouldBe', row, row.after), isFigure: true },
            last ?? { key: 'change', head: 'Change', cell: row => changeWords(row.before, row.after), isFigure: true },
          ]}
          rows={shown}
          keyOf={row => row.id ?? 'all'}
        />
      </div>
      {shown.length < rows.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show {rows.length - shown.length} more plantings
        </button>
      ) : null}
    </section>
  )
}

/** Whether the map is shaded by what is or by what would be. */
export function ShadeChoice() {
  const store = usePlannerStore()
  const { isShownAfter } = useBoxes()
  return (
    <label className="option">
      <input
        type="checkbox"
        checked={isShownAfter}
        onChange={event => changeBoxes(store, { isShownAfter: event.target.checked })}
      />
      Shade the map as it would be
    </label>
  )
}
