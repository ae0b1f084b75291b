import type { ReactNode } from 'react'
import { bees } from '#geo/data/bees'
import { Table } from '../../parts/table'
import { notify } from '../../state/actions'
import type { Stocked, Suggested } from '../../state/boxes'
import { changeBoxes } from '../../state/boxes-actions'
import { usePlannerStore } from '../../state/use-planner'
import { grouped, percent } from '../../text/words'
import { Explained } from '../coverage/figures'
import { usePlan } from '../hooks'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { money } from './ask-words'
import { areaCovered, areaGained, costPerArea, type PerArea } from './covered-cost'
import {
  type Shopping,
  type ShoppingLine,
  type SureLine,
  shoppingCsv,
  shoppingForPlaces,
  shoppingForStock,
  shoppingText,
} from './shopping'
import { useTried } from './trial'
import { useBoxes } from './use-boxes'

/** What is to be bought for the new stations that are taken. */
export function PlacesShopping({ answer }: { readonly answer: Suggested }) {
  const shopping = shoppingForPlaces(answer, useBoxes())
  const tried = useTried()
  const area = tried && areaGained(answer.suggestion.plantings, tried)
  const perArea = usePerArea(shopping.total, area, true)
  return <List caption="What the new stations ask for" shopping={shopping} perArea={perArea} year={answer.year} />
}

/** What is to be bought for the stations that stay. */
export function StockShopping({ answer }: { readonly answer: Stocked }) {
  const store = usePlannerStore()
  const boxes = useBoxes()
  const shopping = shoppingForStock(answer, boxes)
  const tried = useTried()
  const area = tried && (boxes.isInHand ? areaGained(answer.result.plantings, tried) : areaCovered(tried))
  const perArea = usePerArea(shopping.total, area, boxes.isInHand)
  return (
    <List caption="What the stations ask for" shopping={shopping} perArea={perArea} year={answer.year}>
      {shopping.planned.length === 0 ? null : (
        <label className="option">
          <input
            type="checkbox"
            checked={boxes.isInHand}
            onChange={event => changeBoxes(store, { isInHand: event.target.checked })}
          />
          Leave out the cocoons that the season has planned already
        </label>
      )}
    </List>
  )
}

function usePerArea(total: number, area: number | undefined, isGain: boolean): PerArea | null {
  const { units } = usePlan()
  return area === undefined ? null : costPerArea(total, { area, isGain, units })
}

type Props = {
  readonly caption: string
  readonly shopping: Shopping
  readonly perArea: PerArea | null
  readonly year: number
  readonly children?: ReactNode
}

function List({ caption, shopping, perArea, year, children }: Props) {
  const { lines, total, spareShare } = shopping
  const rows: readonly (ShoppingLine | 'total')[] = [...lines, 'total']
  return (
    <section className="stack" aria-labelledby="shopping">
      <h2 id="shopping">Shopping list</h2>
      <Table
        caption={caption}
        isCaptionHidden
        columns={[
          { key: 'item', head: 'Item', cell: row => (row === 'total' ? 'Total' : row.item) },
          { key: 'count', head: 'Number', cell: row => (row === 'total' ? '' : grouped(row.count)), isFigure: true },
          { key: 'price', head: 'Each', cell: row => (row === 'total' ? '' : money(row.price)), isFigure: true },
          {
            key: 'sum',
            head: 'Sum',
            cell: row =>
              row === 'total' ? (
                <Explained figure="cost" id={null} label="cost in all">
                  {money(total)}
                </Explained>
              ) : (
                money(row.sum)
              ),
            isFigure: true,
          },
        ]}
        rows={rows}
        keyOf={row => (row === 'total' ? 'total' : row.item)}
      />
      <p className="aside-note">
        Prices are what stands under Prices and sizes, your own or assumed: no quotation. Tubes include{' '}
        {percent(spareShare)} to spare.
        {perArea === null ? '' : ` That is about ${money(perArea.cost)} ${perArea.per}.`}
      </p>
      {children}
      <Margin lines={shopping.sure} />
      <Planned shopping={shopping} />
      <Exports shopping={shopping} perArea={perArea} year={year} />
    </section>
  )
}

/** How many cocoons more make it nine times in ten that as many females nest as are counted on. */
function Margin({ lines }: { readonly lines: readonly SureLine[] }) {
  const store = usePlannerStore()
  const { isSure } = useBoxes()
  const known = lines.filter(({ sure, cocoons }) => sure > cocoons)
  if (known.length === 0) return null
  return (
    <>
      {known.map(({ bee, females, cocoons, sure }) => (
        <p key={bee}>
          {grouped(cocoons)} female cocoons{lines.length > 1 ? ` of ${bees[bee].latin}` : ''} give {grouped(females)}{' '}
          nesting females or more every other time;{' '}
          <Explained figure="sure" id={bee} label="female cocoons to be surer">
            {grouped(sure)}
          </Explained>{' '}
          do so nine times in ten.
        </p>
      ))}
      <label className="option">
        <input
          type="checkbox"
          checked={isSure}
          onChange={event => changeBoxes(store, { isSure: event.target.checked })}
        />
        Buy as many as it takes to be nine times in ten sure
      </label>
    </>
  )
}

function Planned({ shopping: { planned } }: { readonly shopping: Shopping }) {
  const hasBees = new Set(planned.map(({ bee }) => bee)).size > 1
  if (planned.length === 0) return null
  return (
    <Table
      caption="Cocoons that the season has planned already, by lot"
      columns={[
        {
          key: 'lot',
          head: 'Lot',
          cell: ({ lot, bee }) => `${lot || 'Without a lot'}${hasBees ? `, ${bees[bee].latin}` : ''}`,
        },
        { key: 'females', head: 'Female', cell: row => grouped(row.females), isFigure: true },
        { key: 'males', head: 'Male', cell: row => grouped(row.males), isFigure: true },
      ]}
      rows={planned}
      keyOf={({ lot, bee }) => `${bee} ${lot}`}
    />
  )
}

function Exports({ shopping, perArea, year }: Pick<Props, 'shopping' | 'perArea' | 'year'>) {
  const store = usePlannerStore()
  const plan = usePlan()
  const { saveTable, copyText } = useServices()
  const tell = async (act: () => Promise<string | null>, what: string) => {
    try {
      const words = await act()
      if (words !== null) notify(store, words)
    } catch (error) {
      notify(store, `The list was not ${what}: ${reasonOf(error)}`)
    }
  }
  const copy = async () => {
    await copyText(shoppingText(shopping, { money, perArea }))
    return 'The list is copied.'
  }
  const save = () => saveTable(`${plan.name} shopping list ${year}`, shoppingCsv(shopping, perArea))
  return (
    <div className="actions">
      <button type="button" onClick={() => tell(copy, 'copied')}>
        Copy the list
      </button>
      <button type="button" onClick={() => tell(save, 'saved')}>
        Save as CSV
      </button>
    </div>
  )
}
