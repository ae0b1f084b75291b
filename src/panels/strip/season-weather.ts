import { bees } from '#geo/data/bees'
import type { BeeId } from '#geo/data/own'
import { type Plan, seasonOf } from '#geo/plan/plan'
import type { DailyCurve } from '#geo/time/curve'
import { flyingTime } from '#geo/weather/flying-time'
import { listed, significant } from '#geo/wording/plain'
import { settingsOf, stationsInUse } from '../../state/selectors'

/** Hours of full work that each day's weather allows a bee, day by day; an estimate. */
export type FlyingBand = {
  readonly id: BeeId
  readonly label: string
  readonly kind: 'flying'
  readonly hours: DailyCurve
  /** 0 on days whose temperatures are not given: they count as typical ones. */
  readonly known: Uint8Array
  /** Hours of a typical spring day. */
  readonly typical: number
}

/** Flying time of every bee in use by the season's weather; none without weather. */
export function flyingBands(plan: Plan, year: number): readonly FlyingBand[] {
  const settings = settingsOf(plan)
  const uses = seasonOf(plan, year)?.stations ?? {}
  const found = stationsInUse(plan, year).map(({ id }) => uses[id]?.bee ?? plan.bee)
  const used = [...new Set(found.length === 0 ? [plan.bee] : found)]
  return used.flatMap(id => {
    const time = flyingTime(plan, year, id, settings)
    if (time === null) return []
    const typical = settings.site.typicalFlyingHours
    const hours = { start: time.start, values: time.values.map(share => share * typical) }
    const label = used.length === 1 ? 'Flying time' : `Flying, ${bees[id].name}`
    return [{ id, label, kind: 'flying' as const, hours, known: time.known, typical }]
  })
}

/** A bee's flying time on a day; `hours` null = that day's weather is not known, and it counts as a typical one. */
export type FlyingDay = { readonly id: BeeId; readonly hours: number | null }

export function flyingOn(bands: readonly FlyingBand[], day: number): readonly FlyingDay[] {
  return bands.map(({ id, hours, known }) => {
    const at = day - hours.start
    return { id, hours: known[at] === 1 ? hours.values[at]! : null }
  })
}

/** "6.2" of hours; "under 0.1" and "0". */
export function hoursText(hours: number): string {
  if (hours > 0 && hours < 0.05) return 'under 0.1'
  return String(hours < 10 ? Math.round(hours * 10) / 10 : significant(hours, 2))
}

/** "about 6.2 flying hours"; with several bees, each by name. null without weather. */
export function flyingWords(flying: readonly FlyingDay[]): string | null {
  const known = flying.filter((each): each is FlyingDay & { hours: number } => each.hours !== null)
  if (flying.length === 0) return null
  if (known.length === 0) return 'no weather for that day, counted as a typical one'
  if (known.length === 1) return hoursOf(known[0]!.hours)
  return listed(known.map(({ id, hours }) => `${hoursOf(hours)} for the ${midSentence(bees[id].name)}`))
}

/** "the blue orchard bee", but "the European orchard bee". */
function midSentence(name: string): string {
  return name.startsWith('European') ? name : name.charAt(0).toLowerCase() + name.slice(1)
}

function hoursOf(hours: number): string {
  return `${hours === 0 ? 'no' : `about ${hoursText(hours)}`} flying hours`
}
