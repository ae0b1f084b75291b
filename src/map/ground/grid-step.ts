import type { Units } from '#geo/plan/plan'
import { foot } from '#geo/space/units'

const metricSteps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000]
const footSteps = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000]

/** Lines nearer than this are hard to tell apart, pixels. */
const narrowest = 48

export type GridStep = {
  /** Distance between lines in the units shown, and in metres. */
  readonly step: number
  readonly metres: number
  readonly unit: 'm' | 'ft'
}

/**
 * The finest round distance between grid lines that still leaves them apart on the screen;
 * null where the map shows so much ground that a flat grid would say nothing.
 */
export function gridStep(metresPerPixel: number, units: Units): GridStep | null {
  const unit = units === 'us' ? 'ft' : 'm'
  const size = units === 'us' ? foot : 1
  const step = (units === 'us' ? footSteps : metricSteps).find(
    candidate => (candidate * size) / metresPerPixel >= narrowest,
  )
  return step === undefined ? null : { step, metres: step * size, unit }
}

/** Every fifth line of a step of 1, 10, 100 … or 2, 20, …, every second of a step of 5, 50 …, is drawn stronger. */
export function strongEvery(step: number): number {
  const lead = Number(String(step)[0])
  return lead === 5 ? 2 : 5
}

/** "40 m", "1.5 km", "200 ft": how far a line lies from the middle of the grid. */
export function gridLabel(count: number, { step, unit }: GridStep): string {
  const distance = Math.abs(count * step)
  if (unit === 'm' && step >= 500) return `${distance / 1000} km`
  return `${distance} ${unit}`
}
