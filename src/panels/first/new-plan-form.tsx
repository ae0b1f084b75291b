import { type FormEvent, useId, useState } from 'react'
import { type BeeId, type BloomRegion, bloomRegions } from '#geo/data/own'
import type { Plan, Units } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { ChoiceField } from '../../parts/choice-field'
import { UnitsProvider } from '../../parts/units-context'
import { seasonToPlan } from '../../text/home'
import { regionNames } from '../../text/names'
import { useServices } from '../services'
import { BeeChoice } from './bee-choice'
import { likelyAt, newPlan } from './new-plan'
import { PlaceChoice } from './place-choice'

type Props = { readonly onStart: (plan: Plan) => void }

/** Starts a plan: only what the map and the defaults need; all of it can be changed later. */
export function NewPlanForm({ onStart }: Props) {
  const { timeZone, today } = useServices()
  const [name, setName] = useState('')
  const [place, setPlace] = useState<LngLat | null>(null)
  const [ownBee, setOwnBee] = useState<BeeId | null>(null)
  const [ownRegion, setOwnRegion] = useState<BloomRegion | null>(null)
  const [units, setUnits] = useState<Units>('metric')
  const id = useId()
  const likely = place === null ? null : likelyAt(place)
  const bee = ownBee ?? likely?.bee ?? 'osmia-lignaria'
  const bloomRegion = ownRegion ?? likely?.bloomRegion ?? 'continental'
  const now = today()
  const year = seasonToPlan(now, place)
  const start = (event: FormEvent) => {
    event.preventDefault()
    onStart(newPlan({ name, place, bee, bloomRegion, units, timeZone, year }))
  }
  const guess = likely === null ? undefined : 'Guessed from the place; change it where it is wrong.'
  return (
    <UnitsProvider value={units}>
      <form className="stack" onSubmit={start}>
        <div className="field">
          <label htmlFor={`${id}-name`}>Name of the plan</label>
          <input
            id={`${id}-name`}
            type="text"
            autoComplete="off"
            placeholder="Lower orchard"
            value={name}
            onChange={event => setName(event.target.value)}
          />
        </div>
        <PlaceChoice onPlace={setPlace} />
        <BeeChoice value={bee} onCommit={setOwnBee} />
        <ChoiceField
          label="Spring is most like"
          value={bloomRegion}
          choices={bloomRegions.map(value => ({ value, name: regionNames[value] }))}
          onCommit={setOwnRegion}
          note={
            guess ??
            'Decides the default bloom dates. Dates you have seen yourself always go first. South of the equator they move by half a year.'
          }
        />
        <fieldset>
          <legend>Units</legend>
          <div className="options">
            {(['metric', 'us'] as const).map(value => (
              <label key={value} className="option">
                <input type="radio" name={`${id}-units`} checked={units === value} onChange={() => setUnits(value)} />
                {value === 'metric' ? 'Metres and hectares' : 'Feet and acres'}
              </label>
            ))}
          </div>
        </fieldset>
        <p className="field-note">
          {year > Number(now.slice(0, 4))
            ? `Its first season is ${year}, the spring to come; other seasons can be added to it.`
            : `Its first season is ${year}; other seasons can be added to it.`}
        </p>
        <button type="submit" className="first">
          Start the plan
        </button>
      </form>
    </UnitsProvider>
  )
}
