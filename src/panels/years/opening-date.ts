import type { Season } from '#geo/plan/plan'
import { addDays, type IsoDate, isIsoDate } from '#geo/time/day'

/** The day to begin with: that of the other stations, or today where it lies in the season's year or the winter after. */
export function openingDay(season: Season | undefined, year: number, today: IsoDate): IsoDate | null {
  const days = Object.values(season?.records ?? {}).flatMap(({ opening }) => (opening ? [opening.date] : []))
  const last = days.filter(isIsoDate).toSorted().at(-1)
  const isNear = today >= `${year}-01-01` && today <= addDays(`${year}-12-31`, 120)
  return isNear ? today : (last ?? null)
}
