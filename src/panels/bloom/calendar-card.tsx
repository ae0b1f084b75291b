import { useState } from 'react'
import { bloomRegions } from '#geo/data/own'
import { seasonOf } from '#geo/plan/plan'
import { dateText, dayAndMonth } from '#geo/time/date-text'
import type { IsoDate } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { ChoiceField } from '../../parts/choice-field'
import { DateField } from '../../parts/date-field'
import { Table } from '../../parts/table'
import { notify } from '../../state/actions'
import { featureById } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { regionNames } from '../../text/names'
import { counted } from '../../text/words'
import { useEdit, usePlan, useYear } from '../hooks'
import { cropTitle, titleOf } from '../titles'
import { appleSeen, type Hinge, hingeOf } from './bloom-defaults'
import { appleMove, calendarFill, changedFills, type Fill, fillEdit, isSameHinge, type Typed } from './calendar-fill'

/** The season's calendar from a region and an apple date: what would be filled in, and the button that does it. */
export function CalendarCard() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const now = hingeOf(plan, year)
  const [draft, setDraft] = useState<Hinge | null>(null)
  const [typed, setTyped] = useState<Typed>('move')
  const hinge = draft ?? now
  const fills = calendarFill(plan, year, hinge, typed)
  const changed = changedFills(fills)
  const isMoved = !isSameHinge(hinge, now)
  const seen = appleSeen(plan, year)
  const own = fills.filter(({ kind }) => kind === 'typed')
  const nameOf = (key: string) => {
    const feature = featureById(plan, key)
    return feature ? titleOf(feature) : cropTitle(plan, key)
  }
  const fill = (event: { readonly currentTarget: HTMLElement }) => {
    // The button goes or moves with the press: whoever pressed is led to the sentence that tells what is known now.
    const lead = event.currentTarget.closest('.panel-body')?.querySelector<HTMLElement>('.page > .lead')
    edit(fillEdit(plan, year, hinge, fills))
    lead?.focus()
    setDraft(null)
    notify(store, `${filledText(changed.length)} One press of Undo takes all of it back.`)
  }
  const set = (patch: Partial<Hinge>) => setDraft({ ...hinge, ...patch })
  return (
    <div className="stack">
      <ChoiceField
        label="Spring is most like"
        value={hinge.region}
        choices={bloomRegions.map(value => ({ value, name: regionNames[value] }))}
        onCommit={region => set({ region })}
      />
      {seen === null ? (
        <>
          <DateField
            label="Apple in full bloom, if you know it"
            value={hinge.apple}
            year={year}
            onCommit={apple => set({ apple })}
            note={appleNote(hinge.apple, year)}
          />
          <EarlierApple hinge={hinge} onUse={apple => set({ apple })} />
        </>
      ) : (
        <p>Apple was seen in full bloom on {dateText(seen)}: the others are reckoned from that.</p>
      )}
      {own.length > 0 && (isMoved || typed !== 'move') ? (
        <ChoiceField
          label={`Dates typed in, not marked as seen: ${listedShort(own.map(({ key }) => nameOf(key)))}`}
          value={typed}
          choices={[
            { value: 'move', name: moveText(appleMove(plan, year, hinge)) },
            { value: 'keep', name: 'stay as they are' },
            { value: 'fill', name: 'give way to estimates, where a crop has one' },
          ]}
          onCommit={setTyped}
        />
      ) : null}
      <EstimateTable fills={fills} nameOf={nameOf} year={year} />
      {changed.length > 0 || isMoved ? (
        <div className="actions">
          <button type="button" className="first" onClick={fill}>
            {changed.length === 0 ? 'Keep this apple date' : `Fill in ${counted(changed.length, 'bloom')}`}
          </button>
          {isMoved ? (
            <button type="button" className="quiet" onClick={() => setDraft(null)}>
              Leave it as it was
            </button>
          ) : null}
        </div>
      ) : (
        <p className="aside-note">The calendar stands as it would be filled in; there is nothing to change.</p>
      )}
      <p className="aside-note">
        All of these are estimates, a place to start: years lie weeks apart. What you mark as seen is never overwritten.
      </p>
    </div>
  )
}

/** Apple of an earlier season of the plan, offered where nothing else is known. */
function EarlierApple({ hinge, onUse }: { readonly hinge: Hinge; readonly onUse: (date: IsoDate) => void }) {
  const plan = usePlan()
  const year = useYear()
  const full = seasonOf(plan, year - 1)?.bloom?.apple?.full
  if (full === undefined || hinge.apple !== null) return null
  return (
    <p className="aside-note">
      In {year - 1} the plan has apple in full bloom on {dateText(full)}.{' '}
      <button type="button" className="link" onClick={() => onUse(full)}>
        Start from that
      </button>
    </p>
  )
}

type TableProps = {
  readonly fills: readonly Fill[]
  readonly nameOf: (key: string) => string
  readonly year: number
}

/** Each bloom as it would be: from, to, and within which days its full bloom is to be expected. */
function EstimateTable({ fills, nameOf, year }: TableProps) {
  if (fills.length === 0) return null
  return (
    <Table
      caption={`Full bloom in ${year}, as it would be`}
      columns={[
        { key: 'what', head: 'What', cell: fill => nameOf(fill.key) },
        { key: 'full', head: 'Full bloom', cell: fill => (fill.after ? dayAndMonth(fill.after.full) : 'no default') },
        { key: 'band', head: 'Between', cell: bandText },
      ]}
      rows={fills}
      keyOf={fill => fill.key}
    />
  )
}

function bandText({ kind, estimate, after }: Fill): string {
  if (kind === 'seen') return 'seen, stays'
  if (kind === 'typed' && after?.full !== estimate?.bloom.full) return 'dates typed in'
  if (estimate === null) return ''
  return `${dayAndMonth(estimate.earliestFull)} and ${dayAndMonth(estimate.latestFull)}`
}

function appleNote(apple: IsoDate | null, year: number): string {
  if (apple === null) {
    return `Of ${year}, seen or expected, or of ${year - 1}. The whole calendar hangs on it; left empty, it hangs on the region’s usual date.`
  }
  const ofYear = Number(apple.slice(0, 4))
  return ofYear === year
    ? `${dateText(apple)}: this year’s own date, so the others are reckoned from it.`
    : `${dateText(apple)}: of another year. It says how early your place is, not how early ${year} will be.`
}

function moveText(days: number): string {
  if (days === 0) return 'stay: apple does not move'
  return `move along with apple, ${counted(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'earlier'}`
}

function filledText(count: number): string {
  return count === 0 ? 'The apple date is kept.' : `${counted(count, 'bloom')} filled in as estimates.`
}

function listedShort(names: readonly string[]): string {
  return names.length > 3 ? `${names.slice(0, 2).join(', ')} and ${names.length - 2} others` : listed(names)
}
