import { mostTubes } from '#geo/stocking/stock'
import { Table } from '../../parts/table'
import { notify } from '../../state/actions'
import type { Suggested } from '../../state/boxes'
import { pricesOf } from '../../state/boxes'
import { takenStations } from '../../state/boxes-actions'
import { settingsOf } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { boreText } from '../../text/units'
import { grouped, percent } from '../../text/words'
import { Explained } from '../coverage/figures'
import { usePlan } from '../hooks'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { money } from './ask-words'
import { coveredCost } from './covered-cost'
import { lotsOf, type ShoppingLine, shoppingCsv, shoppingLines, shoppingText, totalOf } from './shopping'
import { useTrial } from './trial'
import { useAsk, useBoxes } from './use-boxes'

/** What is to be bought for the new stations that are taken. */
export function ShoppingList({ answer }: { readonly answer: Suggested }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const [ask] = useAsk()
  const boxes = useBoxes()
  const { saveTable, copyText } = useServices()
  const { trial } = useTrial(answer)
  const taken = takenStations(answer, boxes)
  const { bees, site } = settingsOf(answer.plan)
  const { boreMin, boreMax, depthMin } = bees[taken[0]?.bee ?? answer.plan.bee]
  const size = `bore ${boreText(boreMin, plan.units)} to ${boreText(boreMax, plan.units)}, ${boreText(depthMin, plan.units)} deep or more`
  const lines = shoppingLines(taken, pricesOf(ask), size)
  const lots = lotsOf(answer.plan, answer.year).filter(({ lot, females }) => lot !== '' && females > 0)
  const total = totalOf(lines)
  const perArea = trial === null ? null : coveredCost(total, answer.suggestion, trial.report, plan.units)
  const rows: readonly (ShoppingLine | 'total')[] = [...lines, 'total']
  const tell = async (act: () => Promise<string | null>, what: string) => {
    try {
      const words = await act()
      if (words !== null) notify(store, words)
    } catch (error) {
      notify(store, `The list was not ${what}: ${reasonOf(error)}`)
    }
  }
  return (
    <section className="stack" aria-labelledby="shopping">
      <h2 id="shopping">Shopping list</h2>
      <Table
        caption="What the new stations ask for"
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
        Prices are what stands above, your own or assumed: no quotation. Of the tubes, {percent(site.spareTubes)} are
        spare.
        {perArea === null ? '' : ` That is about ${perArea} more covered.`}
      </p>
      {taken.some(({ tubes, new: isNew }) => isNew && tubes > mostTubes) ? (
        <p className="caution">
          Spread tubes over more stations where you can: many small ones do better than few large ones.
        </p>
      ) : null}
      {lots.length === 0 ? null : (
        <Table
          caption="Cocoons that the season has planned already, by lot"
          columns={[
            { key: 'lot', head: 'Lot', cell: row => row.lot },
            { key: 'females', head: 'Female', cell: row => grouped(row.females), isFigure: true },
            { key: 'males', head: 'Male', cell: row => grouped(row.males), isFigure: true },
          ]}
          rows={lots}
          keyOf={row => row.lot}
        />
      )}
      <div className="actions">
        <button
          type="button"
          onClick={() =>
            tell(async () => {
              await copyText(shoppingText(lines, money))
              return 'The list is copied.'
            }, 'copied')
          }
        >
          Copy the list
        </button>
        <button
          type="button"
          onClick={() =>
            tell(() => saveTable(`${plan.name} shopping list ${answer.year}`, shoppingCsv(lines, lots)), 'saved')
          }
        >
          Save as CSV
        </button>
      </div>
    </section>
  )
}
