import { type BloomShift, bloomShifts } from '#geo/bloom/shift'
import { type Plan, seasonOf } from '#geo/plan/plan'
import { Disclosure } from '../../parts/disclosure'
import { Table } from '../../parts/table'
import { cropsIn, featureById } from '../../state/selectors'
import { counted, rangeText } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { cropTitle, titleOf } from '../titles'

/** How this season's bloom lies against the one before: nothing where the plan has no earlier season with dates. */
export function SeasonShift() {
  const plan = usePlan()
  const year = useYear()
  const told = shiftOf(plan, year)
  if (told === null) return null
  const { before, shifts } = told
  return (
    <section className="stack" aria-label={`Bloom against ${before}`}>
      <p>{shiftSentence(plan, told)}</p>
      <Disclosure summary={`Against ${before}, stage by stage`}>
        <Table
          caption={`Days later (+) or earlier (−) than in ${before}`}
          columns={[
            { key: 'what', head: 'What', cell: shift => nameOf(plan, shift.key) },
            { key: 'first', head: 'First', cell: shift => signed(shift.first), isFigure: true },
            { key: 'full', head: 'Full', cell: shift => signed(shift.full), isFigure: true },
            { key: 'end', head: 'End', cell: shift => signed(shift.end), isFigure: true },
          ]}
          rows={shifts}
          keyOf={shift => shift.key}
        />
        <p className="aside-note">By the dates of both seasons, whether seen or estimated.</p>
      </Disclosure>
    </section>
  )
}

type Told = { readonly before: number; readonly shifts: readonly BloomShift[] }

/** Shifts of what stands in the ground, against the nearest earlier season that dates any of it. */
export function shiftOf(plan: Plan, year: number): Told | null {
  const season = seasonOf(plan, year)
  if (season === undefined) return null
  const earlier = plan.seasons.filter(each => each.year < year).sort((a, b) => b.year - a.year)
  const crops = cropsIn(plan, year)
  for (const other of earlier) {
    const shifts = bloomShifts(other, season).filter(
      ({ key }) => crops.includes(key) || featureById(plan, key) !== undefined,
    )
    if (shifts.length > 0) return { before: other.year, shifts }
  }
  return null
}

/** "Apple opens 12 days later than in 2024. All 11 blooms reach full bloom 9 to 13 days later." */
function shiftSentence(plan: Plan, { before, shifts }: Told): string {
  const lead = shifts.find(({ key }) => key === 'apple') ?? shifts[0]!
  const opens = `${nameOf(plan, lead.key)} opens ${movedText(lead.first)} ${lead.first === 0 ? 'as' : 'than'} in ${before}.`
  if (shifts.length === 1) return opens
  const full = shifts.map(shift => shift.full)
  const low = Math.min(...full)
  const high = Math.max(...full)
  const all = `All ${shifts.length} blooms that both years date`
  if (low === high) return `${opens} ${all} are full ${movedText(low)}.`
  if (low >= 0) return `${opens} ${all} are full ${rangeText(low, high)} days later.`
  if (high <= 0) return `${opens} ${all} are full ${rangeText(-high, -low)} days earlier.`
  return `${opens} ${all} are full between ${counted(-low, 'day')} earlier and ${counted(high, 'day')} later.`
}

function movedText(days: number): string {
  if (days === 0) return 'on the same date'
  return `${counted(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'earlier'}`
}

function signed(days: number): string {
  return days === 0 ? '0' : `${days > 0 ? '+' : '−'}${Math.abs(days)}`
}

function nameOf(plan: Plan, key: string): string {
  const feature = featureById(plan, key)
  return feature ? titleOf(feature) : cropTitle(plan, key)
}
