import { useRef, useState } from 'react'
import { type Station, seasonOf } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import type { IsoDate } from '#geo/time/day'
import { DateField } from '../../parts/date-field'
import { select } from '../../state/actions'
import { stationsInUse } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { usePlan, useSeason, useYear } from '../hooks'
import { useServices } from '../services'
import { useKeptDraft } from './kept-draft'
import { recordIn, usualDay } from './records'
import { StationChoice } from './station-choice'
import { useStation } from './use-station'
import { draftFor, draftOf, type VisitDraft } from './visit-draft'
import { VisitForm } from './visit-form'
import { VisitList } from './visit-list'

/** A walk from station to station on one day. The station is chosen here or on the map, which shows the same one. */
export function Round({ onDone }: { readonly onDone: () => void }) {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const { today } = useServices()
  const planId = usePlanner(state => state.document.planId)
  const [date, setDate] = useKeptDraft<IsoDate | null>(`round ${planId} ${year}`, () => usualDay(season, year, today()))
  const [isOtherDay, setOtherDay] = useState(false)
  const inUse = stationsInUse(plan, year)
  const visited = inUse.filter(({ id }) => recordIn(season, id).visits?.some(visit => visit.date === date))
  const left = inUse.filter(station => !visited.includes(station))
  const current = useStation(inUse, left[0] ?? inUse[0])
  if (current === null) return <p>No station is in use in {year}, so there is none to visit.</p>
  const isOver = left.length === 0
  return (
    <>
      {date === null || isOtherDay ? (
        <DateField label="Day of the round" value={date} year={year} onCommit={setDate} />
      ) : null}
      {date === null ? (
        <p className="call">Say on which day the round was made.</p>
      ) : (
        <>
          <div className="round-day">
            <p role="status" className={isOver ? 'call' : undefined}>
              {isOver
                ? `The round of ${dateText(date)} is complete: ${counted(inUse.length, 'station')}.`
                : `${visited.length} of ${counted(inUse.length, 'station')} visited on ${dateText(date)}.`}
            </p>
            <button type="button" className="quiet" aria-expanded={isOtherDay} onClick={() => setOtherDay(!isOtherDay)}>
              Other day
            </button>
          </div>
          {isOver ? (
            <button type="button" className="first big" onClick={onDone}>
              Finish the round
            </button>
          ) : null}
          <StationChoice stations={inUse} done={visited} current={current} doneWord="visited" />
          <Visit key={`${planId} ${year} ${date} ${current.id}`} station={current} date={date} inUse={inUse} />
        </>
      )}
    </>
  )
}

function Visit(props: { readonly station: Station; readonly date: IsoDate; readonly inUse: readonly Station[] }) {
  const { station, date, inUse } = props
  const store = usePlannerStore()
  const year = useYear()
  const season = useSeason()
  const top = useRef<HTMLElement>(null)
  const planId = usePlanner(state => state.document.planId)
  const { visits = [] } = recordIn(season, station.id)
  const key = `visit ${planId} ${year} ${date} ${station.id}`
  const [kept, setDraft, forget] = useKeptDraft<VisitDraft | null>(key, () => null)
  // Nothing typed yet: what is saved for the day, which undo may change.
  const draft = kept !== null && (kept.index === null || kept.index < visits.length) ? kept : draftFor(visits, date)
  const next = nextStation(store.getState().document.plan!, year, inUse, station, date)
  const onSaved = () => {
    const after = nextStation(store.getState().document.plan!, year, inUse, station, date)
    setDraft(null)
    forget()
    select(store, [(after ?? station).id])
    top.current?.closest('.panel-body')?.scrollTo?.({ top: 0 })
  }
  const verb = draft.index === null ? 'Save' : 'Save the change'
  return (
    <section ref={top} className="stack" aria-label="This visit">
      {draft.index === null ? null : (
        <p className="aside-note">
          This changes the saved visit of {dateText(draft.date)}.{' '}
          {draft.date === date ? null : (
            <button type="button" className="link" onClick={() => setDraft(null)}>
              Leave it as it is
            </button>
          )}
        </p>
      )}
      <VisitForm
        station={station}
        draft={draft}
        onChange={setDraft}
        saveLabel={next === null ? verb : `${verb}, next station`}
        onSaved={onSaved}
      />
      <VisitList
        station={station}
        onChange={index => {
          setDraft(draftOf(visits, index))
          top.current?.scrollIntoView?.({ block: 'start' })
        }}
        onDeleted={() => setDraft(null)}
      />
    </section>
  )
}

/** The next one after `station`, around the list, that has not been visited on the day. */
function nextStation(
  plan: Parameters<typeof seasonOf>[0],
  year: number,
  inUse: readonly Station[],
  station: Station,
  date: IsoDate,
): Station | null {
  const season = seasonOf(plan, year)
  const at = inUse.indexOf(station)
  const round = [...inUse.slice(at + 1), ...inUse.slice(0, Math.max(0, at))]
  return round.find(({ id }) => !recordIn(season, id).visits?.some(visit => visit.date === date)) ?? null
}
