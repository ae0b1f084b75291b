import type { WeatherDay } from '#geo/plan/plan'
import { type Problem, problemText } from '#geo/problem'
import { dateText } from '#geo/time/date-text'
import { Disclosure } from '../../parts/disclosure'
import { type Column, Table } from '../../parts/table'
import { useUnits } from '../../parts/units-context'
import { withUnit } from '../../text/units'
import { counted, grouped } from '../../text/words'

/** As many of them are shown at once as can be read. */
const mostShown = 12

type ProblemsProps = { readonly problems: readonly Problem[]; readonly of?: 'the file' | 'its rows' }

/** What is wrong, by row where there are rows. */
export function RowProblems({ problems, of = 'its rows' }: ProblemsProps) {
  if (problems.length === 0) return <p>Nothing is wrong with {of}.</p>
  const first = problems.slice(0, mostShown)
  const others = problems.slice(mostShown)
  return (
    <section className="stack" aria-label={`What is wrong with ${of}`}>
      <p>{counted(problems.length, 'thing')} to look at. What cannot be read is left out, never guessed.</p>
      <ProblemLines problems={first} />
      {others.length === 0 ? null : (
        <Disclosure summary={`${others.length} more`}>
          <ProblemLines problems={others} />
        </Disclosure>
      )}
    </section>
  )
}

function ProblemLines({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <ul>
      {problems.map((problem, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is made anew as a whole
        <li key={at}>{problemText(problem)}</li>
      ))}
    </ul>
  )
}

/** The first and last days as they were understood, in the plan's units. */
export function ReadDays({ days }: { readonly days: readonly WeatherDay[] }) {
  const units = useUnits()
  const shown = days.length <= 6 ? days : [...days.slice(0, 3), ...days.slice(-3)]
  const temperature = (value: number | null) => (value === null ? 'not known' : withUnit(value, 'temperature', units))
  const plain = (value: number | null, unit: string) => (value === null ? 'not known' : `${grouped(value)} ${unit}`)
  const columns: readonly Column<WeatherDay>[] = [
    { key: 'date', head: 'Day', cell: ([date]) => dateText(date) },
    { key: 'low', head: 'Lowest', cell: day => temperature(day[1]), isFigure: true },
    { key: 'high', head: 'Highest', cell: day => temperature(day[2]), isFigure: true },
    { key: 'rain', head: 'Rain', cell: day => plain(day[3], 'mm'), isFigure: true },
    { key: 'wind', head: 'Wind', cell: day => plain(day[4], 'm/s'), isFigure: true },
  ]
  if (shown.length === 0) return null
  return (
    <Table caption="As understood: the first and last days" columns={columns} rows={shown} keyOf={([date]) => date} />
  )
}
