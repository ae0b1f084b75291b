import { frostProblems } from '../bloom/frost'
import { Coverage, type GroupTotals } from '../coverage/coverage'
import { type Demand, demandOf, type Ground } from '../coverage/demand'
import { fieldOf } from '../coverage/field'
import { timesFlyingTime } from '../coverage/flying'
import { flightFrom, type Limits, limitsOf } from '../coverage/limits'
import { type Supply, suppliesOf } from '../coverage/supply'
import { weatherGaps } from '../coverage/weather-gaps'
import { type Settings, settingsFor, type Vary } from '../data/settings'
import { computableSeason } from '../plan/computable'
import { type Plan, seasonOf } from '../plan/plan'
import type { Outcome, Problem } from '../problem'
import { type LngLat, type Plane, planeOf } from '../space/plane'
import { timingChecks } from '../timing/timing-checks'
import { type DayReport, dayReport } from './day'
import type { PointCoverage, Report } from './report'
import { busiestDay, orchardResult, plantingResult, stationResult } from './rows'

/**
 * A plan's season laid out for computing: made once, then asked again as stations move. Its plane stays that of the
 * plan it was made from.
 */
export class Model {
  readonly settings: Settings
  readonly #plan: Plan
  readonly #year: number
  readonly #plane: Plane
  readonly #demand: Demand
  readonly #supplies: readonly Supply[]
  readonly #coverage: Coverage
  readonly #problems: readonly Problem[]

  constructor(plan: Plan, year: number, problems: readonly Problem[], vary: Vary = {}) {
    this.#plan = plan
    this.#year = year
    this.settings = settingsFor(plan, vary)
    this.#plane = planeOf(plan.features)
    this.#demand = demandOf(plan, year, this.settings, this.#plane)
    const { grounds, blooms } = this.#demand
    const settings = this.settings
    this.#supplies = suppliesOf(plan, year, { settings, plane: this.#plane, blooms })
    const gaps = weatherGaps(this.#supplies, { blooms, year })
    this.#problems = [...problems, ...this.#demand.problems, ...gaps, ...frostProblems(plan, year)]
    const field = fieldOf(grounds.map(ground => ground.points))
    const groups = grounds.map(ground => ground.group)
    this.#coverage = new Coverage(field, groups, blooms, settings.site.referenceCropShare)
    this.#coverage.setStations(this.#supplies.map(({ input }) => input))
  }

  /** Moves one station; only its own service is worked out again. False where the season does not use it. */
  moveStation(id: string, to: LngLat): boolean {
    const index = this.#supplies.findIndex(supply => supply.id === id)
    if (index < 0) return false
    const { x, y } = this.#plane.toMetres(to)
    this.#coverage.moveStation(index, x, y)
    return true
  }

  /**
   * The season's report. Without `withLimits`, what holds plantings back is left out (null): it takes several times as
   * long; and so are the field checks of dates.
   */
  report({ withLimits }: { readonly withLimits: boolean }): Report {
    const plantings = this.#plantings()
    const limits = withLimits ? this.#limits() : null
    const rows = plantings.map(({ ground, totals, index }) => plantingResult(ground, totals, limits?.[index] ?? null))
    return finite({
      plan: this.#plan.name,
      year: this.#year,
      orchard: orchardResult(
        plantings.map(({ ground, totals }) => ({ ground, totals })),
        busiestDay(plantings, this.#demand.blooms, this.#year),
      ),
      plantings: rows,
      stations: this.#supplies.map(supply => stationResult(supply, this.settings)),
      problems: withLimits ? [...this.#problems, ...this.#ofDates()] : this.#problems,
    })
  }

  /** Coverage of every planting's points, in the plantings' own order; 1 where nothing is wanted, -1 where bloom is not known. */
  pointCoverage(): PointCoverage {
    const { field, supplied } = this.#coverage
    const { grounds } = this.#demand
    const planted = grounds.findIndex(({ group }) => group.isForage)
    const groups = planted < 0 ? grounds.length : planted
    const shares = new Float32Array(field.groupStart[groups]!)
    for (let g = 0; g < groups; g += 1) {
      const start = field.groupStart[g]!
      const { wanted, bloom } = grounds[g]!.group
      for (let i = start; i < field.groupStart[g + 1]!; i += 1) {
        shares[start + field.order[i]!] = bloom === null ? -1 : wanted > 0 ? Math.min(1, supplied[i]! / wanted) : 1
      }
    }
    return shares
  }

  /** Who works where on one day of the season, stations standing where they were last moved to. */
  day(day: number): DayReport {
    const season = { year: this.#year, demand: this.#demand, supplies: this.#supplies }
    return dayReport({ ...season, coverage: this.#coverage, settings: this.settings }, day)
  }

  #ofDates(): readonly Problem[] {
    const { field } = this.#coverage
    const plan = this.#plan
    const season = seasonOf(plan, this.#year)!
    const laidOut = { settings: this.settings, plane: this.#plane, demand: this.#demand, supplies: this.#supplies }
    return timingChecks({ plan, year: this.#year, season, field, ...laidOut })
  }

  #plantings(): { ground: Ground; totals: GroupTotals; index: number }[] {
    return this.#demand.grounds
      .map((ground, index) => ({ ground, index }))
      .filter(({ ground }) => !ground.group.isForage)
      .map(({ ground, index }) => ({ ground, index, totals: this.#coverage.totalsOf(index) }))
  }

  #limits(): readonly (Limits | null)[] {
    const { blooms } = this.#demand
    return limitsOf(this.#coverage, (station, bloom) => {
      const { bee, input, flying } = this.#supplies[station]!
      const { start, values } = blooms[bloom]!.open
      const days = { start, length: values.length }
      // The weather is what it is, whatever is put right.
      return timesFlyingTime(flightFrom(input.best[bloom]!.day, input.females, this.settings.bees[bee], days), flying)
    })
  }
}

/** Lays a plan's season out, or says why it cannot be computed. */
export function modelOf(plan: Plan, year: number, vary?: Vary): Outcome<Model> {
  const season = computableSeason(plan, year)
  if (!season.ok) return season
  const { problems } = season
  return { ok: true, value: new Model(plan, year, problems, vary), problems }
}

/** The report itself, once every number in it is seen to be finite; anything else is a mistake of ours. */
function finite(report: Report): Report {
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`report.${path} is ${value}`)
    if (value !== null && typeof value === 'object') {
      for (const [key, member] of Object.entries(value)) visit(member, `${path}.${key}`)
    }
  }
  visit({ orchard: report.orchard, plantings: report.plantings, stations: report.stations }, '')
  return report
}
