import { bloomWeight } from '../bloom/bloom'
import { type Settings, settingsFor } from '../data/settings'
import { releaseDay } from '../flight/release-day'
import { computableSeason } from '../plan/computable'
import { type Plan, seasonOf } from '../plan/plan'
import type { Outcome, Problem, ProblemCode } from '../problem'
import { timingGround } from '../timing/timing-ground'
import { flyingTime } from '../weather/flying-time'
import { autumnTasks } from './autumn'
import { type BloomsNear, bloomsNear } from './near-bloom'
import { releaseTasks } from './releases'
import { batchesOf, bloomsOf, flightsOf, type NamedBloom, stationsOf } from './season-facts'
import { flightTasks, type Start, startTasks } from './spring'
import { type Task, taskKinds } from './task'

/**
 * The work of the season `year` by date, from this plan's own releases, flight and bloom. What cannot be known is left out,
 * and a problem says so.
 */
export function seasonTasks(plan: Plan, year: number): Outcome<readonly Task[]> {
  const season = computableSeason(plan, year)
  if (!season.ok) return season
  const settings = settingsFor(plan)
  const stations = stationsOf(plan, year)
  const batches = batchesOf(plan, year)
  const flights = flightsOf(batches, settings, bee => flyingTime(plan, year, bee, settings))
  const blooms = bloomsOf(plan, year)
  const problem = (code: ProblemCode, severity: Problem['severity']): Problem => ({
    code,
    severity,
    at: '',
    values: { year },
  })
  const start = startOf(plan, year, { settings, batches, blooms })
  if (start === null) return { ok: false, problems: [problem('calendar-empty', 'error')] }
  const problems = [
    ...(stations.length === 0 ? [problem('calendar-no-stations', 'warning')] : []),
    ...(stations.length > 0 && batches.length === 0 ? [problem('calendar-no-releases', 'warning')] : []),
    ...(batches.length > 0 && flights.length === 0 ? [problem('calendar-no-females', 'warning')] : []),
    ...(blooms.length === 0 ? [problem('calendar-no-bloom', 'note')] : []),
  ]
  const context = { plan, year, settings, stations }
  const tasks = [
    ...startTasks(context, start, flights),
    ...(batches.length === 0 ? [] : releaseTasks(context, batches, nearOf(plan, year, blooms))),
    ...(flights.length === 0 ? [] : [...flightTasks(context, flights), ...autumnTasks(context, flights)]),
  ]
  return { ok: true, value: tasks.sort(byDate), problems }
}

/** Which blooms each station has near; what cannot be computed was refused before. */
function nearOf(plan: Plan, year: number, blooms: readonly NamedBloom[]): BloomsNear {
  const ground = timingGround(plan, year)
  return ground.ok ? bloomsNear(ground.value, blooms) : () => []
}

/** The day that the work of spring leads up to: the first release, or what the first bloom would want it to be. */
function startOf(
  plan: Plan,
  year: number,
  facts: {
    readonly settings: Settings
    readonly batches: ReturnType<typeof batchesOf>
    readonly blooms: readonly NamedBloom[]
  },
): Start | null {
  const { batches, blooms, settings } = facts
  if (batches.length > 0) return { day: Math.min(...batches.map(({ day }) => day)), bloom: null }
  const [bloom] = blooms
  if (bloom === undefined) return null
  const [station] = stationsOf(plan, year)
  const bee = (station && seasonOf(plan, year)?.stations?.[station.id]?.bee) ?? plan.bee
  return { day: releaseDay([{ days: bloomWeight(bloom.curve), weight: 1 }], settings.bees[bee])!, bloom: bloom.name }
}

function byDate(a: Task, b: Task): number {
  if (a.date !== b.date) return a.date < b.date ? -1 : 1
  return taskKinds.indexOf(a.kind) - taskKinds.indexOf(b.kind)
}
