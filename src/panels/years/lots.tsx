import { type FormEvent, useState } from 'react'
import { setLot } from '#geo/plan/edits-records'
import { counted as countedLimit, seasonYear } from '#geo/plan/limits'
import { isStation, type Lot, type Plan, type Season } from '#geo/plan/plan'
import { stationYears } from '#geo/seasons/record'
import { Caution } from '../../parts/caution'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { counted, grouped, percent } from '../../text/words'
import { useEdit, usePlan, useYear } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'
import { titleOf } from '../titles'
import { Words } from './words-field'

const countLimit = fieldLimit(countedLimit('number of cocoons'))

/** Cocoons of one origin and season, so that a bad lot can be followed and stock counted. */
export function Lots() {
  const plan = usePlan()
  const lots = plan.lots ?? []
  return (
    <>
      <Caution about="moving" />
      {lots.length === 0 ? (
        <p>A lot is the cocoons of one origin and season. Name one, and say at each release which lot went out.</p>
      ) : null}
      {lots.map(lot => (
        <Disclosure key={lot.id} summary={`${lot.id}: ${lotText(plan, lot)}`}>
          <LotFields lot={lot} />
        </Disclosure>
      ))}
      <NewLot />
    </>
  )
}

function lotText(plan: Plan, lot: Lot): string {
  const count = typeof lot.count === 'number' ? counted(lot.count, 'cocoon') : 'not counted'
  const out = setOut(plan, lot.id)
  return out === 0 ? count : `${count}, ${grouped(out)} set out`
}

function setOut({ seasons }: Plan, id: string): number {
  return releasesOf(seasons).reduce((sum, { lot, females, males = 0 }) => sum + (lot === id ? females + males : 0), 0)
}

function releasesOf(seasons: readonly Season[]) {
  return seasons.flatMap(({ stations }) => Object.values(stations ?? {}).flatMap(({ releases }) => releases ?? []))
}

function LotFields({ lot }: { readonly lot: Lot }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const edit = useEdit()
  const stations = plan.features.filter(isStation)
  const change = (patch: Parameters<typeof setLot>[1]) => edit(setLot(lot.id, patch))
  return (
    <>
      <div className="fields">
        <TextField
          label="Origin"
          value={lot.origin ?? ''}
          placeholder="own nests, or who raised them"
          onCommit={origin => change({ origin: origin === '' ? undefined : origin })}
        />
        <NumberField
          label="Cocoons of both sexes"
          value={lot.count ?? null}
          limit={countLimit}
          onCommit={count => change({ count: count ?? undefined })}
          note={lot.count == null ? 'not counted' : undefined}
        />
        <NumberField
          label="Share of females"
          quantity="share"
          value={lot.femaleShare ?? null}
          limit={{ low: 0, high: 1 }}
          onCommit={femaleShare => change({ femaleShare: femaleShare ?? undefined })}
          note={lot.femaleShare == null ? 'not known' : undefined}
        />
        <ChoiceField
          label="Taken from the nests of"
          value={lot.station ?? ''}
          choices={[
            { value: '', name: 'several stations, or bought' },
            ...stations.map(station => ({ value: station.id, name: titleOf(station) })),
          ]}
          onCommit={station => change({ station: station === '' ? undefined : station })}
        />
        <NumberField
          label="Season they were raised in"
          quantity="year"
          value={lot.season ?? null}
          limit={fieldLimit(seasonYear)}
          onCommit={season => change({ season: season ?? undefined })}
        />
      </div>
      <button
        type="button"
        className="quiet"
        onClick={() => {
          change(null)
          notify(store, `Lot ${lot.id} was deleted. Undo brings it back.`)
        }}
      >
        Delete lot {lot.id}
      </button>
    </>
  )
}

function NewLot() {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const [name, setName] = useState('')
  const known = new Set((plan.lots ?? []).map(({ id }) => id))
  const own = ownLot(plan, year)
  const unwritten = [...new Set(releasesOf(plan.seasons).flatMap(({ lot }) => lot ?? []))].filter(id => !known.has(id))
  const id = name.trim()
  const isTaken = known.has(id)
  const add = (event: FormEvent) => {
    event.preventDefault()
    if (id === '' || isTaken) return
    edit(setLot(id, {}))
    setName('')
  }
  return (
    <form className="stack" onSubmit={add}>
      <h3>Add a lot</h3>
      {own === null || known.has(own.id) ? null : (
        <button type="button" onClick={() => edit(setLot(own.id, own.lot))}>
          Add “{own.id}”: {counted(own.lot.count, 'cocoon')} found in {year},{' '}
          {own.lot.femaleShare === undefined ? 'sexes not counted' : `${percent(own.lot.femaleShare)} females`}
        </button>
      )}
      {unwritten.map(each => (
        <button type="button" key={each} onClick={() => edit(setLot(each, {}))}>
          Add “{each}”, named at a release
        </button>
      ))}
      <Words label="Name of a new lot" value={name} onChange={setName} placeholder="origin, year" />
      {isTaken ? <p className="field-fault">There is a lot {id} already.</p> : null}
      <button type="submit" disabled={id === '' || isTaken}>
        Add the lot
      </button>
    </form>
  )
}

/** This season's own cocoons as a lot; null where none were found. */
function ownLot(plan: Plan, year: number) {
  const found = stationYears(plan, year)
  const sum = (of: 'daughters' | 'sons') => Math.round(found.reduce((total, each) => total + (each[of]?.count ?? 0), 0))
  const [females, males] = [sum('daughters'), sum('sons')]
  const count = females + males
  if (count === 0) return null
  const isSexed = found.every(({ daughters, sons }) => (daughters === null) === (sons === null))
  const femaleShare = isSexed ? Number((females / count).toFixed(3)) : undefined
  const lot = { origin: 'own nests', count, season: year, ...(femaleShare !== undefined && { femaleShare }) }
  return { id: `own ${year}`, lot: lot as typeof lot & { readonly femaleShare?: number } }
}
