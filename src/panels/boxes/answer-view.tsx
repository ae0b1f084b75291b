import { useState } from 'react'
import { nameOf } from '#geo/plan/plan'
import { Table } from '../../parts/table'
import type { Suggested } from '../../state/boxes'
import { acceptPlaces, changeBoxes, discardSuggestion, takenStations } from '../../state/boxes-actions'
import { featureById } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted, percent } from '../../text/words'
import { lookForPlaces, proveAnswer } from '../../worker/siting-schedule'
import { Explained } from '../coverage/figures'
import { usePlan, useYear } from '../hooks'
import { boundWords, cautionText, changeWords, closeChange, finely, staleWords } from './answer-words'
import { CurveView } from './curve-view'
import { PlaceList } from './place-list'
import { ShoppingList } from './shopping-list'
import { useTrial } from './trial'
import { useBoxes, useSuggested } from './use-boxes'

/** The answer: how good it is, what it does to each planting, where the stations go, what they cost. */
export function AnswerView({ answer, isFresh }: { readonly answer: Suggested; readonly isFresh: boolean }) {
  const store = usePlannerStore()
  const { suggestion } = answer
  const { isRunning } = useSuggested()
  const year = useYear()
  const isEmpty = suggestion.stations.length + suggestion.dropped.length === 0
  return (
    <div className={isFresh ? 'stack-wide' : 'stack-wide stale'}>
      {isFresh ? null : (
        <div className="call-box">
          <p>{staleWords(answer.year, year)}</p>
          {isRunning ? null : (
            <button type="button" className="first" onClick={() => lookForPlaces(store)}>
              Look again
            </button>
          )}
        </div>
      )}
      <Cautions answer={answer} />
      {isEmpty ? <WhatMayHelp answer={answer} /> : null}
      {isFresh ? <Acceptance answer={answer} isEmpty={isEmpty} /> : null}
      {isEmpty ? null : <HowGood answer={answer} isFresh={isFresh} />}
      <BeforeAfter answer={answer} isFresh={isFresh} />
      {isEmpty ? null : <PlaceList answer={answer} isFresh={isFresh} />}
      {suggestion.stations.some(station => station.new) ? <ShoppingList answer={answer} /> : null}
      {isFresh ? <CurveView answer={answer} /> : null}
    </div>
  )
}

function Cautions({ answer }: { readonly answer: Suggested }) {
  const name = (id: string) => {
    const feature = featureById(answer.plan, id)
    return feature ? nameOf(feature) : id
  }
  const { cautions } = answer.suggestion
  if (cautions.length === 0) return null
  return (
    <ul className="plain-list cautions" aria-label="To weigh before you accept">
      {cautions.map(caution => (
        <li className="caution" key={caution.kind}>
          {cautionText(caution, name)}
        </li>
      ))}
    </ul>
  )
}

function Acceptance({ answer, isEmpty }: { readonly answer: Suggested; readonly isEmpty: boolean }) {
  const store = usePlannerStore()
  const boxes = useBoxes()
  const { stations, dropped } = answer.suggestion
  const taken = takenStations(answer, boxes).length
  const { isRunning } = useSuggested()
  const isAll = taken === stations.length
  const canAccept = !isRunning && taken + dropped.length > 0
  const words = isAll
    ? stations.length === 1
      ? 'Accept it'
      : 'Accept all'
    : `Accept ${counted(taken, 'chosen station')}`
  return (
    <div className="actions">
      {isEmpty ? null : (
        <button type="button" className="first" disabled={!canAccept} onClick={() => acceptPlaces(store)}>
          {stations.length === 0 ? 'Accept' : words}
        </button>
      )}
      <button type="button" className="quiet" disabled={isRunning} onClick={() => discardSuggestion(store)}>
        Discard
      </button>
      {isEmpty ? null : (
        <label className="option">
          <input
            type="checkbox"
            checked={boxes.isShownAfter}
            onChange={event => changeBoxes(store, { isShownAfter: event.target.checked })}
          />
          Shade the map as it would be
        </label>
      )}
    </div>
  )
}

/** What to try where nothing was found. */
function WhatMayHelp({ answer }: { readonly answer: Suggested }) {
  const { wish, suggestion } = answer
  if (wish.question.kind === 'target') {
    return suggestion.reached === true ? null : (
      <p>
        What may help: a lower target; more tubes at a station, or less distance between stations; a batch set out later
        for plantings that bloom long after the others (see Bloom and flight). To see how far a few stations come, ask
        for places for more stations.
      </p>
    )
  }
  if (wish.question.kind !== 'stations') return null
  return <p>What may help: less distance between stations, mud farther off, alleys too, or a wider boundary.</p>
}

function HowGood({ answer, isFresh }: { readonly answer: Suggested; readonly isFresh: boolean }) {
  const store = usePlannerStore()
  const { isRunning } = useSuggested()
  const { suggestion } = answer
  const { question } = answer.wish
  // What a budget buys is settled by the search; the solver is asked where stations go, or what enough costs.
  const canProve = question.kind === 'stations' || (question.kind === 'target' && suggestion.reached === true)
  return (
    <section className="stack" aria-labelledby="how-good">
      <h2 id="how-good">How good is that?</h2>
      <p>
        {boundWords(suggestion, question)}{' '}
        <Explained figure="bound" id={null} label="how good the answer is">
          How that is known
        </Explained>
      </p>
      {!canProve || suggestion.bound.proven || !isFresh || isRunning ? null : (
        <>
          <div className="actions">
            <button type="button" onClick={() => proveAnswer(store)}>
              Prove it
            </button>
          </div>
          <p className="field-note">
            A general solver tries all that could be better. It can take long; it can be stopped, and what it has found
            out by then is kept.
          </p>
        </>
      )}
    </section>
  )
}

type Row = {
  readonly id: string | null
  readonly name: string
  readonly before: number | null
  readonly after: number | null
}

const most = 12

/** Coverage of each planting now and then. */
function BeforeAfter({ answer, isFresh }: { readonly answer: Suggested; readonly isFresh: boolean }) {
  const { suggestion } = answer
  const [isAll, setAll] = useState(false)
  const { trial, isChanged } = useTrial(answer)
  const isBusy = usePlanner(state => state.results.trial.status === 'running')
  const plan = usePlan()
  const rows: readonly Row[] = suggestion.plantings
    .map(({ id, name, before, after }) => ({
      id,
      name,
      before,
      after: isChanged && trial !== null ? (trial.plantings.get(id) ?? null) : after,
    }))
    .sort((a, b) => gain(b) - gain(a))
  const shown = isAll ? rows : rows.slice(0, most)
  const orchard: Row = {
    id: null,
    name: 'The orchard',
    before: suggestion.before.coverage,
    after: isChanged && trial !== null ? trial.coverage : suggestion.after.coverage,
  }
  const now = (row: Row) =>
    row.before === null ? (
      'no bloom'
    ) : isFresh ? (
      <Explained figure="coverage" id={row.id} label={`coverage of ${row.name} now`}>
        {percent(row.before)}
      </Explained>
    ) : (
      percent(row.before)
    )
  const figure = (row: Row) =>
    row.after === null ? (
      'no bloom'
    ) : isFresh && (row.id === null || featureById(plan, row.id)) ? (
      <Explained figure="wouldBe" id={row.id} label={`coverage of ${row.name} as it would be`}>
        {percent(row.after)}
      </Explained>
    ) : (
      percent(row.after)
    )
  return (
    <section className="stack" aria-labelledby="before-after">
      <h2 id="before-after">Before and after</h2>
      {isChanged && trial !== null ? <ChangedWords answer={answer} now={trial.coverage} /> : null}
      <div className={isBusy && isChanged ? 'stale' : undefined}>
        <Table
          caption={`Coverage of each planting in ${answer.year}, now and with the suggested stations`}
          isCaptionHidden
          columns={[
            { key: 'name', head: 'Planting', cell: row => row.name },
            {
              key: 'before',
              head: 'Now',
              cell: now,
              isFigure: true,
            },
            { key: 'after', head: 'Then', cell: figure, isFigure: true },
            { key: 'change', head: 'Change', cell: row => changeWords(row.before, row.after), isFigure: true },
          ]}
          rows={[orchard, ...shown]}
          keyOf={row => row.id ?? 'all'}
        />
      </div>
      {shown.length < rows.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show {rows.length - shown.length} more plantings
        </button>
      ) : null}
    </section>
  )
}

function gain({ before, after }: Row): number {
  return before === null || after === null ? -1 : after - before
}

/** What moving and leaving stations costs against the suggestion as it was. */
function ChangedWords({ answer, now }: { readonly answer: Suggested; readonly now: number | null }) {
  const { coverage } = answer.suggestion.after
  if (now === null || coverage === null) return null
  return (
    <p role="status">
      With your changes about {finely(now)}; as suggested {finely(coverage)}: {closeChange(coverage, now)}.
    </p>
  )
}
