import { type FormEvent, useId, useState } from 'react'
import { addSeason, removeSeason } from '#geo/plan/edits-seasons'
import { seasonYear } from '#geo/plan/limits'
import { type Season, seasonOf } from '#geo/plan/plan'
import { Dialog } from '../../parts/dialog'
import { NumberField } from '../../parts/number-field'
import { notify, setYear } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { useEdit, usePlan, useYear } from '../hooks'
import { copiedSeason } from './copied-season'

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
  const isTaken = chosen !== null && seasonOf(plan, chosen) !== undefined
  const add = (event: FormEvent) => {
    event.preventDefault()
    if (chosen === null || isTaken) return
    const season: Season = way === 'copy' && before ? copiedSeason(before, chosen) : { year: chosen }
    edit(addSeason(season))
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
            A copy of {year}: bloom, stations in use and releases, each date moved to the new year
          </label>
          <label className="option">
            <input type="radio" name={id} checked={way === 'empty'} onChange={() => setWay('empty')} />
            Nothing: no bloom dates, no station in use
          </label>
        </fieldset>
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
