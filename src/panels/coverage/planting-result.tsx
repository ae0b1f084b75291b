import type { PlantingResult } from '#geo/report/report'
import { limitWords } from '../../text/names'
import { verdictOf } from '../../text/verdict'
import { capitalised, points } from '../../text/words'
import { useEvaluation } from '../hooks'
import { Estimate, Explained, useRanges, VerdictFigure } from './figures'
import { adviceOn, gainsOf } from './remedies'

type Props = {
  readonly id: string
  /** Only the three verdicts. */
  readonly isShort?: boolean
}

/** What the count says of one planting. */
export function PlantingResultCard({ id, isShort = false }: Props) {
  const { value, isFresh } = useEvaluation()
  const result = value?.report.plantings.find(planting => planting.id === id)
  if (result === undefined) {
    return isShort ? null : (
      <p className="aside-note">There is no count for it yet, or it does not stand there this season.</p>
    )
  }
  return (
    <div className={isFresh ? undefined : 'stale'}>
      <Verdicts result={result} />
      {isShort ? null : <ResultDetails result={result} />}
    </div>
  )
}

export function Verdicts({ result }: { readonly result: PlantingResult }) {
  const ranges = useRanges()?.plantings[result.id]
  return (
    <dl className="verdicts">
      <VerdictFigure label="In reach" share={result.reach} figure="reach" id={result.id} range={ranges?.reach} />
      <VerdictFigure
        label="In time"
        share={result.timingMatch}
        figure="timingMatch"
        id={result.id}
        range={ranges?.timingMatch}
      />
      <VerdictFigure
        label="In number"
        share={result.coverage}
        figure="coverage"
        id={result.id}
        range={ranges?.coverage ?? null}
      />
    </dl>
  )
}

/** Females wanted, supplied and short, what holds it back, and what each remedy would gain. */
export function ResultDetails({ result }: { readonly result: PlantingResult }) {
  const { id, name, limit } = result
  const ranges = useRanges()?.plantings[id]
  const gains = gainsOf(result)
  const held = limitWords(result)
  const isEnough = verdictOf(result.coverage) === 'yes'
  return (
    <div className="stack">
      <dl className="numbers">
        <div>
          <dt>Wanted</dt>
          <dd>
            <Explained figure="wanted" id={id} label={`females wanted by ${name}`}>
              <Estimate value={result.wanted} range={ranges?.wanted} />
            </Explained>
          </dd>
        </div>
        <div>
          <dt>Supplied</dt>
          <dd>
            <Explained figure="supplied" id={id} label={`females supplied to ${name}`}>
              <Estimate value={result.supplied} range={ranges?.supplied} />
            </Explained>
          </dd>
        </div>
        <div>
          <dt>Short by</dt>
          <dd>
            <Explained figure="shortBy" id={id} label={`females short at ${name}`}>
              <Estimate value={result.shortBy} range={ranges?.shortBy} />
            </Explained>
          </dd>
        </div>
      </dl>
      {limit === null || held === null || isEnough ? null : (
        <p>
          {limit === 'none' ? '' : 'Held back by: '}
          <Explained figure="limit" id={id} label={`what holds ${name} back`}>
            {limit === 'none' ? capitalised(held) : held}
          </Explained>
          . {adviceOn({ ...result, limit })}
        </p>
      )}
      {isEnough || gains.every(({ gain }) => gain < 0.005) ? null : (
        <div>
          <p className="aside-note">With everything else as planned, its coverage would gain:</p>
          <ul className="gains">
            {gains.map(({ remedy, name: words, gain }) => (
              <li key={remedy}>
                <span>{words}</span>
                <span className="figure-cell">{points(gain)}</span>
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  )
}
