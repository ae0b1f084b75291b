import { type FormEvent, useId, useState } from 'react'
import { addSeason, removeSeason } from '#geo/plan/edits-seasons'
import { seasonYear } from '#geo/plan/limits'
import { seasonOf } from '#geo/plan/plan'
import { ChoiceField } from '../../parts/choice-field'
import { Dialog } from '../../parts/dialog'
import { NumberField } from '../../parts/number-field'
import { notify, setYear } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { counted, grouped } from '../../text/words'
import { useEdit, usePlan, useYear } from '../hooks'
import { type BloomFrom, nextSeasonEdit, ownStock, type StockFrom } from '../years/next-season'

type Way = 'copy' | 'empty'

/** Adds a season, from the one looked at or empty; takes away one that is no longer wanted. */
export function SeasonDialog({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const id = useId()
  const before = seasonOf(plan, year)
  const latest = Math.max(year, ...plan.seasons.map(season => season.year))
  const [chosen, setChosen] = useState<number | null>(latest + 1)
  const [way, setWay] = useState<Way>(before === undefined ? 'empty' : 'copy')
  const own = before === undefined ? null : ownStock(plan, year)
  const [stock, setStock] = useState<StockFrom>(own === null ? 'same' : 'own')
  const [bloom, setBloom] = useState<BloomFrom>('same')
  const isTaken = chosen !== null && seasonOf(plan, chosen) !== undefined
  const add = (event: FormEvent) => {
    event.preventDefault()
    if (chosen === null || isTaken) return
    if (way === 'copy' && before) {
      edit(nextSeasonEdit(plan, before, chosen, { stock: own === null ? 'same' : stock, bloom }))
    } else edit(addSeason({ year: chosen }))
    setYear(store, chosen)
    onClose()
  }
  const remove = () => {
    edit(removeSeason(year))
    notify(store, `Season ${year} was removed. Undo brings it back.`)
    onClose()
  }
  return (
    <Dialog title="Seasons" onClose={onClose}>
      <form className="stack" onSubmit={add}>
        <NumberField
          label="Year of the new season"
          quantity="year"
          value={chosen}
          onCommit={setChosen}
          limit={seasonYear}
          isRequired
        />
        {isTaken ? <p className="field-fault">The plan already has a season {chosen}.</p> : null}
        <fieldset>
          <legend>What it starts with</legend>
          <label className="option">
            <input
              type="radio"
              name={id}
              checked={way === 'copy'}
              disabled={before === undefined}
              onChange={() => setWay('copy')}
            />
            A copy of {year}: the same stations in use, and releases on the same days
          </label>
          <label className="option">
            <input type="radio" name={id} checked={way === 'empty'} onChange={() => setWay('empty')} />
            Nothing: no bloom dates, no station in use
          </label>
        </fieldset>
        {way === 'copy' && before !== undefined ? (
          <>
            <ChoiceField
              label="Cocoons"
              value={own === null ? 'same' : stock}
              choices={[
                { value: 'same', name: `As many as in ${year}` },
                ...(own === null
                  ? []
                  : [{ value: 'own' as const, name: `The ${grouped(own.left)} that ${year} left` }]),
              ]}
              onCommit={setStock}
              note={
                own === null
                  ? `What ${year} left to set out is not known: count both sexes on opening day.`
                  : `${counted(own.found, 'cocoon')} were found in ${year}; ${own.found > own.left ? `${grouped(own.found - own.left)} were given away` : 'none were given away'}. They go out in the same batches, as lot “own ${year}”; winter takes its part yet.`
              }
            />
            <ChoiceField
              label="Bloom"
              value={bloom}
              choices={[
                { value: 'same', name: `On the same days as in ${year}` },
                { value: 'usual', name: 'On the usual days of your region and apple date' },
              ]}
              onCommit={setBloom}
              note="An estimate until you see it."
            />
          </>
        ) : null}
        <div className="actions">
          <button type="submit" className="first">
            Add the season
          </button>
          <button type="button" onClick={onClose}>
            Cancel
          </button>
        </div>
      </form>
      {before === undefined || plan.seasons.length < 2 ? null : (
        <div className="stack">
          <h3>Season {year}</h3>
          <p className="aside-note">
            Removing it takes its bloom dates, releases and records out of the plan. What is drawn on the map stays.
          </p>
          <div>
            <button type="button" onClick={remove}>
              Remove season {year}
            </button>
          </div>
        </div>
      )}
    </Dialog>
  )
}
