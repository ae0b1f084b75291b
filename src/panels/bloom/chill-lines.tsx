import { chillModelSources } from '#geo/data/chill-models'
import { chillNeeds } from '#geo/data/chill-needs'
import { tableCropOf } from '#geo/data/settings'
import { citation } from '#geo/data/sources'
import { sourceText } from '#geo/data/thresholds'
import { dateText } from '#geo/time/date-text'
import { winterChill } from '#geo/weather/winter-chill'
import { significant } from '#geo/wording/plain'
import { Disclosure } from '../../parts/disclosure'
import { cropsIn } from '../../state/selectors'
import { grouped } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { cropTitle } from '../titles'

/** Chill of the winter before, and what crops of the plan need of it; nothing where the weather holds no winter. */
export function ChillLines() {
  const plan = usePlan()
  const year = useYear()
  const chill = winterChill(plan, year)
  const needs = cropsIn(plan, year).flatMap(crop => {
    const need = chillNeeds[tableCropOf(crop, plan.crops)?.id ?? '']
    return need === undefined ? [] : [{ crop, need }]
  })
  if (chill === null || needs.length === 0) return null
  const about = (value: number) => grouped(significant(value, 2))
  return (
    <Disclosure summary={`Winter chill: about ${about(chill.portions)} portions`}>
      <p>
        {dateText(chill.from)} to {dateText(chill.until)}: about {about(chill.portions)} chill portions,{' '}
        {about(chill.hours)} chilling hours, {about(chill.utah)} Utah units; about {about(chill.growingHours)} growing
        degree hours since New Year.{chill.missing > 0 ? ` At least: ${chill.missing} days are missing.` : ''}{' '}
        Estimates, from hours rebuilt out of daily figures ({citation(chillModelSources.hours)}); portions after{' '}
        {citation(chillModelSources.dynamic)}, Utah units after {citation(chillModelSources.utah)}, growing degree hours
        after {citation(chillModelSources.heat)}.
      </p>
      <ul>
        {needs.map(({ crop, need }) => (
          <li key={crop}>
            {cropTitle(plan, crop)} needs {need.low === need.high ? need.value : `${need.low} to ${need.high}`}{' '}
            {need.unit === 'h' ? 'chilling hours' : 'portions'} by cultivar ({sourceText(need)}).
          </li>
        ))}
      </ul>
    </Disclosure>
  )
}
