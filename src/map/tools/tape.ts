import type { Units } from '#geo/plan/plan'
import { type LngLat, planeAt } from '#geo/space/plane'
import { bearing, distance, lineLength, polygonArea } from '#geo/space/shape'
import { areaText, measureOf } from '../../text/units'
import { grouped } from '../../text/words'

/** Something measured on the map: a way, or the ground that it goes round. No part of the plan. */
export type Tape = { readonly points: readonly LngLat[]; readonly isArea: boolean }

/** "42.3 m, bearing 85°"; "120.4 m in 3 parts, the last 30 m"; "0.18 ha, 170.2 m round". */
export function tapeText({ points, isArea }: Tape, units: Units): string {
  const [first] = points
  if (first === undefined || points.length < 2) return ''
  const plane = planeAt(first)
  const line = points.map(at => plane.toMetres(at))
  const [before, last] = [line.at(-2)!, line.at(-1)!]
  if (isArea) {
    const ring = [...line, line[0]!]
    return `${areaText(polygonArea([ring]), units)}, ${tenths(lineLength(ring), units)} round`
  }
  if (line.length === 2)
    return `${tenths(distance(before, last), units)}, bearing ${Math.round(bearing(before, last)) % 360}°`
  return `${tenths(lineLength(line), units)} in ${line.length - 1} parts, the last ${tenths(distance(before, last), units)}`
}

/** Nobody points more exactly than to a tenth. */
function tenths(metres: number, units: Units): string {
  const { unit, toShown } = measureOf('length', units)
  return `${grouped(Math.round(toShown(metres) * 10) / 10)} ${unit}`
}
