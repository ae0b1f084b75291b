import type { StationResult } from '#geo/report/report'
import { counted, grouped } from '../../text/words'
import { useEvaluation } from '../hooks'
import { Estimate, Explained, useRanges } from './figures'

/** What one station holds: nesting females, the cocoons behind them, and tubes wanted against tubes there. */
export function StationResultCard({ id }: { readonly id: string }) {
  const { value, isFresh } = useEvaluation()
  const result = value?.report.stations.find(station => station.id === id)
  if (result === undefined) return <p className="aside-note">It is not in use this season, or there is no count yet.</p>
  return (
    <div className={isFresh ? undefined : 'stale'}>
      <StationNumbers result={result} />
    </div>
  )
}

export function StationNumbers({ result }: { readonly result: StationResult }) {
  const { id, name, females, femaleCocoons, maleCocoons } = result
  const range = useRanges()?.stations[id]?.females
  return (
    <dl className="numbers">
      <div>
        <dt>Nesting females</dt>
        <dd>
          <Explained figure="females" id={id} label={`nesting females at ${name}`}>
            <Estimate value={females} range={range} />
          </Explained>
        </dd>
      </div>
      <div>
        <dt>Cocoons</dt>
        <dd>
          <Explained figure="cocoons" id={id} label={`cocoons at ${name}`}>
            {grouped(femaleCocoons)} female, {grouped(maleCocoons)} male
          </Explained>
        </dd>
      </div>
      <div>
        <dt>Tubes</dt>
        <dd>
          <Explained figure="tubes" id={id} label={`tubes at ${name}`}>
            {tubeWords(result)}
          </Explained>
        </dd>
      </div>
    </dl>
  )
}

/** "360 wanted, 240 there: 120 tubes short". */
function tubeWords({ tubesWanted, tubes }: StationResult): string {
  if (tubes === null) return `${grouped(tubesWanted)} wanted; there: not said`
  const missing = tubesWanted - tubes
  return `${grouped(tubesWanted)} wanted, ${grouped(tubes)} there${missing > 0 ? `: ${counted(missing, 'tube')} short` : ''}`
}
