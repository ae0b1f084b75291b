import type { Feature } from '#geo/plan/plan'
import type { DayReport, StationDay } from '#geo/report/day'
import { honest } from '../../text/words'
import { middleOf } from '../mercator'
import { stationHalf } from '../tools/hit'
import { positionsOf } from '../tools/positions'
import type { Frame } from './canvas-layer'

/** Lines from a station at most, to where most of its work goes; a selected one shows all. */
const mostLines = 3
/** Smaller shares of a station's work have no line. */
const leastShare = 0.03
/** Widths of the thinnest and the thickest line, pixels. */
const [thinnest, thickest] = [1, 5]
/** Fewer females than this on the wing read as none. */
const leastFemales = 0.5

/** Whether a station's bees are at work on the day. */
export function isAtWork(day: DayReport, stationId: string): boolean {
  return (dayOf(day, stationId)?.females ?? 0) >= leastFemales
}

/** What stands beside the stations' names on the day: "48 at work". */
export function captionsOf(day: DayReport): ReadonlyMap<string, string> {
  return new Map(day.stations.map(({ id, females }) => [id, captionOf(females)]))
}

function captionOf(females: number): string {
  return females < leastFemales ? 'none at work' : `${honest(females)} at work`
}

/** A line of work: from a station to a planting or forage area, `weight` from 0 to 1. */
export type WorkLine = { readonly from: string; readonly to: string; readonly weight: number }

/** Lines to draw for a day; `weight` 1 is the most females that any of them stands for. */
export function workLines(day: DayReport, isSelected: (id: string) => boolean): readonly WorkLine[] {
  const lines = day.stations.flatMap(({ id, females, work }) => {
    if (females < leastFemales) return []
    const shown = isSelected(id) ? work : work.slice(0, mostLines)
    return shown
      .filter(({ share }) => share >= leastShare)
      .map(({ id: to, share }) => ({ from: id, to, weight: females * share }))
  })
  const most = Math.max(...lines.map(({ weight }) => weight))
  return lines.map(line => ({ ...line, weight: line.weight / most }))
}

/** Who works where: lines from stations to the middle of what their bees visit, wider for more females. */
export function paintWork(
  frame: Frame,
  features: readonly Feature[],
  day: DayReport,
  isSelected: (id: string) => boolean,
): void {
  const { context, palette } = frame
  const middles = new Map(
    features.map(feature => [feature.id, frame.toCanvas(middleOf([...positionsOf(feature.geometry)]))]),
  )
  for (const { from, to, weight } of workLines(day, isSelected)) {
    const [a, b] = [middles.get(from), middles.get(to)]
    if (a === undefined || b === undefined || Math.hypot(b.x - a.x, b.y - a.y) < stationHalf) continue
    const width = thinnest + weight * (thickest - thinnest)
    for (const [colour, extra] of [
      [palette.paper, 2],
      [palette.ink, 0],
    ] as const) {
      context.beginPath()
      context.moveTo(a.x, a.y)
      context.lineTo(b.x, b.y)
      context.strokeStyle = colour
      context.lineWidth = width + extra
      context.stroke()
      context.beginPath()
      context.arc(b.x, b.y, 2 + width / 2 + extra / 2, 0, 2 * Math.PI)
      context.fillStyle = colour
      context.fill()
    }
  }
}

function dayOf(day: DayReport, stationId: string): StationDay | undefined {
  return day.stations.find(({ id }) => id === stationId)
}
