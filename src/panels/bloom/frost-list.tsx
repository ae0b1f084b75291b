import { type FrostFlag, frostFlags } from '#geo/bloom/frost'
import type { Units } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { useUnits } from '../../parts/units-context'
import { withUnit } from '../../text/units'
import { counted } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { cropTitle } from '../titles'

/** More nights than this are not listed one by one. */
const mostShown = 12

/** Nights cold enough to kill flowers at the stage a crop was in, with the temperatures they are held against. */
export function FrostList() {
  const plan = usePlan()
  const year = useYear()
  const units = useUnits()
  const flags = frostFlags(plan, year)
  if (flags.length === 0) return <p>No night of this weather was cold enough to kill flowers of what is drawn.</p>
  const nights = new Set(flags.map(({ date }) => date)).size
  return (
    <div className="stack">
      <p className="call">
        {counted(nights, 'night')} cold enough to kill flowers. Bee cover cannot make up for frosted flowers: a flower
        that froze sets no fruit, however many bees come.
      </p>
      <ul>
        {flags.slice(0, mostShown).map(flag => (
          <li key={flag.date + flag.crop + flag.plantings.join()}>
            {frostText(flag, cropTitle(plan, flag.crop), units)}
          </li>
        ))}
      </ul>
      {flags.length > mostShown ? <p>And {flags.length - mostShown} more.</p> : null}
      <p className="aside-note">
        The station that measured may stand warmer or colder than your trees: a reason to look at the flowers, not a
        count of losses.
      </p>
    </div>
  )
}

function frostText(flag: FrostFlag, crop: string, units: Units): string {
  const { date, minimum, stageName, tenth, most, isSevere, source, plantings } = flag
  const degrees = (value: number) => withUnit(value, 'temperature', units)
  const where = plantings.length > 1 ? ` (${plantings.length} plantings)` : ''
  const what = isSevere ? 'nine flowers in ten may be lost' : 'one flower in ten or more may be lost'
  return `${dateText(date)}, ${degrees(minimum)}: ${crop}${where} at ${stageName}; ${what}. A tenth die at ${degrees(tenth)}, nine tenths at ${degrees(most)} (${source}).`
}
