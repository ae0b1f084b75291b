import { bees } from '../data/bees'
import type { BeeId } from '../data/own'
import { type BeeSettings, type Settings, settingsFor } from '../data/settings'
import { thresholds } from '../data/thresholds'
import type { Plan, Station } from '../plan/plan'
import type { CautionKey } from '../wording/cautions'

/** What all tasks of a season are made from. */
export type Context = {
  readonly plan: Plan
  readonly year: number
  readonly settings: Settings
  /** Stations in use. */
  readonly stations: readonly Station[]
}

/** The caution on ladders, where a station stands higher than most people reach. */
export function ladderCaution({ stations }: Context): readonly CautionKey[] {
  const isHigh = stations.some(({ properties }) => (properties.height ?? 0) > thresholds.heightMost.value)
  return isHigh ? ['ladder'] : []
}

/** A species' figure with its range; a value of the grower's own has none. */
export function beeFigure({ plan, settings }: Context, bee: BeeId, name: keyof BeeSettings) {
  const end = (which: 'low' | 'high') => settingsFor(plan, { [`bee.${name}`]: which }).bees[bee][name]
  return { value: settings.bees[bee][name], low: end('low'), high: end('high') }
}

/** "red mason bee", as within a sentence; what is named after a continent keeps its capital. */
export function beeWord(bee: BeeId): string {
  return bees[bee].name.replace(/^(?!European)./, letter => letter.toLowerCase())
}
