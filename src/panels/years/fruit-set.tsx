import { useState } from 'react'
import { setFruitSet } from '#geo/plan/edits-records'
import type { FruitSet, Planting } from '#geo/plan/plan'
import { Caution } from '../../parts/caution'
import { ChoiceField } from '../../parts/choice-field'
import { Stepper } from '../../parts/stepper'
import { notify, select } from '../../state/actions'
import { plantingsIn } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { grouped, percent } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { cropTitle, titleOf } from '../titles'

/** Flowers counted on a planting, and the fruit that came of them. */
export function FruitSetCounts() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const selection = usePlanner(state => state.view.selection)
  const all = plantingsIn(plan, year)
  const counts = season?.fruitSet ?? {}
  const current = all.find(({ id }) => selection[0] === id) ?? null
  const counted = all.filter(({ id }) => Object.hasOwn(counts, id))
  if (all.length === 0) return <p>No planting stands in the ground in {year}.</p>
  return (
    <>
      <Caution about="yield" />
      <ChoiceField
        label="Planting"
        value={current?.id ?? ''}
        choices={[
          { value: '', name: 'Choose one here or on the map' },
          ...all.map(planting => ({
            value: planting.id,
            name: titleOf(planting),
            group: cropTitle(plan, planting.properties.crop),
          })),
        ]}
        onCommit={id => select(store, id === '' ? [] : [id])}
      />
      {current === null ? null : <Count key={`${year} ${current.id}`} planting={current} />}
      {counted.length === 0 ? (
        <p className="aside-note">
          Mark a few branches in full bloom and count their flowers; count the fruit on them some weeks later.
        </p>
      ) : (
        <ul className="results">
          {counted.map(planting => {
            return (
              <li key={planting.id}>
                <p>
                  <strong>{titleOf(planting)}</strong>: {setText(counts[planting.id]!)}
                </p>
                <div className="actions">
                  <button type="button" className="quiet" onClick={() => select(store, [planting.id])}>
                    Change <span className="unseen">the count of {titleOf(planting)}</span>
                  </button>
                </div>
              </li>
            )
          })}
        </ul>
      )}
    </>
  )
}

function setText({ flowers, fruit }: FruitSet): string {
  if (typeof fruit !== 'number') return `${grouped(flowers)} flowers; fruit not counted yet`
  const share = flowers > 0 && fruit <= flowers ? `, ${percent(fruit / flowers)}` : ''
  return `${grouped(fruit)} fruit of ${grouped(flowers)} flowers${share}`
}

function Count({ planting }: { readonly planting: Planting }) {
  const store = usePlannerStore()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const saved = season?.fruitSet && Object.hasOwn(season.fruitSet, planting.id) ? season.fruitSet[planting.id]! : null
  const [flowers, setFlowers] = useState<number | null>(saved?.flowers ?? null)
  const [fruit, setFruit] = useState<number | null>(saved?.fruit ?? null)
  const name = titleOf(planting)
  const isOver = flowers !== null && fruit !== null && fruit > flowers
  return (
    <section className="stack" aria-label={`Fruit count of ${name}`}>
      <Stepper label="Flowers" value={flowers} onChange={setFlowers} hasTens />
      <Stepper label="Fruit on the same branches" value={fruit} onChange={setFruit} hasTens />
      {isOver ? (
        <p role="alert" className="field-fault">
          {fruit} fruit cannot come of {flowers} flowers. Count again.
        </p>
      ) : null}
      <button
        type="button"
        className="first big"
        disabled={flowers === null || isOver}
        onClick={() => {
          if (flowers === null) return
          edit(setFruitSet(year, planting.id, { flowers, ...(fruit !== null && { fruit }) }))
          notify(store, `The fruit count of ${name} is saved.`)
        }}
      >
        Save the count of {name}
      </button>
      {flowers !== null && fruit === null ? (
        <p className="field-note">Save the flowers now; come back when the fruit can be counted.</p>
      ) : null}
      {saved === null ? null : (
        <button type="button" className="quiet" onClick={() => edit(setFruitSet(year, planting.id, null))}>
          Delete the count of {name}
        </button>
      )}
    </section>
  )
}
