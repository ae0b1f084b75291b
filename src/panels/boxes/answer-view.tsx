import { nameOf } from '#geo/plan/plan'
import type { Suggested } from '../../state/boxes'
import { acceptPlaces, discardSuggestion, takenStations } from '../../state/boxes-actions'
import { featureById } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { lookForPlaces, proveAnswer } from '../../worker/siting-schedule'
import { Explained } from '../coverage/figures'
import { useYear } from '../hooks'
import {
  boundWords,
  cautionText,
  closeChange,
  finely,
  moveWords,
  shortWords,
  staleWords,
  thinningWords,
} from './answer-words'
import { ToQuestion } from './ask-form'
import { BeforeAfter, type Change, ShadeChoice } from './before-after'
import { CurveView } from './curve-view'
import { PlaceList } from './place-list'
import { PlacesShopping } from './shopping-list'
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
      {isEmpty || suggestion.reached === false ? <WhatMayHelp answer={answer} /> : null}
      {isFresh ? <Acceptance answer={answer} isEmpty={isEmpty} /> : null}
      {isEmpty ? null : <HowGood answer={answer} isFresh={isFresh} />}
      <Changes answer={answer} isFresh={isFresh} />
      {isEmpty ? null : <PlaceList answer={answer} isFresh={isFresh} />}
      {suggestion.stations.some(station => station.bought) ? <PlacesShopping answer={answer} /> : null}
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
      <ToQuestion />
      {isEmpty ? null : <ShadeChoice />}
    </div>
  )
}

/** What to try where nothing was found. */
function WhatMayHelp({ answer }: { readonly answer: Suggested }) {
  const { wish, suggestion } = answer
  if (wish.question.kind === 'target') {
    return suggestion.reached === true ? null : (
      <p>
        {shortWords(suggestion, wish.question.coverage)} What may help: a lower target; more tubes at a station, or less
        distance between stations; a batch set out later for plantings that bloom long after the others (see Bloom and
        flight). To see how far a few stations come, ask for places for more stations.
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
  // What cannot be reached has no least cost to be proven.
  const canProve = question.kind !== 'target' || suggestion.reached === true
  return (
    <section className="stack" aria-labelledby="how-good">
      <h2 id="how-good">How good is that?</h2>
      <p>
        {boundWords(suggestion, question)} {moveWords(answer.wish)}
        {`${thinningWords(suggestion)} `}
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

/** Coverage of each planting now and then, as stations are taken and placed. */
function Changes({ answer, isFresh }: { readonly answer: Suggested; readonly isFresh: boolean }) {
  const { suggestion } = answer
  const { trial, isChanged } = useTrial(answer)
  const isBusy = usePlanner(state => state.results.trial.status === 'running')
  const tried = isChanged ? trial : null
  const isWeighed = suggestion.plantings.some(({ id }) => (answer.wish.weights?.[id] ?? 1) !== 1)
  const rows: readonly Change[] = suggestion.plantings
    .map(({ id, name, before, after }) => ({
      id,
      name,
      before,
      after: tried === null ? after : (tried.plantings.get(id) ?? null),
    }))
    .sort((a, b) => gain(b) - gain(a))
  const orchard: Change = {
    id: null,
    name: isWeighed ? 'The orchard, by your weights' : 'The orchard',
    before: suggestion.before.coverage,
    after: tried === null ? suggestion.after.coverage : tried.coverage,
  }
  return (
    <BeforeAfter
      caption={`Coverage of each planting in ${answer.year}, now and with the suggested stations`}
      rows={[orchard, ...rows]}
      isFresh={isFresh}
      isBusy={isBusy && isChanged}
      isWeighed={isWeighed}
    >
      {tried === null ? null : <ChangedWords answer={answer} now={tried.coverage} />}
    </BeforeAfter>
  )
}

function gain({ before, after }: Change): number {
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
