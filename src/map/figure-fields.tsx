import { type FormEvent, type KeyboardEvent, useState } from 'react'
import { featureLimits } from '#geo/plan/limits'
import { type FieldLimit, NumberField } from '../parts/number-field'
import { useMedia } from '../parts/use-media'
import type { Quantity } from '../text/units'
import { figuresClass, focusMap } from './figure-focus'
import type { Hand, HandStatus } from './hand'
import { mostPlants, mostRows } from './tools/draw-rows'
import type { FigureName } from './tools/tool'
import './figure-fields.css'

type Field = { readonly label: string; readonly quantity?: Quantity; readonly limit: FieldLimit }

const fields: Readonly<Record<FigureName, Field>> = {
  length: { label: 'Length', quantity: 'length', limit: { low: 0, high: 20_000, isAbove: true } },
  bearing: { label: 'Bearing', quantity: 'degrees', limit: { low: -360, high: 360 } },
  plants: { label: 'Plants in the row', limit: { low: 1, high: mostPlants, isWhole: true } },
  rows: { label: 'Number of rows', limit: { low: 1, high: mostRows, isWhole: true } },
  rowSpacing: { label: 'Between rows', quantity: 'length', limit: featureLimits.row.rowSpacing! },
  spacing: { label: 'In the row', quantity: 'length', limit: featureLimits.row.spacing! },
}

const order = Object.keys(fields) as FigureName[]
const headlandLimit = { low: 0, high: 100, isAbove: true } as const

type Props = { readonly hand: Hand; readonly status: HandStatus }

/** Exact figures for what is being drawn. On a phone they come when asked for: the map has little room. */
export function FigureFields({ hand, status }: Props) {
  const isNarrow = useMedia('(max-width: 700px)')
  const [isOpen, setOpen] = useState(false)
  const { figures, putWords, headland, isSnapping } = status
  if (figures === undefined) return null
  const put = (event: FormEvent) => {
    event.preventDefault()
    hand.handle({ type: 'put' })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') focusMap()
  }
  const open = order.filter(name => figures[name] !== undefined)
  const isShown = !isNarrow || isOpen
  return (
    <form className={figuresClass} onSubmit={put} onKeyDown={onKeyDown}>
      {isNarrow ? (
        <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          Type the figures
        </button>
      ) : null}
      {isShown ? (
        <div className="draw-fields">
          {open.map(name => {
            const { typed, live } = figures[name]!
            return (
              <NumberField
                key={name}
                {...fields[name]}
                value={typed}
                note=""
                {...(live === null ? {} : { fallback: live })}
                onCommit={value => hand.handle({ type: 'type', figures: { [name]: value } })}
              />
            )
          })}
          {isSnapping ? (
            <NumberField
              label="Headland"
              quantity="length"
              limit={headlandLimit}
              value={headland}
              note=""
              onCommit={value => hand.snap({ headland: value })}
            />
          ) : null}
        </div>
      ) : null}
      {putWords ? (
        <button type="submit" className="first">
          {putWords}
        </button>
      ) : null}
    </form>
  )
}
