import type { Plan } from '#geo/plan/plan'
import type { StationDay } from '#geo/report/day'
import { dateText } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { Table } from '../../parts/table'
import { featureById } from '../../state/selectors'
import { usePlanner } from '../../state/use-planner'
import { honest, percent } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { titleOf } from '../titles'

/** Places that are named for a station; what is less than this is left out. */
const mostPlaces = 4
const leastShare = 0.01
const leastFemales = 0.5

/** Who works where on the day that is looked at: what the map shows, in words and figures. */
export function WhoWorks() {
  const plan = usePlan()
  const year = useYear()
  const day = usePlanner(state => state.view.day)
  const job = usePlanner(state => state.results.day)
  if (day === null || job.status !== 'ready' || job.value.day !== day) return null
  const { stations, plantings } = job.value
  const open = plantings.filter(planting => (planting.open ?? 0) > 0)
  const date = dateText(dateOfDay(day, year))
  return (
    <section className="stack" aria-labelledby="who-works">
      <h3 id="who-works">Who works where on {date}</h3>
      {stations.length === 0 ? (
        <p>No station is in use in {year}.</p>
      ) : (
        <Table
          caption={`Stations on ${date}`}
          columns={[
            { key: 'station', head: 'Station', cell: row => titleIn(plan, row.id) },
            { key: 'females', head: 'Females at work', cell: row => honest(row.females), isFigure: true },
            { key: 'where', head: 'Where', cell: row => placesText(plan, row) },
          ]}
          rows={stations}
          keyOf={row => row.id}
        />
      )}
      {open.length === 0 ? (
        <p>No planting is in bloom.</p>
      ) : (
        <Table
          caption={`Plantings in bloom on ${date}`}
          columns={[
            { key: 'planting', head: 'Planting', cell: row => titleIn(plan, row.id) },
            { key: 'open', head: 'Open', cell: row => percent(row.open ?? 0), isFigure: true },
            {
              key: 'met',
              head: 'Of what its flowers want that day',
              cell: row => (row.met === null ? 'wants none' : percent(row.met)),
              isFigure: true,
            },
          ]}
          rows={open}
          keyOf={row => row.id}
        />
      )}
      <p className="aside-note">
        Estimates. A day’s flowers want their share of the females wanted for the season; shares of work follow distance
        and open blossom.
      </p>
    </section>
  )
}

function titleIn(plan: Plan, id: string): string {
  const feature = featureById(plan, id)
  return feature === undefined ? id : titleOf(feature)
}

/** "Apple rows 45%, Pear 20% and 30% on blossom nobody drew". */
function placesText(
  plan: Plan,
  { females, work, elsewhere }: Pick<StationDay, 'females' | 'work' | 'elsewhere'>,
): string {
  if (females < leastFemales) return 'none at work'
  if (elsewhere === null) return 'nothing is open in range'
  const told = work.filter(({ share }) => share >= leastShare).slice(0, mostPlaces)
  const rest = work.reduce((sum, { share }) => sum + share, 0) - told.reduce((sum, { share }) => sum + share, 0)
  const parts = told.map(({ id, share }) => `${titleIn(plan, id)} ${percent(share)}`)
  if (rest >= leastShare) parts.push(`other plantings ${percent(rest)}`)
  if (elsewhere >= leastShare || parts.length === 0) parts.push(`blossom nobody drew ${percent(elsewhere)}`)
  return listed(parts)
}
