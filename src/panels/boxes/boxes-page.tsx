import { useEffect, useId, useMemo, useRef } from 'react'
import type { Progress } from '#geo/siting/question'
import { Caution } from '../../parts/caution'
import { Disclosure } from '../../parts/disclosure'
import { setPage } from '../../state/actions'
import { bloomOf, cropsIn, plantingsIn } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { stopLooking } from '../../worker/siting-schedule'
import { usePlan, useYear } from '../hooks'
import { ClashingAdvice } from './advice'
import { AnswerView } from './answer-view'
import { answerSentence, ceiling, finely } from './answer-words'
import { AskForm } from './ask-form'
import { money } from './ask-words'
import { StockView } from './stock-view'
import { stockSentence } from './stock-words'
import { useBoxes, useStocked, useSuggested } from './use-boxes'
import './boxes.css'

/** Where more stations would do most good, with how many cocoons, and how good that is. */
export function BoxesPage() {
  const plan = usePlan()
  const year = useYear()
  const { answer, isFresh, isRunning, reason } = useSuggested()
  const stock = useStocked()
  const { progress } = useBoxes()
  const lead = useLead(isRunning || stock.isRunning)
  const hasBloom = useMemo(() => plantingsIn(plan, year).some(each => bloomOf(plan, year, each)), [plan, year])
  return (
    <div className="page boxes">
      <p className="lead" ref={lead} tabIndex={-1}>
        {stock.answer !== null
          ? dated(stockSentence(stock.answer.result), stock.isFresh, stock.answer.year === year)
          : answer !== null
            ? dated(
                answerSentence(answer.suggestion, answer.wish.question, answer.wish.roles),
                isFresh,
                answer.year === year,
              )
            : 'Where would more boxes do most good, and how many?'}
      </p>
      {hasBloom ? null : <NothingToServe />}
      {(reason ?? stock.reason) === null ? null : (
        <p role="alert" className="call">
          {reason ?? stock.reason}
        </p>
      )}
      {stock.isRunning ? <StockProgress /> : null}
      {isRunning && progress !== null ? <ProgressView progress={progress} /> : null}
      {stock.answer === null ? null : <StockView answer={stock.answer} isFresh={stock.isFresh} />}
      {answer === null ? null : <AnswerView answer={answer} isFresh={isFresh} />}
      {hasBloom ? <AskForm /> : null}
      <Disclosure summary="Advice that clashes">
        <ClashingAdvice />
      </Disclosure>
      <Caution about="species" />
      <Caution about="ladder" />
      <Caution about="yield" />
    </div>
  )
}

/** Pressing the button leads to what it starts, at the top of the page, and on to the answer when it comes. */
function useLead(isRunning: boolean) {
  const lead = useRef<HTMLParagraphElement>(null)
  const was = useRef(isRunning)
  useEffect(() => {
    if (was.current === isRunning) return
    was.current = isRunning
    lead.current?.focus({ preventScroll: true })
    lead.current?.scrollIntoView?.({ block: 'nearest' })
  }, [isRunning])
  return lead
}

function dated(sentence: string, isFresh: boolean, isThisYear: boolean): string {
  return isFresh ? sentence : `Of ${isThisYear ? 'an older plan' : 'another season'}: ${sentence}`
}

function NothingToServe() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const hasCrops = cropsIn(plan, year).length > 0
  return (
    <div className="call-box">
      <p>
        {hasCrops
          ? `No planting has bloom dates for ${year}, so no place is better than another.`
          : 'Nothing stands there that asks for bees. Draw a planting first.'}
      </p>
      <button type="button" className="first" onClick={() => setPage(store, hasCrops ? 'bloom' : 'ground')}>
        {hasCrops ? 'Go to Bloom and flight' : 'Go to Ground'}
      </button>
    </div>
  )
}

function StockProgress() {
  const store = usePlannerStore()
  const id = useId()
  return (
    <section className="call-box" aria-labelledby={id}>
      <p id={id} role="status">
        Working out the fewest cocoons.
      </p>
      <progress aria-labelledby={id} />
      <button type="button" onClick={() => stopLooking(store)}>
        Stop
      </button>
    </section>
  )
}

const stages: Readonly<Record<Progress['stage'], string>> = {
  places: 'Looking at places and what they would do.',
  search: 'Trying places against each other.',
  bound: 'Working out what no layout can exceed.',
  proof: 'Proving: trying all that could be better.',
  report: 'Counting what it would do.',
}

/** What the search is at, the best so far and what none can exceed, and the way to end it. */
function ProgressView({ progress }: { readonly progress: Progress }) {
  const store = usePlannerStore()
  const { isProving } = useBoxes()
  const id = useId()
  const { stage, coverage, bound, cost = null, costBound = null } = progress
  const isCost = cost !== null || costBound !== null
  const figures = isCost
    ? {
        rival: 'None can cost less than',
        best: told(cost, money),
        bound: told(costBound, least => money(Math.floor(least))),
      }
    : { rival: 'None can exceed', best: told(coverage, finely), bound: told(bound, most => ceiling(most, 1)) }
  return (
    <section className="call-box" aria-labelledby={id}>
      <p id={id} role="status">
        {stages[isProving && stage === 'bound' ? 'proof' : stage]}
      </p>
      <progress aria-labelledby={id} />
      {figures.best === null && figures.bound === null ? null : (
        <dl className="numbers">
          <div>
            <dt>Best so far</dt>
            <dd>{figures.best ?? 'not known yet'}</dd>
          </div>
          <div>
            <dt>{figures.rival}</dt>
            <dd>{figures.bound ?? 'not known yet'}</dd>
          </div>
        </dl>
      )}
      <button type="button" onClick={() => stopLooking(store)}>
        {isProving ? 'Stop, and keep what is known' : 'Stop'}
      </button>
    </section>
  )
}

function told(value: number | null, word: (value: number) => string): string | null {
  return value === null ? null : word(value)
}
