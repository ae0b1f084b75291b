import type { DayReport } from '#geo/report/day'
import type { Job } from '../../state/store'
import { percent } from '../../text/words'

/** What arrives on a day against what its open flowers want, over all plantings; null where nothing is wanted. */
export function metOn({ plantings }: DayReport): number | null {
  let wanted = 0
  let met = 0
  for (const planting of plantings) {
    if (planting.met === null || planting.wanted === null) continue
    wanted += planting.wanted
    met += planting.met * planting.wanted
  }
  return wanted > 0 ? met / wanted : null
}

/** "The bees bring 62% of what the open flowers want." null until it is known, and where no flower is open. */
export function workSentence(day: number | null, job: Job<DayReport>): string | null {
  if (day === null || job.status !== 'ready' || job.value.day !== day) return null
  const met = metOn(job.value)
  return met === null ? null : `The bees bring ${percent(met)} of what the open flowers want.`
}
