import { useState } from 'react'
import { Caution } from '../../parts/caution'
import { usePlanner } from '../../state/use-planner'
import { usePlan, useSeason, useYear } from '../hooks'
import { FoundHere } from './found-here'
import { OpeningSums } from './opening-sums'
import { OpeningTubes } from './opening-tubes'
import { recordedStations, recordIn } from './records'
import { StationChoice } from './station-choice'
import { useStation } from './use-station'

const ways = [
  { value: 'sums', name: 'All opened tubes together' },
  { value: 'tubes', name: 'Tube by tube' },
] as const

/** Nests opened station by station, counted in one sum or tube by tube. */
export function OpeningDay() {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const planId = usePlanner(state => state.document.planId)
  const stations = recordedStations(plan, year)
  const done = stations.filter(({ id }) => recordIn(season, id).opening !== undefined)
  const current = useStation(stations, stations.find(station => !done.includes(station)) ?? stations[0])
  const opening = current === null ? undefined : recordIn(season, current.id).opening
  const [chosen, setChosen] = useState<{ readonly id: string; readonly way: 'sums' | 'tubes' } | null>(null)
  if (current === null) return <p>No station is in use in {year}, so there is none to open.</p>
  const way = chosen?.id === current.id ? chosen.way : (opening?.tubes?.length ?? 0) > 0 ? 'tubes' : 'sums'
  return (
    <>
      <StationChoice stations={stations} done={done} current={current} doneWord="opened" />
      <fieldset className="two-ways">
        <legend className="unseen">How it is counted</legend>
        {ways.map(({ value, name }) => (
          <button
            type="button"
            key={value}
            aria-pressed={way === value}
            onClick={() => setChosen({ id: current.id, way: value })}
          >
            {name}
          </button>
        ))}
      </fieldset>
      <Caution about="dust" />
      {way === 'sums' ? (
        <OpeningSums key={`${planId} ${year} ${current.id}`} station={current} />
      ) : (
        <OpeningTubes key={`${planId} ${year} ${current.id}`} station={current} />
      )}
      <FoundHere station={current} />
      <Caution about="cleaning" />
    </>
  )
}
