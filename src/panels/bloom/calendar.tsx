import type { Plan } from '#geo/plan/plan'
import { isStation } from '#geo/plan/plan'
import { listed } from '#geo/wording/plain'
import { Disclosure } from '../../parts/disclosure'
import { bloomOf, cropsIn, plantingsIn, selectedFeatures } from '../../state/selectors'
import { usePlanner } from '../../state/use-planner'
import { usePlan, useYear } from '../hooks'
import { cropTitle } from '../titles'
import { CalendarCard } from './calendar-card'

/** Crops in use without bloom are called for; else the calendar is folded until it is to be moved. */
export function Calendar() {
  const plan = usePlan()
  const year = useYear()
  const missing = cropsWithoutBloom(plan, year)
  if (cropsIn(plan, year).length === 0) return null
  if (missing.length === 0) {
    return (
      <Disclosure summary="Move the whole calendar: region and apple date">
        <CalendarCard />
      </Disclosure>
    )
  }
  const names = listed(missing.map(crop => cropTitle(plan, crop)))
  return (
    <div className="call-box">
      <p>
        {names} {missing.length === 1 ? 'has' : 'have'} no bloom dates for {year}, so nothing can be counted for{' '}
        {missing.length === 1 ? 'it' : 'them'}. If you know when apple bloomed, here or nearby, last year or this, all
        else is estimated from it.
      </p>
      <CalendarCard />
    </div>
  )
}

/** Crops that at least one planting of the season needs dates of. */
export function cropsWithoutBloom(plan: Plan, year: number): readonly string[] {
  const waiting = plantingsIn(plan, year).filter(planting => bloomOf(plan, year, planting) === undefined)
  return [...new Set(waiting.map(({ properties }) => properties.crop))]
}

/** Where no bloom is known, it is asked for before a selected station's batches, whose dates hang on it. */
export function useIsBloomFirst(): boolean {
  const plan = usePlan()
  const year = useYear()
  const [feature, ...more] = usePlanner(selectedFeatures)
  const crops = cropsIn(plan, year).length
  const isStationShown = feature !== undefined && more.length === 0 && isStation(feature)
  return isStationShown && crops > 0 && cropsWithoutBloom(plan, year).length === crops
}

/** The calendar above the card of a selected station. */
export function BloomFirst() {
  const year = useYear()
  return useIsBloomFirst() ? <Calendar key={`calendar ${year}`} /> : null
}
