import type { ReactNode } from 'react'
import type { Range } from '#geo/report/report'
import { Figure } from '../../parts/figure'
import { Verdict } from '../../parts/verdict'
import type { WorkingTopic } from '../../state/store'
import { usePlanner } from '../../state/use-planner'
import { verdictOf } from '../../text/verdict'
import { about, honest, percent, rangeText } from '../../text/words'
import { useExplain, valueOfJob } from '../hooks'

type Topic = WorkingTopic['figure']

type FigureProps = {
  readonly figure: Topic
  readonly id: string | null
  readonly label: string
  readonly children: ReactNode
}

/** A figure that opens its working. */
export function Explained({ figure, id, label, children }: FigureProps) {
  const explain = useExplain()
  return (
    <Figure label={label} onExplain={() => explain({ figure, id })}>
      {children}
    </Figure>
  )
}

/** Ranges as far as they answer the plan on the screen; null before they are there. */
export function useRanges() {
  const job = usePlanner(state => state.results.ranges)
  const revision = usePlanner(state => state.document.revision)
  const { value, isFresh } = valueOfJob(job, revision)
  return isFresh ? value : null
}

/** "about 140", with "118 to 171" behind it once the range is known. */
export function Estimate({
  value,
  range,
}: {
  readonly value: number | null
  readonly range?: Range | null | undefined
}) {
  if (value === null) return 'cannot be said'
  const words = range ? rangeText(range.low, range.high, honest) : null
  return (
    <>
      {about(value)}
      {words !== null && words !== honest(value) ? <span className="estimate-range below"> ({words})</span> : null}
    </>
  )
}

type VerdictProps = {
  readonly label: string
  readonly share: number | null
  readonly figure: Topic
  readonly id: string | null
  readonly range?: Range | null | undefined
}

/** One of the three verdicts: word, figure, shape; pressing opens its working. */
export function VerdictFigure({ label, share, figure, id, range }: VerdictProps) {
  const word = verdictOf(share)
  return (
    <div className="verdict-line">
      <dt>{label}</dt>
      <dd>
        <Explained figure={figure} id={id} label={label}>
          <Verdict word={word} figure={share === null ? null : percent(share)} />
        </Explained>
        {range && range.high > range.low ? (
          <span className="estimate-range">{rangeText(range.low, range.high, percent)}</span>
        ) : null}
      </dd>
    </div>
  )
}
