import { useState } from 'react'
import { seasonWork } from '#geo/data/season-work'
import { compose } from '#geo/plan/edits'
import { setTakenIn } from '#geo/plan/edits-records'
import type { Station } from '#geo/plan/plan'
import { dateText, dayAndMonth } from '#geo/time/date-text'
import { daysBetween, type IsoDate, isIsoDate } from '#geo/time/day'
import { Caution } from '../../parts/caution'
import { DateField } from '../../parts/date-field'
import { counted } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { useServices } from '../services'
import { titleOf } from '../titles'
import { recordedStations, recordIn, usualDay } from './records'

/** When nests were taken in: of all stations at once, or of each. */
export function TakingIn() {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const { today } = useServices()
  const all = recordedStations(plan, year)
  const left = all.filter(({ id }) => recordIn(season, id).takenIn === undefined)
  const [day, setDay] = useState<IsoDate | null>(() => usualDay(undefined, year, today()))
  if (all.length === 0) return <p>No station is in use in {year}, so there is nothing to take in.</p>
  const takeAll = () =>
    day !== null &&
    edit(
      compose(
        `Note taking in of ${counted(left.length, 'station')}`,
        left.map(({ id }) => setTakenIn(year, id, day)),
      ),
    )
  return (
    <>
      <Caution about="stings" />
      {left.length === 0 ? (
        <p role="status">All {counted(all.length, 'station')} have a date.</p>
      ) : (
        <div className="call-box">
          <DateField label="Taken in on" value={day} year={year} onCommit={setDay} />
          <button type="button" className="first big" disabled={day === null} onClick={takeAll}>
            {left.length === all.length ? 'For all' : 'For the other'} {counted(left.length, 'station')}
          </button>
        </div>
      )}
      <ul className="results">
        {all.map(station => (
          <li key={station.id}>
            <StationIn station={station} />
          </li>
        ))}
      </ul>
      <p className="aside-note">A station without a date was left outside, or nobody wrote it down.</p>
    </>
  )
}

function StationIn({ station }: { readonly station: Station }) {
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const { visits = [], takenIn } = recordIn(season, station.id)
  const newest = lastNewCap(visits)
  const wait = seasonWork.takeInAfter.low
  const isEarly =
    takenIn !== undefined &&
    newest !== null &&
    isIsoDate(takenIn) &&
    takenIn >= newest &&
    daysBetween(newest, takenIn) < wait
  return (
    <>
      <DateField
        label={titleOf(station)}
        value={takenIn ?? null}
        year={year}
        onCommit={date => edit(setTakenIn(year, station.id, date))}
        note={takenIn === undefined ? 'not written down' : dateText(takenIn)}
      />
      {isEarly ? (
        <p className="field-fault">
          New caps were still counted on {dayAndMonth(newest)}. Wait {wait} days after the last one: young larvae are
          shaken off their food.
        </p>
      ) : null}
    </>
  )
}

/** The latest visit that found more capped tubes than the one before it. */
function lastNewCap(visits: readonly { readonly date: IsoDate; readonly capped?: number | null }[]): IsoDate | null {
  let before = 0
  let found: IsoDate | null = null
  for (const { date, capped } of visits.toSorted((a, b) => (a.date < b.date ? -1 : 1))) {
    if (typeof capped !== 'number') continue
    if (capped > before && isIsoDate(date)) found = date
    before = capped
  }
  return found
}
