import { setVisit } from '#geo/plan/edits-records'
import type { Station } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { useEdit, useSeason, useYear } from '../hooks'
import { titleOf } from '../titles'
import { recordIn } from './records'
import { visitText } from './visit-draft'

type Props = {
  readonly station: Station
  /** Opens a saved visit to be changed. */
  readonly onChange: (index: number) => void
  readonly onDeleted: () => void
}

/** A station's saved visits of the season, the latest first. */
export function VisitList({ station, onChange, onDeleted }: Props) {
  const store = usePlannerStore()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const { visits = [] } = recordIn(season, station.id)
  if (visits.length === 0) return null
  const remove = (index: number) => {
    edit(setVisit(year, station.id, index, null))
    onDeleted()
    notify(store, `The visit of ${dateText(visits[index]!.date)} was deleted. Undo brings it back.`)
  }
  return (
    <section className="stack" aria-label={`Visits to ${titleOf(station)}`}>
      <h3>Visits to {titleOf(station)}</h3>
      <ul className="results">
        {[...visits.entries()].toReversed().map(([index, visit]) => (
          <li key={`${visit.date} ${index}`}>
            <p>
              <strong>{dateText(visit.date)}</strong>: {visitText(visit)}
            </p>
            <div className="actions">
              <button type="button" className="quiet" onClick={() => onChange(index)}>
                Change <span className="unseen">the visit of {dateText(visit.date)}</span>
              </button>
              <button type="button" className="quiet" onClick={() => remove(index)}>
                Delete <span className="unseen">the visit of {dateText(visit.date)}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  )
}
