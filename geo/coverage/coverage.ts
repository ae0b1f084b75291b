import { type DailyCurve, endOf } from '../time/curve'
import type { Field } from './field'
import type { Kernel } from './kernel'
import { type Disc, Reach } from './reach'
import { runsInDisc } from './runs'
import { sweepOf } from './simd-sweep'
import type { PlainSweep } from './sweep'

/** What every point of one planting or forage area is like. */
export type Group = {
  /** Females wanted at a point, R; 0 on forage. */
  readonly wanted: number
  /** Blossom of a point, w: flowers times appeal. */
  readonly blossom: number
  /** Index of its bloom; null without bloom: it then neither feeds nor is served. */
  readonly bloom: number | null
  readonly isForage: boolean
}

/** Openness b(t) and bloom weight beta(t) of one bloom. */
export type BloomPair = { readonly open: DailyCurve; readonly weight: DailyCurve }

/** What the engine needs to know of a station. */
export type StationInput = {
  /** Metres in the plan's plane. */
  readonly x: number
  readonly y: number
  readonly kernel: Kernel
  /** Typical foraging radius, m. */
  readonly radius: number
  /** Pull W of the blossom that nobody drew. */
  readonly background: number
  readonly effectiveness: number
  /** Nesting females F, in her own species. */
  readonly females: number
  /** Females at work A(t), over at least the days of all blooms. */
  readonly flight: DailyCurve
  /** Ostar and the day that reaches it, of this station's bee, for each bloom. */
  readonly best: readonly { readonly day: number; readonly overlap: number }[]
}

/** Sums over one planting's points. */
export type GroupTotals = {
  readonly points: number
  /** Sums of R, E, min(R, E); females. */
  readonly wanted: number
  readonly supplied: number
  readonly served: number
  /** Points within the typical foraging radius of a stocked station. */
  readonly reached: number
  /** null with no bees in range. */
  readonly timingMatch: number | null
}

type Placed = {
  input: StationInput
  /** Where it counts as in reach; its own object even where two stations share one input. */
  disc: Disc
  /** Sum over days of A(t) beta(t) / Ostar, by bloom; 0 where there is no best. */
  readonly matched: Float64Array
  /** No point can receive more than this from it: a point's share of the blossom in range is at most 1. */
  readonly most: number
  /** Sum of distance decay over each group's points. */
  readonly decays: Float64Array
  /** Service at a point per unit of blossom and decay, by bloom: effectiveness times the sum over days of section 6. */
  readonly service: Float64Array
}

/**
 * Service and coverage of a field by a set of stations. A station's service does not depend on other stations, so a
 * station that moves is taken out and put back alone. Every contribution is rounded to one power of two: sums of its
 * multiples are exact, so the order of additions does not matter and taking out undoes putting in to the last bit.
 */
export class Coverage {
  readonly field: Field
  readonly groups: readonly Group[]
  readonly blooms: readonly BloomPair[]
  /** Service received by each point, E, in the field's order; blue orchard bee females. */
  readonly supplied: Float64Array
  readonly #kappa: number
  readonly #firstDay: number
  readonly #days: number
  readonly #placed: Placed[] = []
  readonly #sweep: PlainSweep
  readonly #reach: Reach
  /** First run of each group among the runs being swept; one more entry than there are groups. */
  readonly #groupRun: Uint32Array
  /** Blossom of each bloom in a station's range, and of all of them day by day: Den of the model. */
  readonly #blossomOf: Float64Array
  readonly #pull: Float64Array
  /** Per group: the two sums of `#sumTiming`. */
  readonly #timing: Float64Array
  #isTimingStale = true
  #shift: number

  /** `referenceCropShare` is kappa, the share of their trips that well-timed bees spend on the crop. */
  constructor(field: Field, groups: readonly Group[], blooms: readonly BloomPair[], referenceCropShare: number) {
    this.#sweep = sweepOf(field)
    const { x, y, tileStart, supplied } = this.#sweep
    this.field = { ...field, x, y, tileStart }
    this.supplied = supplied
    this.groups = groups
    this.blooms = blooms
    this.#kappa = referenceCropShare
    this.#firstDay = blooms.reduce((day, { open }) => Math.min(day, open.start), Number.POSITIVE_INFINITY)
    this.#days = blooms.reduce((day, { open }) => Math.max(day, endOf(open)), Number.NEGATIVE_INFINITY) - this.#firstDay
    if (blooms.length === 0) this.#days = 0
    this.#reach = new Reach(this.field)
    this.#groupRun = new Uint32Array(groups.length + 1)
    this.#timing = new Float64Array(2 * groups.length)
    this.#blossomOf = new Float64Array(blooms.length)
    this.#pull = new Float64Array(this.#days)
    this.#shift = roundingShift([])
  }

  get stations(): readonly StationInput[] {
    return this.#placed.map(({ input }) => input)
  }

  /** Bytes held by the points, their index and the stations' sums. */
  get bytes(): number {
    const { order, groupStart, groupTile, groupRow, groupBox, rowTile, rowBox, tileBox } = this.field
    const index = [order, groupStart, groupTile, groupRow, groupBox, rowTile, rowBox, tileBox]
    const sums = this.#placed.flatMap(({ decays, service, matched }) => [decays, service, matched])
    const own = [...index, ...sums, this.#groupRun, this.#timing, this.#blossomOf, this.#pull].reduce(
      (bytes, array) => bytes + array.byteLength,
      0,
    )
    return this.#sweep.bytes + this.#reach.bytes + own
  }

  /** Starts over with these stations. */
  setStations(stations: readonly StationInput[]): void {
    this.supplied.fill(0)
    this.#sweep.isStale.fill(1)
    this.#reach.clear()
    this.#isTimingStale = true
    this.#placed.length = 0
    for (const input of stations) this.#placed.push(this.#unplaced(input))
    this.#shift = this.#roundingShift()
    for (const placed of this.#placed) this.#putIn(placed)
  }

  addStation(input: StationInput, index = this.#placed.length): void {
    const placed = this.#unplaced(input)
    this.#placed.splice(index, 0, placed)
    if (!this.#hasShiftChanged()) this.#putIn(placed)
  }

  removeStation(index: number): void {
    this.#takeOut(this.#at(index))
    this.#placed.splice(index, 1)
    this.#hasShiftChanged()
  }

  moveStation(index: number, x: number, y: number): void {
    const placed = this.#at(index)
    this.#takeOut(placed)
    placed.input = { ...placed.input, x, y }
    placed.disc = discOf(placed.input)
    this.#putIn(placed)
  }

  /** Totals of every group, in order. */
  totals(): GroupTotals[] {
    return this.groups.map((_, group) => this.totalsOf(group))
  }

  totalsOf(group: number): GroupTotals {
    const { groupStart, groupTile } = this.field
    const points = groupStart[group + 1]! - groupStart[group]!
    const { wanted, isForage } = this.groups[group]!
    const { tileTotals } = this.#sweep
    this.#sweep.sumTiles(groupTile[group]!, groupTile[group + 1]!, wanted)
    let served = 0
    let supplied = 0
    for (let tile = groupTile[group]!; tile < groupTile[group + 1]!; tile += 1) {
      served += tileTotals[2 * tile]!
      supplied += tileTotals[2 * tile + 1]!
    }
    return {
      points,
      wanted: points * wanted,
      supplied,
      served,
      reached: isForage ? 0 : this.#reach.reachedOf(group),
      timingMatch: this.#timingMatch(group),
    }
  }

  /** Sum of distance decay from station `index` to the points of `group`; 0 where the station holds no bees. */
  decaysOf(index: number, group: number): number {
    return this.#at(index).decays[group]!
  }

  /** Blossom in range of station `index` on each day from `firstDay` on, weighed by decay: Den(t) of the model. */
  pullOf(index: number, options: { readonly background?: number; readonly withForage?: boolean } = {}): DailyCurve {
    const { input, decays } = this.#at(index)
    const { background = input.background, withForage = true } = options
    const values = new Float64Array(this.#days)
    this.#addPull(values, background, decays, withForage)
    return { start: this.#firstDay, values }
  }

  /** Sum over days of section 6 for one bloom: A b beta / (Den Ostar kappa), times effectiveness. */
  serviceOf(input: StationInput, bloom: number, flight: DailyCurve, pull: DailyCurve): number {
    const { open } = this.blooms[bloom]!
    let sum = 0
    for (let i = 0; i < open.values.length; i += 1) sum += this.#metOn(open.start + i, bloom, flight, pull)
    return this.#scaled(input, bloom, sum)
  }

  /** The term of one day in `serviceOf`, as the station's bees fly. */
  serviceOn(day: number, input: StationInput, bloom: number, pull: DailyCurve): number {
    return this.#scaled(input, bloom, this.#metOn(day, bloom, input.flight, pull))
  }

  /** A b beta / Den of one day; 0 on days on which nothing pulls or the bloom is closed. */
  #metOn(day: number, bloom: number, flight: DailyCurve, pull: DailyCurve): number {
    const { open, weight } = this.blooms[bloom]!
    const total = pull.values[day - pull.start] ?? 0
    const females = flight.values[day - flight.start] ?? 0
    const at = day - open.start
    return total > 0 ? (females * (open.values[at] ?? 0) * (weight.values[at] ?? 0)) / total : 0
  }

  #scaled(input: StationInput, bloom: number, sum: number): number {
    const { overlap } = input.best[bloom]!
    return overlap > 0 ? (input.effectiveness * sum) / (overlap * this.#kappa) : 0
  }

  #at(index: number): Placed {
    const placed = this.#placed[index]
    if (placed === undefined) throw new RangeError(`no station ${index} of ${this.#placed.length}`)
    return placed
  }

  #unplaced(input: StationInput): Placed {
    const matched = new Float64Array(this.blooms.length)
    let most = 0
    for (let bloom = 0; bloom < matched.length; bloom += 1) {
      const { overlap } = input.best[bloom]!
      if (overlap > 0) matched[bloom] = sumOfFlight(input.flight, this.blooms[bloom]!.weight) / overlap
      most = Math.max(most, matched[bloom]!)
    }
    return {
      input,
      disc: discOf(input),
      matched,
      most: (input.effectiveness * most) / this.#kappa,
      decays: new Float64Array(this.groups.length),
      service: new Float64Array(this.blooms.length),
    }
  }

  #roundingShift(): number {
    return roundingShift(this.#placed.map(({ most }) => most))
  }

  /** More or fewer stations may ask for another rounding; then everything is put in again, as a fresh start would. */
  #hasShiftChanged(): boolean {
    if (this.#roundingShift() === this.#shift) return false
    this.setStations(this.stations)
    return true
  }

  #addPull(values: Float64Array, background: number, decays: Float64Array, withForage: boolean): void {
    values.fill(background)
    const blossomOf = this.#blossomOf.fill(0)
    for (let g = 0; g < this.groups.length; g += 1) {
      const { bloom, blossom, isForage } = this.groups[g]!
      if (bloom !== null && (withForage || !isForage)) blossomOf[bloom]! += blossom * decays[g]!
    }
    for (let bloom = 0; bloom < blossomOf.length; bloom += 1) {
      const blossom = blossomOf[bloom]!
      if (blossom === 0) continue
      const { start, values: open } = this.blooms[bloom]!.open
      const offset = start - this.#firstDay
      for (let i = 0; i < open.length; i += 1) values[offset + i]! += blossom * open[i]!
    }
  }

  #putIn(placed: Placed): void {
    const { input, decays, service, matched } = placed
    if (!(input.females > 0)) return
    const runs = this.#findRuns(input)
    this.#sweep.measure(runs, input, input.kernel)
    this.#eachGroupRun((group, run) => {
      decays[group]! += this.#sweep.figures[run]!
    })
    this.#addPull(this.#pull, input.background, decays, true)
    const pull = { start: this.#firstDay, values: this.#pull }
    for (let bloom = 0; bloom < service.length; bloom += 1) {
      // Flight that meets none of a bloom serves none of it.
      const isServed = this.#blossomOf[bloom]! > 0 && matched[bloom]! > 0
      if (isServed) service[bloom] = this.serviceOf(input, bloom, input.flight, pull)
    }
    this.#addService(placed, runs, 1)
    this.#reach.add(placed.disc)
  }

  #takeOut(placed: Placed): void {
    const { input } = placed
    if (!(input.females > 0)) return
    const runs = this.#findRuns(input, group => this.#perDecay(placed, group) > 0)
    this.#sweep.measure(runs, input, input.kernel)
    this.#addService(placed, runs, -1)
    this.#reach.remove(placed.disc)
    placed.decays.fill(0)
    placed.service.fill(0)
  }

  /** Adds, or takes back, a station's service to the points that it has just been measured to. */
  #addService(placed: Placed, runs: number, sign: 1 | -1): void {
    this.#eachGroupRun((group, run) => {
      this.#sweep.figures[run] = sign * this.#perDecay(placed, group)
    })
    this.#sweep.add(runs, this.#shift)
    this.#isTimingStale = true
  }

  /** Lists the runs in a station's range, group by group, of the groups asked for; how many there are. */
  #findRuns({ x, y, kernel }: StationInput, isAsked: (group: number) => boolean = () => true): number {
    const { runs, isStale } = this.#sweep
    const disc = { x, y, radius: kernel.range }
    let run = 0
    for (let group = 0; group < this.groups.length; group += 1) {
      if (isAsked(group)) run = runsInDisc(this.field, group, disc, run, runs, isStale)
      this.#groupRun[group + 1] = run
    }
    return run
  }

  /** Calls for each of the runs just listed. */
  #eachGroupRun(call: (group: number, run: number) => void): void {
    for (let group = 0; group < this.groups.length; group += 1) {
      for (let run = this.#groupRun[group]!; run < this.#groupRun[group + 1]!; run += 1) call(group, run)
    }
  }

  /** Service that a group's point receives from a station, per unit of decay; 0 where there is nothing to serve. */
  #perDecay({ decays, service }: Placed, group: number): number {
    const { bloom, blossom, isForage } = this.groups[group]!
    return bloom === null || isForage || decays[group] === 0 ? 0 : blossom * service[bloom]!
  }

  #timingMatch(group: number): number | null {
    if (this.groups[group]!.bloom === null) return null
    if (this.#isTimingStale) this.#sumTiming()
    const females = this.#timing[2 * group + 1]!
    return females > 0 ? this.#timing[2 * group]! / females : null
  }

  /** Sums over the stations, for all groups at once: of decay times the flight that meets bloom, of decay times F. */
  #sumTiming(): void {
    const timing = this.#timing.fill(0)
    for (const { input, decays, matched } of this.#placed) {
      for (let group = 0; group < decays.length; group += 1) {
        const sum = decays[group]!
        const { bloom } = this.groups[group]!
        if (sum === 0 || bloom === null) continue
        timing[2 * group]! += sum * matched[bloom]!
        timing[2 * group + 1]! += sum * input.females
      }
    }
    this.#isTimingStale = false
  }
}

function discOf({ x, y, radius }: StationInput): Disc {
  return { x, y, radius }
}

function sumOfFlight(flight: DailyCurve, weight: DailyCurve): number {
  let sum = 0
  for (let i = 0; i < weight.values.length; i += 1) {
    sum += (flight.values[weight.start + i - flight.start] ?? 0) * weight.values[i]!
  }
  return sum
}

/**
 * The number that, added and taken away again, rounds a contribution to a multiple of 2^-40 (or of a coarser power of
 * two where a point could receive over 1,024 females): sums then stay below 2^52 multiples and so are exact.
 */
function roundingShift(mostByStation: readonly number[]): number {
  const most = mostByStation.reduce((sum, value) => sum + value, 0)
  const scale = most > 1024 ? 2 ** Math.ceil(Math.log2(most / 1024)) : 1
  return 1.5 * 2 ** 12 * scale
}
