import { type FormEvent, type KeyboardEvent, useLayoutEffect, useState } from 'react'
import { cropName } from '#geo/data/settings'
import { featureLimits } from '#geo/plan/limits'
import type { Plan } from '#geo/plan/plan'
import { CropField } from '../parts/crop-field'
import { type FieldLimit, NumberField } from '../parts/number-field'
import { TextField } from '../parts/text-field'
import { useMedia } from '../parts/use-media'
import { usePlanner } from '../state/use-planner'
import type { Quantity } from '../text/units'
import { figuresClass, focusFigures, focusMap } from './figure-focus'
import type { Hand, HandStatus } from './hand'
import { mostPlants, mostRows } from './tools/draw-rows'
import type { FigureName, Growing, ToolEvent } from './tools/tool'
import './figure-fields.css'

type Field = { readonly label: string; readonly quantity?: Quantity; readonly limit: FieldLimit }

const fields: Readonly<Record<FigureName, Field>> = {
  length: { label: 'Length', quantity: 'length', limit: { low: 0, high: 20_000, isAbove: true } },
  bearing: { label: 'Bearing', quantity: 'degrees', limit: { low: -360, high: 360 } },
  plants: { label: 'Plants in the row', limit: { low: 1, high: mostPlants, isWhole: true } },
  rows: { label: 'Number of rows', limit: { low: 1, high: mostRows, isWhole: true } },
  rowSpacing: { label: 'Between rows', quantity: 'length', limit: featureLimits.row.rowSpacing! },
  spacing: { label: 'In the row', quantity: 'length', limit: featureLimits.row.spacing! },
  along: { label: 'Rows’ bearing', quantity: 'degrees', limit: { low: -360, high: 360 } },
}

const order = Object.keys(fields) as FigureName[]
const headlandLimit = { low: 0, high: 100, isAbove: true } as const

type Props = {
  readonly hand: Hand
  readonly status: HandStatus
  /** Whether the fields are to be shown; null = not said: on a wide map they are. */
  readonly isOpen: boolean | null
  readonly onToggle: (isOpen: boolean) => void
}

/** What grows, and exact figures, for what is being drawn. On a phone they come when asked for: the map has little room. */
export function FigureFields({ hand, status, isOpen, onToggle }: Props) {
  const isNarrow = useMedia('(max-width: 700px)')
  const plan = usePlanner(state => state.document.plan)
  const [steps, setSteps] = useState(0)
  // The fields of the next stage must stand before one of them can be gone to.
  useLayoutEffect(() => {
    if (steps > 0 && !focusFigures()) focusMap()
  }, [steps])
  const { figures = {}, grows, putWords, headland, isSnapping, asked } = status
  const usual = order.filter(name => figures[name] !== undefined)
  // What is asked for comes first: Tab and a digit lead there from the map.
  const open = asked === undefined ? usual : [asked, ...usual.filter(name => name !== asked)]
  if (plan === null || (open.length === 0 && grows === undefined)) return null
  /** On to the first field of what comes next; when nothing is under way any more, keys belong to the map. */
  const goOn = (event: ToolEvent) => {
    hand.handle(event)
    if (hand.status().points > 0) setSteps(steps + 1)
    else focusMap()
  }
  const put = (event: FormEvent) => {
    event.preventDefault()
    goOn({ type: 'put' })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') focusMap()
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return
    // The field has told its figure by now. With nothing typed there is no point to set, and the line is at its end.
    const { putWords: putsPoint, canFinish } = hand.status()
    if (putsPoint || !canFinish) return
    event.preventDefault()
    goOn({ type: 'finish' })
  }
  const isShown = isOpen ?? !isNarrow
  return (
    <>
      <button type="button" className="quiet" aria-expanded={isShown} onClick={() => onToggle(!isShown)}>
        {isShown ? 'Fewer fields' : grows ? `Crop and figures: ${growsText(plan, grows)}` : 'Type the figures'}
      </button>
      {isShown && grows ? (
        <div className="draw-fields draw-grows">
          <CropField plan={plan} value={grows.crop} onCommit={crop => hand.grow({ crop })} />
          <TextField label="Cultivar" value={grows.cultivar} onCommit={cultivar => hand.grow({ cultivar })} />
        </div>
      ) : null}
      {open.length > 0 ? (
        <form className={figuresClass} onSubmit={put} onKeyDown={onKeyDown}>
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
                    // So many plants make the row so long: half a number would pull its end about.
                    isLive={name !== 'plants'}
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
                  note="kept from edges"
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
      ) : null}
    </>
  )
}

/** On a phone the fields are folded away: what is about to be planted is said all the same. */
function growsText(plan: Plan, { crop, cultivar }: Required<Growing>): string {
  const name = cropName(crop, plan.crops)
  return cultivar ? `${name}, ${cultivar}` : name
}
