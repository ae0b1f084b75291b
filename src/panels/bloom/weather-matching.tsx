import { useMemo, useState } from 'react'
import { guessColumns, type WeatherColumns, type WeatherGuess } from '#geo/file/weather-columns'
import { readWeatherTable, type WeatherTable } from '#geo/file/weather-table'
import { mergedWeather, setWeather } from '#geo/plan/edits-seasons'
import type { WeatherDay } from '#geo/plan/plan'
import { type Outcome, type Problem, problemText } from '#geo/problem'
import { weatherOfSeason } from '#geo/weather/record'
import { ChoiceField } from '../../parts/choice-field'
import { notify } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted, dateSpan } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { ColumnChoices } from './weather-columns'
import { ReadDays, RowProblems } from './weather-preview'

type Props = { readonly text: string; readonly onBack: () => void; readonly onClose: () => void }

/** A table whose columns are matched, with what comes of it, until it is taken into the season. */
export function WeatherMatching({ text, onBack, onClose }: Props) {
  const guessed = useMemo(() => guessColumns(text), [text])
  if (!guessed.ok) {
    return (
      <div className="stack">
        <Faults problems={guessed.problems} />
        <BackButton onBack={onBack} />
      </div>
    )
  }
  return <Matched text={text} guess={guessed.value} onBack={onBack} onClose={onClose} />
}

function Matched({ text, guess, onBack, onClose }: Props & { readonly guess: WeatherGuess }) {
  const [columns, setColumns] = useState<WeatherColumns>(guess.columns)
  const read = useMemo(() => readWeatherTable(text, columns), [text, columns])
  return (
    <div className="stack-wide">
      <ColumnChoices guess={guess} columns={columns} onChange={setColumns} />
      {read.ok ? (
        <Taking table={read} onBack={onBack} onClose={onClose} />
      ) : (
        <>
          <Faults problems={read.problems} />
          <BackButton onBack={onBack} />
        </>
      )}
    </div>
  )
}

type Taken = Extract<Outcome<WeatherTable>, { ok: true }>

/** What was read, row by row where something is wrong, and the button that keeps it. */
function Taking({ table, onBack, onClose }: Omit<Props, 'text'> & { readonly table: Taken }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const planId = usePlanner(state => state.document.planId) ?? ''
  const year = useYear()
  const before = useSeason()?.weather?.days ?? []
  const edit = useEdit()
  const { keepRestorePoint } = useServices()
  const [way, setWay] = useState<'join' | 'replace'>('join')
  const [fault, setFault] = useState<string | null>(null)
  const days = weatherOfSeason(table.value.days, year)
  const take = async () => {
    try {
      await keepRestorePoint(planId, plan, `before weather of ${year} was taken in`)
    } catch (error) {
      setFault(`Nothing was changed, since no restore point could be kept: ${reasonOf(error)}`)
      return
    }
    edit(setWeather(year, way === 'join' ? mergedWeather(before, days) : days))
    notify(store, `Weather of ${counted(days.length, 'day')} is in season ${year}. Undo takes it back.`)
    onClose()
  }
  return (
    <>
      <p className="answer">{takenText(table.value, days, year)}</p>
      <RowProblems problems={table.problems} />
      <ReadDays days={days} />
      {before.length === 0 || days.length === 0 ? null : (
        <ChoiceField
          label={`Season ${year} holds weather of ${counted(before.length, 'day')}`}
          value={way}
          choices={[
            { value: 'join', name: 'add to it; where both know a figure, the new one counts' },
            { value: 'replace', name: 'put the new table in its place' },
          ]}
          onCommit={setWay}
        />
      )}
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <div className="actions">
        <button type="button" className="first" disabled={days.length === 0} onClick={take}>
          {days.length === 0 ? `No day of ${year} in it` : `Take in ${counted(days.length, 'day')}`}
        </button>
        <BackButton onBack={onBack} />
      </div>
      <p className="aside-note">A restore point of the plan is kept first: see Restore points in the menu.</p>
    </>
  )
}

function takenText({ days: all, first, last }: WeatherTable, days: readonly WeatherDay[], year: number): string {
  const read = `${counted(all.length, 'day')} could be read, ${dateSpan(first, last)}.`
  const [from] = days
  const to = days.at(-1)
  if (from === undefined || to === undefined) {
    return `${read} None of them belongs to season ${year}: look at the order of day and month, or choose that year’s season first.`
  }
  if (days.length === all.length) return read
  return `${read} ${counted(days.length, 'day')} of them, ${dateSpan(from[0], to[0])}, count for season ${year}; the others are left out.`
}

function Faults({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <ul className="plain-list" role="alert">
      {problems.map(problem => (
        <li className="field-fault" key={problem.code + JSON.stringify(problem.values)}>
          {problemText(problem)}
        </li>
      ))}
    </ul>
  )
}

function BackButton({ onBack }: { readonly onBack: () => void }) {
  return (
    <button type="button" onClick={onBack}>
      Another table
    </button>
  )
}
