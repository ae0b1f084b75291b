import { useId } from 'react'
import { Table } from '../../parts/table'
import { useWidth } from '../../parts/use-width'
import type { CurvePoint, Suggested } from '../../state/boxes'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted, percent } from '../../text/words'
import { drawCurve, mostOnCurve, stopCurve } from '../../worker/siting-schedule'
import { valueOfJob } from '../hooks'
import { changeWords } from './answer-words'
import { money } from './ask-words'
import { useSuggested } from './use-boxes'

/** Coverage against the number of new stations: where another box stops paying. */
export function CurveView({ answer }: { readonly answer: Suggested }) {
  const store = usePlannerStore()
  const job = usePlanner(state => state.results.curve)
  const { isRunning: isBusy } = useSuggested()
  const { value: points } = valueOfJob(job, 0)
  const isRunning = job.status === 'running'
  const id = useId()
  if (!answer.suggestion.stations.some(station => station.new)) return null
  return (
    <section className="stack" aria-labelledby="curve">
      <h2 id="curve">Where does another box stop paying?</h2>
      {job.status === 'failed' ? <p role="alert">{job.reason}</p> : null}
      {points === null || points.length < 2 ? null : <Curve points={points} isDone={!isRunning} />}
      {isRunning ? (
        <div className="stack">
          <p id={id} role="status">
            {points === null || points.length === 0
              ? 'Looking at places and what they would do.'
              : `Looking for the best of ${counted(points.length, 'new station')}.`}
          </p>
          <progress aria-labelledby={id} max={mostOnCurve(answer) + 1} value={points?.length ?? 0} />
          <button type="button" onClick={() => stopCurve(store)}>
            Stop
          </button>
        </div>
      ) : job.status === 'ready' ? null : (
        <>
          <div className="actions">
            <button type="button" disabled={isBusy} onClick={() => drawCurve(store)}>
              Try one station, two, three and on
            </button>
          </div>
          <p className="field-note">Each with as many cocoons as here, on the same ground. It can be stopped.</p>
        </>
      )}
    </section>
  )
}

/** Less than this share for one more box hardly shows in an orchard. */
const littleGain = 0.01

/** From where on another station adds under a point. */
function payingWords(points: readonly CurvePoint[]): string {
  const at = points.findIndex(({ coverage }, i) => {
    const before = points[i - 1]?.coverage
    return i > 0 && coverage !== null && before != null && coverage - before < littleGain
  })
  if (at < 0) return `Up to ${points.at(-1)?.count}, each one still adds a point or more.`
  if (at === 1) return 'Even the first adds under a point.'
  return `Beyond ${counted(points[at - 1]!.count, 'more station')}, another one adds under a point.`
}

function Curve({ points, isDone }: { readonly points: readonly CurvePoint[]; readonly isDone: boolean }) {
  return (
    <>
      {isDone ? <p>{payingWords(points)}</p> : null}
      <CurveChart points={points} />
      <Table
        caption="Coverage by number of new stations"
        columns={[
          { key: 'count', head: 'New stations', cell: row => row.count },
          {
            key: 'coverage',
            head: 'Coverage',
            cell: row => (row.coverage === null ? 'cannot be said' : percent(row.coverage)),
            isFigure: true,
          },
          { key: 'gain', head: 'The last adds', cell: row => gainOf(points, row), isFigure: true },
          { key: 'cost', head: 'Cost', cell: row => money(row.cost), isFigure: true },
        ]}
        rows={points}
        keyOf={row => String(row.count)}
      />
    </>
  )
}

function gainOf(points: readonly CurvePoint[], point: CurvePoint): string {
  const before = points.find(({ count }) => count === point.count - 1)
  return before === undefined ? '' : changeWords(before.coverage, point.coverage)
}

const height = 150
const margin = { left: 38, right: 12, top: 10, bottom: 22 }

/** The curve as a line with dots; ticks above the dots show what no layout can exceed. The table has the same figures. */
function CurveChart({ points }: { readonly points: readonly CurvePoint[] }) {
  const [frame, width] = useWidth<HTMLDivElement>(340)
  const id = useId()
  const last = Math.max(1, points.at(-1)?.count ?? 1)
  const x = (count: number) => margin.left + (count / last) * (width - margin.left - margin.right)
  const y = (share: number) => margin.top + (1 - share) * (height - margin.top - margin.bottom)
  const known = points.filter((point): point is CurvePoint & { coverage: number } => point.coverage !== null)
  return (
    <div ref={frame} className="chart">
      <svg role="img" aria-labelledby={`${id}-title`} viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
        <title id={`${id}-title`}>Coverage by number of new stations; the table below has the same figures</title>
        {[0, 0.5, 1].map(share => (
          <g key={share}>
            <path className="chart-line" d={`M${margin.left} ${y(share)}H${width - margin.right}`} />
            <text className="chart-date" x={margin.left - 6} y={y(share) + 4} textAnchor="end">
              {percent(share)}
            </text>
          </g>
        ))}
        <path
          className="curve-line"
          d={known.map((p, i) => `${i ? 'L' : 'M'}${x(p.count)} ${y(p.coverage)}`).join('')}
        />
        {known.map(({ count, coverage, bound }) => (
          <g key={count}>
            {bound === null || count === 0 ? null : (
              <path className="curve-bound" d={`M${x(count) - 7} ${y(bound)}H${x(count) + 7}`} />
            )}
            <circle className="curve-dot" cx={x(count)} cy={y(coverage)} r="4" />
            <text className="chart-date" x={x(count)} y={height - 6} textAnchor="middle">
              {count}
            </text>
          </g>
        ))}
      </svg>
    </div>
  )
}
