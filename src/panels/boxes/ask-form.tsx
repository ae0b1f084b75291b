import { cocoonsInSets, usualFemales } from '#geo/stocking/stock'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import type { AskKind } from '../../state/boxes'
import { settingsOf } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { lookForPlaces } from '../../worker/siting-schedule'
import { usePlan, useYear } from '../hooks'
import { BeeFields, LimitFields, PriceFields, RoleFields, StockFields, WeightFields } from './ask-limits'
import { beeSummary, limitsSummary, pricesSummary, rolesSummary, weightsSummary } from './ask-words'
import { useAsk } from './use-boxes'

const kinds: readonly { readonly value: AskKind; readonly name: string }[] = [
  { value: 'stations', name: 'Places for more stations' },
  { value: 'target', name: 'Enough for every planting' },
  { value: 'money', name: 'The most for so much money' },
  { value: 'cocoons', name: 'The most from so many cocoons' },
  { value: 'stock', name: 'Stations stay: fewest cocoons' },
]

const questionId = 'question'

/** Leads from the answer at the top of the page to the question below it. */
export function ToQuestion() {
  const lead = () => {
    const head = document.getElementById(questionId)
    head?.focus({ preventScroll: true })
    head?.scrollIntoView?.({ block: 'start' })
  }
  return (
    <button type="button" className="quiet" onClick={lead}>
      Ask something else
    </button>
  )
}

/** The question, as a sentence with numbers to fill in, and what it is bound by. */
export function AskForm() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const [ask, change] = useAsk()
  const isRunning = usePlanner(
    ({ results }) => results.suggestion.status === 'running' || results.stock.status === 'running',
  )
  const isStock = ask.kind === 'stock'
  return (
    <section className="stack" aria-labelledby={questionId}>
      <h2 id={questionId} tabIndex={-1}>
        The question
      </h2>
      <ChoiceField label="What is asked" value={ask.kind} choices={kinds} onCommit={kind => change({ kind })} />
      <p className="ask">
        <Sentence />
      </p>
      {isStock ? null : (
        <Disclosure summary={rolesSummary(ask, plan)}>
          <RoleFields />
        </Disclosure>
      )}
      {isStock ? null : (
        <Disclosure summary={beeSummary(ask, plan, year)}>
          <BeeFields />
        </Disclosure>
      )}
      <Disclosure summary={pricesSummary(ask)}>
        <PriceFields />
        <StockFields />
      </Disclosure>
      {isStock ? null : (
        <Disclosure summary={limitsSummary(ask, plan.units)}>
          <LimitFields />
        </Disclosure>
      )}
      {isStock ? null : (
        <Disclosure summary={weightsSummary(ask, plan)}>
          <WeightFields />
        </Disclosure>
      )}
      {isRunning ? null : (
        <div className="actions">
          <button type="button" className="first" onClick={() => lookForPlaces(store)}>
            {isStock ? 'Work out the cocoons' : 'Look for places'}
          </button>
        </div>
      )}
    </section>
  )
}

/** More stations than this at once are a new orchard, not more boxes. */
const mostStations = 60
const most = 1_000_000

function Sentence() {
  const plan = usePlan()
  const [ask, change] = useAsk()
  const bee = settingsOf(plan).bees[ask.bee ?? plan.bee]
  switch (ask.kind) {
    case 'stations':
      return (
        <>
          Add{' '}
          <NumberField
            isInline
            isRequired
            label="Stations to add"
            value={ask.count}
            limit={{ low: 1, high: mostStations, isWhole: true }}
            onCommit={count => count !== null && change({ count })}
          />{' '}
          {ask.count === 1 ? 'station' : 'stations'} with{' '}
          <NumberField
            isInline
            label="Female cocoons in each"
            value={ask.cocoonsEach}
            fallback={cocoonsInSets(usualFemales, bee, ask.setOf)}
            limit={{ low: 1, high: most, isWhole: true }}
            onCommit={cocoonsEach => change({ cocoonsEach })}
          />{' '}
          female cocoons each, where they do most good.
        </>
      )
    case 'target':
      return (
        <>
          At least <TargetField /> in every planting, at the least cost.
        </>
      )
    case 'money':
      return (
        <>
          The most for{' '}
          <NumberField
            isInline
            isRequired
            label="Money to spend"
            value={ask.amount}
            limit={{ low: 0, high: 1e9, isAbove: true }}
            onCommit={amount => amount !== null && change({ amount })}
          />{' '}
          in the currency of the prices below.
        </>
      )
    case 'cocoons':
      return (
        <>
          The most from{' '}
          <NumberField
            isInline
            isRequired
            label="Female cocoons in all"
            value={ask.cocoons}
            limit={{ low: 1, high: most, isWhole: true }}
            onCommit={cocoons => cocoons !== null && change({ cocoons })}
          />{' '}
          female cocoons, on{' '}
          <NumberField
            isInline
            label="Stations to share them out on"
            value={ask.spread}
            fallback={Math.max(1, Math.round(ask.cocoons / cocoonsInSets(usualFemales, bee, ask.setOf)))}
            limit={{ low: 1, high: mostStations, isWhole: true }}
            onCommit={spread => change({ spread })}
          />{' '}
          {ask.spread === 1 ? 'new station' : 'new stations'}.
        </>
      )
    case 'stock':
      return (
        <>
          All stations stay where they are. Fewest cocoons for <TargetField /> in every planting.
        </>
      )
    default:
      return ask.kind satisfies never
  }
}

function TargetField() {
  const [ask, change] = useAsk()
  return (
    <NumberField
      isInline
      isRequired
      quantity="share"
      label="Coverage wanted, percent"
      value={ask.target}
      limit={{ low: 0, high: 1, isAbove: true }}
      onCommit={target => target !== null && change({ target })}
    />
  )
}
