import { setOpening } from '#geo/plan/edits-records'
import type { Opening, Station } from '#geo/plan/plan'
import { openingFaults } from '#geo/plan/record-faults'
import type { IsoDate } from '#geo/time/day'
import { DateField } from '../../parts/date-field'
import { Stepper } from '../../parts/stepper'
import { notify } from '../../state/actions'
import { stationSeasonOf } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { useServices } from '../services'
import { titleOf } from '../titles'
import { CountFields } from './count-fields'
import { useKeptDraft } from './kept-draft'
import { openingDay } from './opening-date'
import { type CountsDraft, countsDraft, countsOf, isEmptyCounts, withoutTotals } from './opening-draft'
import { RecordFaults } from './record-faults'
import { lastCount, recordIn } from './records'

type Draft = { readonly date: IsoDate | null; readonly tubesOpened: number | null; readonly counts: CountsDraft }

/** What the opened tubes of a station held in all. */
export function OpeningSums({ station }: { readonly station: Station }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const { today } = useServices()
  const planId = usePlanner(state => state.document.planId)
  const { opening, visits = [] } = recordIn(season, station.id)
  const saved: Draft = {
    date: opening?.date ?? openingDay(season, year, today()),
    tubesOpened: opening?.tubesOpened ?? null,
    counts: countsDraft(opening),
  }
  const [kept, setDraft, forget] = useKeptDraft<Draft | null>(`sums ${planId} ${year} ${station.id}`, () => null)
  const draft = kept ?? saved
  const change = (patch: Partial<Draft>) => setDraft({ ...draft, ...patch })
  const capped = lastCount(visits, null)?.capped ?? null
  const { date, tubesOpened, counts } = draft
  const name = titleOf(station)
  const isEmpty = tubesOpened === null && isEmptyCounts(counts)
  const whole: Opening = { date: date ?? '', ...(tubesOpened !== null && { tubesOpened }), ...countsOf(counts) }
  const faults = openingFaults(whole, stationSeasonOf(plan, year, station.id)?.tubes)
  const isStopped = date === null || isEmpty || faults.length > 0
  const save = () => {
    if (date === null) return
    edit(setOpening(year, station.id, { ...withoutTotals, tubesOpened: undefined, ...whole, date, tubes: undefined }))
    setDraft(null)
    forget()
    notify(store, `The opening of ${name} is saved.`)
  }
  const remove = () => {
    edit(setOpening(year, station.id, null))
    setDraft(null)
    forget()
    notify(store, `The opening of ${name} was deleted. Undo brings it back.`)
  }
  return (
    <section className="stack" aria-label={`Opening of ${name}`}>
      {(opening?.tubes?.length ?? 0) > 0 ? (
        <p className="aside-note">
          {opening!.tubes!.length} tubes are written down one by one. Saving sums here takes their place.
        </p>
      ) : null}
      <DateField label="Opened on" value={date} year={year} onCommit={next => change({ date: next })} />
      <Stepper
        label="Tubes opened"
        value={tubesOpened}
        onChange={next => change({ tubesOpened: next })}
        from={capped ?? 0}
        {...(capped !== null && { fromLabel: `All ${capped} capped` })}
        hasTens
        note={capped === null ? 'capped tubes not counted' : `${capped} were capped`}
      />
      <CountFields draft={counts} onChange={next => change({ counts: next })} hasTens />
      <RecordFaults faults={faults} name={name} />
      <div className="save-bar">
        <button type="button" className="first" disabled={isStopped} onClick={save}>
          Save the opening of {name}
        </button>
        {isEmpty ? <p className="field-note">Nothing is counted yet.</p> : null}
      </div>
      {opening === undefined ? null : (
        <button type="button" className="quiet" onClick={remove}>
          Delete the opening of {name}
        </button>
      )}
    </section>
  )
}
