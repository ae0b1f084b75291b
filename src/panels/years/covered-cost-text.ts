import type { Units } from '#geo/plan/plan'
import { hectare } from '#geo/space/units'
import { significant } from '#geo/wording/plain'
import { measureOf } from '../../text/units'
import { grouped } from '../../text/words'

/** Money for each hectare, or acre, to the figures that it deserves. */
export function costText(perHectare: number, units: Units): string {
  return `about ${grouped(significant(perHectare / measureOf('area', units).toShown(hectare), 2))}`
}
