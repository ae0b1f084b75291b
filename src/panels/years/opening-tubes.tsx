import { useRef, useState } from 'react'
import { setOpening } from '#geo/plan/edits-records'
import type { NestCounts, Opening, Station } from '#geo/plan/plan'
import { openingFaults } from '#geo/plan/record-faults'
import type { IsoDate } from '#geo/time/day'
import { DateField } from '../../parts/date-field'
import { notify } from '../../state/actions'
import { stationSeasonOf } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { useServices } from '../services'
import { titleOf } from '../titles'
import { CountFields } from './count-fields'
import { useKeptDraft } from './kept-draft'
import { openingDay } from './opening-date'
import { countsDraft, countsOf, countsText, hasTotals, isEmptyCounts, withoutTotals } from './opening-draft'
import { RecordFaults } from './record-faults'
import { recordIn } from './records'

/** Tubes of a station one after another; each is saved by itself, so that none is lost. */
export function OpeningTubes({ station }: { readonly station: Station }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const { today } = useServices()
  const planId = usePlanner(state => state.document.planId)
  const opening = recordIn(season, station.id).opening
  const tubes = opening?.tubes ?? []
  const [day, setDay] = useState<IsoDate | null>(() => openingDay(season, year, today()))
  const date = opening?.date ?? day
  const [at, setAt] = useState<number | null>(null)
  const index = at !== null && at < tubes.length ? at : tubes.length
  const [kept, setDraft, forget] = useKeptDraft<ReturnType<typeof countsDraft> | null>(
    `tube ${planId} ${year} ${station.id}`,
    () => null,
  )
  const draft = kept ?? countsDraft(tubes[index])
  const name = titleOf(station)
  const before: Opening = { ...opening, date: date ?? '' }
  const listed = (list: readonly NestCounts[]): Opening => {
    const { cells: _, females: __, males: ___, losses: ____, ...rest } = before
    return { ...rest, tubes: list, tubesOpened: list.length }
  }
  const after = [...tubes.slice(0, index), countsOf(draft), ...tubes.slice(index + 1)]
  const faults = openingFaults(listed(after), stationSeasonOf(plan, year, station.id)?.tubes).filter(
    fault => fault.code !== 'cells-overfull' || fault.tube === index,
  )
  const isEmpty = isEmptyCounts(draft)
  const top = useRef<HTMLHeadingElement>(null)
  const show = () => top.current?.scrollIntoView?.({ block: 'start' })
  const keep = (list: readonly NestCounts[]) => {
    if (date === null) return
    const patch = { ...withoutTotals, date, tubes: list, tubesOpened: list.length }
    edit(setOpening(year, station.id, list.length > 0 ? patch : null))
    setAt(null)
    setDraft(null)
    forget()
  }
  return (
    <section className="stack" aria-label={`Tubes of ${name}`}>
      <DateField
        label="Opened on"
        value={date}
        year={year}
        onCommit={next =>
          opening !== undefined && next !== null ? edit(setOpening(year, station.id, { date: next })) : setDay(next)
        }
      />
      {opening !== undefined && hasTotals(opening) ? (
        <p className="aside-note">Sums are written down: {countsText(opening)}. Saving a tube takes their place.</p>
      ) : null}
      <h3 ref={top}>
        Tube {index + 1}
        {index < tubes.length ? ', saved before' : ''}
      </h3>
      <CountFields draft={draft} onChange={setDraft} hasTens={false} />
      <RecordFaults faults={faults} name={name} />
      <div className="save-bar">
        <button
          type="button"
          className="first"
          disabled={isEmpty || faults.length > 0 || date === null}
          onClick={() => {
            keep(after)
            show()
          }}
        >
          Save tube {index + 1}, next tube
        </button>
      </div>
      {tubes.length === 0 ? null : (
        <ol className="results">
          {tubes.map((tube, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a tube is its place in the list
            <li key={i}>
              <p>
                <strong>Tube {i + 1}</strong>: {countsText(tube)}
              </p>
              <div className="actions">
                <button
                  type="button"
                  className="quiet"
                  onClick={() => {
                    setAt(i)
                    setDraft(countsDraft(tube))
                    show()
                  }}
                >
                  Change tube {i + 1}
                </button>
                <button
                  type="button"
                  className="quiet"
                  onClick={() => {
                    keep(tubes.filter((_, other) => other !== i))
                    notify(store, `Tube ${i + 1} was deleted. Undo brings it back.`)
                  }}
                >
                  Delete tube {i + 1}
                </button>
              </div>
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}
