import { useState } from 'react'
import { thresholds } from '#geo/data/thresholds'
import type { Station } from '#geo/plan/plan'
import { problemText } from '#geo/problem'
import { recordOf, stationYears } from '#geo/seasons/record'
import { tubesToOpen } from '#geo/seasons/sample'
import { NumberField } from '../../parts/number-field'
import { problemsOf } from '../../state/selectors'
import { counted, percent, rangeText, whole } from '../../text/words'
import { usePlan, useSeason, useYear } from '../hooks'
import { harvestText } from './year-words'

const doubts: ReadonlySet<string> = new Set([
  'female-share-odd',
  'cells-missing',
  'tubes-listed',
  'opened-over-tubes',
  'cells-overfull',
])

/** What a station's opened tubes say of all its tubes, and how surely. */
export function FoundHere({ station }: { readonly station: Station }) {
  const plan = usePlan()
  const year = useYear()
  const found = stationYears(plan, year).find(({ id }) => id === station.id)
  const problems = problemsOf(plan, year).filter(({ at, code }) => at === station.id && doubts.has(code))
  if (found === undefined || found.tubesOpened === null) return null
  const { lossShare, daughters, sons } = found
  return (
    <section className="stack" aria-label="What the opened tubes say">
      <h3>What the opened tubes say</h3>
      {problems.map(problem => (
        <p key={problem.code} className="field-fault">
          {problemText(problem)}
        </p>
      ))}
      {lossShare === null ? (
        <p>Cells or losses were not counted, so the share lost cannot be told.</p>
      ) : (
        <p>
          {percent(lossShare.share)} of {counted(lossShare.cells, 'cell')} were lost
          {lossShare.low === null || lossShare.high === null
            ? found.tubesOpened === 1
              ? '; how far tubes differ cannot be told from one.'
              : '; how far it may be off can be told from tubes counted one by one.'
            : lossShare.low === lossShare.high
              ? '; every capped tube was opened.'
              : `; over all tubes ${rangeText(lossShare.low, lossShare.high, percent)}, 19 times in 20.`}
        </p>
      )}
      {daughters === null || sons === null ? null : (
        <p>
          {found.capped === null ? 'In the tubes opened' : `In all ${counted(found.capped, 'capped tube')}`}:{' '}
          {harvestText(daughters)} healthy females, {harvestText(sons)} males.
        </p>
      )}
      <MoreToOpen station={station} capped={found.capped} />
    </section>
  )
}

/** How many tubes more bring the share lost within so many points. */
function MoreToOpen({ station, capped }: { readonly station: Station; readonly capped: number | null }) {
  const season = useSeason()
  const [reach, setReach] = useState(thresholds.sampleReach.value)
  const opening = season && recordOf(season, station.id)?.opening
  const tubes = opening?.tubes ?? []
  if (capped === null || tubes.length === 0 || tubes.length >= capped) return null
  const sampled = tubes.flatMap(({ cells, losses }) => {
    const lost = losses && Object.values(losses).reduce<number>((sum, each) => sum + (each ?? 0), 0)
    return typeof cells === 'number' && lost !== undefined ? [{ size: cells, part: lost }] : []
  })
  const more = sampled.length === tubes.length ? tubesToOpen(sampled, reach, capped) : null
  return (
    <>
      <NumberField
        label="Wanted: share lost, to either side"
        quantity="share"
        value={reach}
        limit={{ low: 0.01, high: 0.5 }}
        isRequired
        onCommit={value => value !== null && setReach(value)}
      />
      <p role="status">
        {more === null
          ? 'How many more to open cannot be told yet: count cells and losses of two tubes that differ.'
          : more === 0
            ? `${whole(tubes.length)} opened tubes are enough for that.`
            : `Open about ${counted(more, 'tube')} more for that, of ${whole(capped - tubes.length)} left.`}
      </p>
    </>
  )
}
