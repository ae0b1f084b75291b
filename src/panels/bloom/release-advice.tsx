import { useState } from 'react'
import type { Plan } from '#geo/plan/plan'
import { problemText } from '#geo/problem'
import { dateText } from '#geo/time/date-text'
import { acceptAdvice } from '#geo/timing/accept-advice'
import type { Advice, BeeAdvice } from '#geo/timing/advice'
import { listed } from '#geo/wording/plain'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { Figure } from '../../parts/figure'
import { Table } from '../../parts/table'
import { notify } from '../../state/actions'
import { isAnswerTo } from '../../state/boxes'
import { featureById, stationsInUse } from '../../state/selectors'
import type { Advised } from '../../state/timing'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted, percent } from '../../text/words'
import { adviseRelease, stopAdvice } from '../../worker/timing-schedule'
import { beeTitle } from '../first/bee-choice'
import { useEdit, useExplain, usePlan, useYear, valueOfJob } from '../hooks'
import { titleOf } from '../titles'
import { batchesText, gainText } from './advice-words'

type Batches = '1' | '2' | '3'
const orchard = 'orchard'

/** When to set the cocoons out: asked for the orchard or one station, answered by trying dates, taken by one press. */
export function ReleaseAdvice() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const job = usePlanner(state => state.results.advice)
  const { value } = valueOfJob(job, 0)
  const [scope, setScope] = useState(value?.options.scope ?? orchard)
  const [batches, setBatches] = useState<Batches>((value ? String(value.options.batches) : '2') as Batches)
  const used = stationsInUse(plan, year)
  if (used.length === 0)
    return <p>No station is in use in {year}: take one into use below, then dates can be advised.</p>
  const asked = used.some(({ id }) => id === scope) ? scope : orchard
  const isRunning = job.status === 'running'
  const ask = () => adviseRelease(store, { scope: asked, batches: Number(batches) as 1 | 2 | 3 })
  return (
    <div className="stack">
      <p className="aside-note">
        Dates are tried one after the other and the coverage of the season is worked out for each; none is earlier than
        blossom near the nests allows.
      </p>
      <div className="fields">
        <ChoiceField
          label="For"
          value={asked}
          choices={[
            { value: orchard, name: 'all stations' },
            ...used.map(station => ({ value: station.id, name: titleOf(station) })),
          ]}
          onCommit={setScope}
        />
        <ChoiceField
          label="Set out in"
          value={batches}
          choices={[
            { value: '1', name: 'one batch' },
            { value: '2', name: 'one or two batches' },
            { value: '3', name: 'one, two or three batches' },
          ]}
          onCommit={setBatches}
        />
      </div>
      <div className="actions">
        {isRunning ? (
          <>
            <span role="status">Trying dates…</span>
            <button type="button" onClick={() => stopAdvice(store)}>
              Stop
            </button>
          </>
        ) : (
          <button type="button" className={value === null ? 'first' : ''} onClick={ask}>
            Look for the best dates
          </button>
        )}
      </div>
      {job.status === 'failed' ? <p role="alert">{job.reason}</p> : null}
      {value === null ? null : <Answer advised={value} state={isRunning ? 'older' : stateOf(value, plan, year)} />}
    </div>
  )
}

/** Whether an answer speaks of the plan as it is, of the plan before its own dates were taken, or of another. */
type AnswerState = 'fresh' | 'taken' | 'older'

function stateOf(advised: Advised, plan: Plan, year: number): AnswerState {
  if (isAnswerTo(advised, plan, year)) return 'fresh'
  // Nothing but the seasons differs, and they differ by these dates alone.
  if (!isAnswerTo({ ...advised, plan: { ...advised.plan, seasons: plan.seasons } }, plan, year)) return 'older'
  const { seasons } = acceptAdvice(year, advised.advice).apply(advised.plan)
  return JSON.stringify(seasons) === JSON.stringify(plan.seasons) ? 'taken' : 'older'
}

function Answer({ advised, state }: { readonly advised: Advised; readonly state: AnswerState }) {
  const isFresh = state === 'fresh'
  const store = usePlannerStore()
  const edit = useEdit()
  const explain = useExplain()
  const { advice, problems, year } = advised
  const take = () => {
    edit(acceptAdvice(year, advice))
    notify(store, 'The release dates are set. One press of Undo takes all of them back.')
  }
  return (
    <div className={state === 'older' ? 'stack stale' : 'stack'}>
      {state === 'taken' ? <p className="call">These dates are in the plan now. “Your own” are those before.</p> : null}
      {state === 'older' ? <p className="call">The plan has changed since: this answers the plan before.</p> : null}
      {advice.bees.map(each => (
        <BeeDates key={each.bee} advised={each} isOnly={advice.bees.length === 1} plan={advised.plan} />
      ))}
      {advice.coverage === null ? (
        <p>No cocoons are set out yet, so no coverage can be told: the date is the best for the first bees.</p>
      ) : (
        <p>
          These dates cover{' '}
          <Figure label="coverage with these dates" onExplain={() => explain({ figure: 'advisedCoverage', id: null })}>
            about {percent(advice.coverage)}
          </Figure>
          {advice.scope === orchard ? '' : ' of what is in range of this station'}. {gainText(advice)}
        </p>
      )}
      {problems.length === 0 ? null : (
        <ul className="plain-list">
          {problems.map(problem => (
            <li key={problem.code + problem.at} className={problem.severity === 'warning' ? 'call' : 'aside-note'}>
              {problemText(problem)}
            </li>
          ))}
        </ul>
      )}
      {isFresh && advice.coverage !== null && !advice.isOwn ? (
        <div className="actions">
          <button type="button" className="first" onClick={take}>
            Use these dates
          </button>
        </div>
      ) : null}
      <ByStation advised={advised} />
    </div>
  )
}

type DatesProps = { readonly advised: BeeAdvice; readonly isOnly: boolean; readonly plan: Advised['plan'] }

/** The dates of one bee, and the blossom that each batch finds first. */
function BeeDates({ advised, isOnly, plan }: DatesProps) {
  const { bee, batches, stations } = advised
  const names = stations.map(id => {
    const feature = featureById(plan, id)
    return feature ? titleOf(feature) : id
  })
  return (
    <div>
      {isOnly ? null : (
        <h4>
          {beeTitle(bee)}, {names.length > 3 ? counted(names.length, 'station') : listed(names)}
        </h4>
      )}
      <p className="answer">{batchesText(batches)}</p>
      <ul>
        {batches.map(({ date, leansOn }) => (
          <li key={date}>
            {dateText(date)}:{' '}
            {leansOn === null
              ? 'no blossom that is drawn is open near them then.'
              : `the first females live on ${leansOn.name}${leansOn.isForage ? ' (forage)' : ''}.`}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** Each station's own dates where some wait for blossom of their own. */
function ByStation({ advised }: { readonly advised: Advised }) {
  const { advice, plan } = advised
  if (advice.stations.length < 2) return null
  const rows = rowsOf(advice)
  return (
    <Disclosure summary="Station by station">
      <Table
        caption="Dates by station"
        isCaptionHidden
        columns={[
          {
            key: 'station',
            head: 'Station',
            cell: row => {
              const feature = featureById(plan, row.id)
              return feature ? titleOf(feature) : row.id
            },
          },
          { key: 'date', head: 'Date', cell: row => dateText(row.date) },
          { key: 'share', head: 'Cocoons', cell: row => percent(row.share), isFigure: true },
        ]}
        rows={rows}
        keyOf={row => `${row.id} ${row.date}`}
      />
    </Disclosure>
  )
}

function rowsOf({ stations }: Advice) {
  return stations.flatMap(({ id, batches }) => batches.map(batch => ({ id, ...batch })))
}
