import { dateText } from '#geo/time/date-text'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { useEdit, useEvaluation, usePlan, useYear } from '../hooks'
import { moveToBest, type OffDay, offDays, offDaysSentence } from './off-days'

/** Says that batches are set out far from their best day, and takes that day at one press; nothing where none is. */
export function OffDaysOffer({ of }: { /** One station only. */ readonly of?: string }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const store = usePlannerStore()
  const { value, isFresh } = useEvaluation()
  const all = offDays(plan, year, isFresh && value ? value.report.problems : [])
  const off = of === undefined ? all : all.filter(({ station }) => station.id === of)
  if (off.length === 0) return null
  const move = (event: { readonly currentTarget: HTMLElement }) => {
    // The offer goes with the press: whoever pressed is led to the page's sentence, not to nowhere.
    const page = event.currentTarget.closest('.panel-body, .page')
    edit(moveToBest(plan, year, off))
    notify(store, 'The cocoons are set out on their best day. One press of Undo takes it back.')
    page?.querySelector<HTMLElement>('.page > .lead')?.focus()
  }
  return (
    <div className="call-box">
      <p>
        <strong>{offDaysSentence(off)}</strong> {whyText(off)}
      </p>
      <button type="button" className="first" onClick={move}>
        {buttonText(off)}
      </button>
    </div>
  )
}

function whyText(off: readonly OffDay[]): string {
  const guess = off.find(({ isGuess }) => isGuess)
  if (guess && off.every(({ isGuess }) => isGuess)) {
    return `${dateText(guess.date)} was a guess from before bloom was known.`
  }
  return off.every(({ early }) => early > 0)
    ? 'Until the bloom opens they live on whatever else flowers, or leave.'
    : 'Most of the bloom goes by without them.'
}

function buttonText(off: readonly OffDay[]): string {
  const dates = [...new Set(off.map(({ best }) => best))]
  return dates.length === 1 ? `Set them out on ${dateText(dates[0]!)}` : 'Set each out on its best day'
}
