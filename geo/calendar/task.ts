import type { IsoDate } from '../time/day'
import type { CautionKey } from '../wording/cautions'

export const taskKinds = [
  'stations-up',
  'mud',
  'release',
  'round',
  'flight-over',
  'take-in',
  'cold',
  'opening',
  'share-out',
  'order',
] as const
export type TaskKind = (typeof taskKinds)[number]

/** One piece of the season's work, on a day or over several. */
export type Task = {
  /** The same whatever the day, the names and the amounts: what a calendar knows the task by. */
  readonly uid: string
  readonly kind: TaskKind
  readonly date: IsoDate
  /** The last day, where the task takes more than one. */
  readonly end?: IsoDate
  /** Done again every so many days, so many times in all. */
  readonly repeats?: { readonly everyDays: number; readonly times: number }
  readonly title: string
  /** Why on this day, with the figures it follows from. */
  readonly why: string
  /** What to do where, one line each. */
  readonly steps: readonly string[]
  readonly cautions: readonly CautionKey[]
}
