import { type KeyboardEvent, type PointerEvent, useMemo, useState } from 'react'
import { dateOfDay } from '#geo/time/day'
import { Chart, ChartAxis } from '../../parts/chart'
import { setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { dateText } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { bandsSummary, dayInWords, mergedFlights, type SeasonBands, seasonBands } from '../season-bands'
import './strip.css'

const labelWidth = 132
/** Room for the bands, and how high one of them may be, px. */
const room = 128
const highest = 18
const lowest = 13
/** With more bands than this the stations share one. */
const mostBands = 7

/** Bloom and flight over the season along the foot of the window; the day under the pointer is told in words. */
export function SeasonStrip() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const isFolded = usePlanner(state => state.view.stripFolded)
  const bands = useMemo(() => {
    const all = seasonBands(plan, year)
    return all.blooms.length + all.flights.length > mostBands ? mergedFlights(all) : all
  }, [plan, year])
  const isEmpty = bands.blooms.length + bands.flights.length === 0
  const [chosen, setChosen] = useState<number | null>(null)
  const day = chosen === null ? null : Math.min(bands.to, Math.max(bands.from, chosen))
  const words = day === null ? null : dayInWords(bands, day, year)
  return (
    <section className="strip" data-folded={isFolded} aria-label="Bloom and flight over the season">
      <div className="strip-head">
        <h2>Season {year}</h2>
        <p className="strip-words">
          {isFolded || isEmpty ? '' : (words ?? 'Point at a day, or use the arrow keys, to read it.')}
        </p>
        <button
          type="button"
          className="quiet fold"
          aria-expanded={!isFolded}
          onClick={() => setView(store, { stripFolded: !isFolded })}
        >
          {isFolded ? 'Unfold' : 'Fold'}
          <span className="unseen"> the season</span>
        </button>
      </div>
      {isFolded ? null : isEmpty ? (
        <p className="aside-note">Bloom and flight appear here once there are bloom dates and cocoons set out.</p>
      ) : (
        <DayReader bands={bands} year={year} day={day} words={words} onDay={setChosen} />
      )}
    </section>
  )
}

type ReaderProps = {
  readonly bands: SeasonBands
  readonly year: number
  readonly day: number | null
  readonly words: string | null
  readonly onDay: (day: number | null) => void
}

/** The bands with a day that can be moved along them, by pointer or arrow keys. */
function DayReader({ bands, year, day, words, onDay }: ReaderProps) {
  const { from, to } = bands
  const onPointer = (event: PointerEvent<HTMLDivElement>) => {
    const { left, width } = event.currentTarget.getBoundingClientRect()
    const share = (event.clientX - left - labelWidth) / Math.max(1, width - labelWidth)
    onDay(share < 0 ? null : Math.round(from + share * (to - from)))
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const step = steps[event.key]
    if (step === undefined) return
    event.preventDefault()
    const start = day ?? from
    if (event.key === 'Home') onDay(from)
    else if (event.key === 'End') onDay(to)
    else onDay(start + step)
  }
  return (
    <>
      <div
        className="strip-bands"
        role="slider"
        tabIndex={0}
        aria-label="Day of the season"
        aria-valuemin={from}
        aria-valuemax={to}
        aria-valuenow={day ?? from}
        aria-valuetext={words ?? `${dateText(dateOfDay(from, year))}: move with the arrow keys`}
        onPointerMove={onPointer}
        onPointerDown={onPointer}
        onKeyDown={onKeyDown}
      >
        <Chart
          title={`Season ${year}`}
          summary={bandsSummary(bands, year)}
          bands={[...bands.flights, ...bands.blooms]}
          from={from}
          to={to}
          year={year}
          bandHeight={Math.max(
            lowest,
            Math.min(highest, Math.floor(room / (bands.blooms.length + bands.flights.length))),
          )}
          labelWidth={labelWidth}
          day={day}
          isBare
        />
      </div>
      <ChartAxis from={from} to={to} year={year} labelWidth={labelWidth} />
    </>
  )
}

const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -7,
  PageUp: 7,
  Home: 0,
  End: 0,
}
