import { useId } from 'react'
import { addVisit, setVisit } from '#geo/plan/edits-records'
import { setStationSeason } from '#geo/plan/edits-seasons'
import { stationLimits } from '#geo/plan/limits'
import type { Station } from '#geo/plan/plan'
import { dateText, dayAndMonth } from '#geo/time/date-text'
import { NumberField } from '../../parts/number-field'
import { Stepper } from '../../parts/stepper'
import { stationSeasonOf } from '../../state/selectors'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'
import { useServices } from '../services'
import { titleOf } from '../titles'
import { RecordFaults } from './record-faults'
import { lastCount, recordIn } from './records'
import { dayDoubt, draftFaults, isEmptyDraft, type VisitDraft, visitOf } from './visit-draft'
import { Words } from './words-field'

type Props = {
  readonly station: Station
  readonly draft: VisitDraft
  readonly onChange: (draft: VisitDraft) => void
  /** What the button says that keeps the visit. */
  readonly saveLabel: string
  readonly onSaved: () => void
}

/** One visit to one station: what can be counted and seen standing in front of it. Nothing is kept before it is saved. */
export function VisitForm({ station, draft, onChange, saveLabel, onSaved }: Props) {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const { today } = useServices()
  const { visits = [] } = recordIn(season, station.id)
  const use = stationSeasonOf(plan, year, station.id)
  const others = visits.filter((_, i) => i !== draft.index)
  const last = lastCount(others, draft.date)
  const faults = draftFaults(visits, draft, use?.tubes)
  const isEmpty = isEmptyDraft(draft)
  const doubt = dayDoubt(draft.date, today())
  const save = () => {
    if (faults.length > 0 || isEmpty) return
    if (draft.index === null) edit(addVisit(year, station.id, visitOf(draft)))
    else {
      const nothing = { capped: undefined, mudWet: undefined, damage: undefined, note: undefined }
      edit(setVisit(year, station.id, draft.index, { ...nothing, ...visitOf(draft) }))
    }
    onSaved()
  }
  return (
    <>
      <Stepper
        label="Capped tubes"
        value={draft.capped}
        onChange={capped => onChange({ ...draft, capped })}
        from={last?.capped ?? 0}
        hasTens
        {...(last !== null && { fromLabel: `Still ${last.capped}` })}
        note={cappedNote(last, use?.tubes)}
      />
      <MudChoice value={draft.mudWet} onChange={mudWet => onChange({ ...draft, mudWet })} />
      <Words label="Damage" value={draft.damage} onChange={damage => onChange({ ...draft, damage })} />
      <Words label="Note" value={draft.note} onChange={note => onChange({ ...draft, note })} isLong />
      <RecordFaults faults={faults} name={titleOf(station)} isBoxed>
        {faults.some(({ code }) => code === 'capped-over-tubes') ? (
          <NumberField
            label={`Tubes at ${titleOf(station)}`}
            value={use?.tubes ?? null}
            limit={fieldLimit(stationLimits.tubes)}
            isRequired
            onCommit={tubes => tubes !== null && edit(setStationSeason(year, station.id, { tubes }))}
          />
        ) : null}
      </RecordFaults>
      {doubt === null ? null : <p className="field-fault">{doubt}</p>}
      <div className="save-bar">
        <button type="button" className="first" disabled={isEmpty || faults.length > 0} onClick={save}>
          {saveLabel}
        </button>
        {isEmpty ? <p className="field-note">Nothing is noted yet for {dateText(draft.date)}.</p> : null}
      </div>
    </>
  )
}

function cappedNote(last: ReturnType<typeof lastCount>, tubes: number | undefined): string {
  const before = last === null ? 'first count' : `${last.capped} on ${dayAndMonth(last.date)}`
  return tubes === undefined ? before : `${before}; ${tubes} tubes here`
}

const mudStates = [
  { value: true, name: 'Wet' },
  { value: false, name: 'Dry' },
  { value: null, name: 'Not looked at' },
] as const

function MudChoice(props: { readonly value: boolean | null; readonly onChange: (value: boolean | null) => void }) {
  const name = useId()
  return (
    <fieldset>
      <legend>Mud nearby</legend>
      <div className="big-options">
        {mudStates.map(state => (
          <label key={state.name} className="big-option">
            <input
              type="radio"
              name={name}
              checked={props.value === state.value}
              onChange={() => props.onChange(state.value)}
            />
            {state.name}
          </label>
        ))}
      </div>
    </fieldset>
  )
}
