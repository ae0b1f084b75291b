import { type DailyCurve, endOf } from '../time/curve'
import { countNear, decaysOfTile, type Field, tileInDisc } from './field'
import type { Kernel } from './kernel'

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
  readonly #nearby: Uint16Array
  readonly #decays: Float64Array
  readonly #visited: Uint32Array
  readonly #tileTotals: Float64Array
  readonly #isStale: Uint8Array
  readonly #pull: Float64Array
  #shift: number

  /** `referenceCropShare` is kappa, the share of their trips that well-timed bees spend on the crop. */
  constructor(field: Field, groups: readonly Group[], blooms: readonly BloomPair[], referenceCropShare: number) {
    const tiles = field.tileStart.length - 1
    this.field = field
    this.groups = groups
    this.blooms = blooms
    this.#kappa = referenceCropShare
    this.#firstDay = blooms.reduce((day, { open }) => Math.min(day, open.start), Number.POSITIVE_INFINITY)
    this.#days = blooms.reduce((day, { open }) => Math.max(day, endOf(open)), Number.NEGATIVE_INFINITY) - this.#firstDay
    if (blooms.length === 0) this.#days = 0
    this.supplied = new Float64Array(field.x.length)
    this.#nearby = new Uint16Array(field.x.length)
    this.#decays = new Float64Array(field.x.length)
    this.#visited = new Uint32Array(tiles)
    this.#tileTotals = new Float64Array(3 * tiles)
    this.#isStale = new Uint8Array(tiles).fill(1)
    this.#pull = new Float64Array(this.#days)
    this.#shift = roundingShift([])
  }

  get stations(): readonly StationInput[] {
    return this.#placed.map(({ input }) => input)
  }

  /** Bytes held by the points, their index and the stations' sums. */
  get bytes(): number {
    const { field } = this
    const arrays = [field.x, field.y, field.order, field.groupStart, field.groupTile, field.tileStart, field.tileBox]
    const own = [this.supplied, this.#nearby, this.#decays, this.#visited, this.#tileTotals, this.#isStale, this.#pull]
    const sums = this.#placed.flatMap(({ decays, service }) => [decays, service])
    return [...arrays, ...own, ...sums].reduce((bytes, array) => bytes + array.byteLength, 0)
  }

  /** Starts over with these stations. */
  setStations(stations: readonly StationInput[]): void {
    this.supplied.fill(0)
    this.#nearby.fill(0)
    this.#isStale.fill(1)
    this.#placed.length = 0
    this.#shift = roundingShift(stations.map(input => this.#mostService(input)))
    for (const input of stations) {
      const placed = this.#unplaced(input)
      this.#placed.push(placed)
      this.#putIn(placed)
    }
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
    this.#putIn(placed)
  }

  /** Totals of every group, in order. */
  totals(): GroupTotals[] {
    return this.groups.map((_, group) => this.totalsOf(group))
  }

  totalsOf(group: number): GroupTotals {
    const { groupStart, groupTile } = this.field
    const points = groupStart[group + 1]! - groupStart[group]!
    let served = 0
    let supplied = 0
    let reached = 0
    for (let tile = groupTile[group]!; tile < groupTile[group + 1]!; tile += 1) {
      if (this.#isStale[tile] === 1) this.#sumTile(tile, this.groups[group]!.wanted)
      served += this.#tileTotals[3 * tile]!
      supplied += this.#tileTotals[3 * tile + 1]!
      reached += this.#tileTotals[3 * tile + 2]!
    }
    return {
      points,
      wanted: points * this.groups[group]!.wanted,
      supplied,
      served,
      reached,
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
    const { open, weight } = this.blooms[bloom]!
    const { overlap } = input.best[bloom]!
    let sum = 0
    for (let i = 0; i < open.values.length; i += 1) {
      const day = open.start + i
      const total = pull.values[day - pull.start]!
      const females = flight.values[day - flight.start] ?? 0
      if (total > 0) sum += (females * open.values[i]! * weight.values[i]!) / total
    }
    return overlap > 0 ? (input.effectiveness * sum) / (overlap * this.#kappa) : 0
  }

  #at(index: number): Placed {
    const placed = this.#placed[index]
    if (placed === undefined) throw new RangeError(`no station ${index} of ${this.#placed.length}`)
    return placed
  }

  #unplaced(input: StationInput): Placed {
    return { input, decays: new Float64Array(this.groups.length), service: new Float64Array(this.blooms.length) }
  }

  /** No point can receive more than this from a station: a point's share of the blossom in range is at most 1. */
  #mostService(input: StationInput): number {
    const overlaps = this.blooms.map(({ weight }, bloom) => {
      const { overlap } = input.best[bloom]!
      return overlap > 0 ? sumOfFlight(input.flight, weight) / overlap : 0
    })
    return (input.effectiveness * Math.max(0, ...overlaps)) / this.#kappa
  }

  /** More or fewer stations may ask for another rounding; then everything is put in again, as a fresh start would. */
  #hasShiftChanged(): boolean {
    const stations = this.stations
    if (roundingShift(stations.map(input => this.#mostService(input))) === this.#shift) return false
    this.setStations(stations)
    return true
  }

  #addPull(values: Float64Array, background: number, decays: Float64Array, withForage: boolean): void {
    values.fill(background)
    const byBloom = new Float64Array(this.blooms.length)
    this.groups.forEach((group, g) => {
      if (group.bloom !== null && (withForage || !group.isForage)) byBloom[group.bloom]! += group.blossom * decays[g]!
    })
    this.blooms.forEach(({ open }, bloom) => {
      const blossom = byBloom[bloom]!
      if (blossom === 0) return
      const offset = open.start - this.#firstDay
      for (let i = 0; i < open.values.length; i += 1) values[offset + i]! += blossom * open.values[i]!
    })
  }

  #putIn(placed: Placed): void {
    const { input, decays, service } = placed
    if (!(input.females > 0)) return
    const { field } = this
    let visits = 0
    for (let group = 0; group < this.groups.length; group += 1) {
      let sum = 0
      for (let tile = field.groupTile[group]!; tile < field.groupTile[group + 1]!; tile += 1) {
        const standing = tileInDisc(field, tile, input.x, input.y, input.kernel.range)
        if (standing === 0) continue
        sum += decaysOfTile(field, tile, input, input.kernel, standing === 1, this.#decays)
        this.#visited[visits] = tile
        visits += 1
      }
      decays[group] = sum
    }
    this.#addPull(this.#pull, input.background, decays, true)
    const pull = { start: this.#firstDay, values: this.#pull }
    for (let bloom = 0; bloom < service.length; bloom += 1) {
      service[bloom] = this.serviceOf(input, bloom, input.flight, pull)
    }
    this.#addService(visits, placed, 1)
    this.#countNearby(input, 1)
  }

  #takeOut(placed: Placed): void {
    const { input } = placed
    if (!(input.females > 0)) return
    const { field } = this
    let visits = 0
    for (let group = 0; group < this.groups.length; group += 1) {
      if (placed.decays[group] === 0) continue
      for (let tile = field.groupTile[group]!; tile < field.groupTile[group + 1]!; tile += 1) {
        const standing = tileInDisc(field, tile, input.x, input.y, input.kernel.range)
        if (standing === 0) continue
        decaysOfTile(field, tile, input, input.kernel, standing === 1, this.#decays)
        this.#visited[visits] = tile
        visits += 1
      }
    }
    this.#addService(visits, placed, -1)
    this.#countNearby(input, -1)
    placed.decays.fill(0)
    placed.service.fill(0)
  }

  /** Adds (or takes back) a station's service to the points of the tiles it has just been measured to. */
  #addService(visits: number, placed: Placed, sign: 1 | -1): void {
    const { tileStart, groupTile } = this.field
    let group = 0
    for (let visit = 0; visit < visits; visit += 1) {
      const tile = this.#visited[visit]!
      while (tile >= groupTile[group + 1]!) group += 1
      const { bloom, blossom, isForage } = this.groups[group]!
      if (bloom === null || isForage) continue
      const perDecay = blossom * placed.service[bloom]!
      if (perDecay === 0) continue
      this.#isStale[tile] = 1
      addScaled(this.supplied, this.#decays, tileStart[tile]!, tileStart[tile + 1]!, perDecay, this.#shift, sign)
    }
  }

  #countNearby(input: StationInput, by: 1 | -1): void {
    this.groups.forEach(({ isForage }, group) => {
      if (!isForage) countNear(this.field, group, input, by, this.#nearby, this.#isStale)
    })
  }

  #sumTile(tile: number, wanted: number): void {
    let served = 0
    let supplied = 0
    let reached = 0
    for (let i = this.field.tileStart[tile]!; i < this.field.tileStart[tile + 1]!; i += 1) {
      const service = this.supplied[i]!
      supplied += service
      served += service < wanted ? service : wanted
      reached += this.#nearby[i]! > 0 ? 1 : 0
    }
    this.#tileTotals[3 * tile] = served
    this.#tileTotals[3 * tile + 1] = supplied
    this.#tileTotals[3 * tile + 2] = reached
    this.#isStale[tile] = 0
  }

  #timingMatch(group: number): number | null {
    const { bloom } = this.groups[group]!
    if (bloom === null) return null
    let matched = 0
    let all = 0
    for (const { input, decays } of this.#placed) {
      const sum = decays[group]!
      if (sum === 0) continue
      const { overlap } = input.best[bloom]!
      if (overlap > 0) matched += (sum * sumOfFlight(input.flight, this.blooms[bloom]!.weight)) / overlap
      all += sum * input.females
    }
    return all > 0 ? matched / all : null
  }
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

function addScaled(
  supplied: Float64Array,
  decays: Float64Array,
  from: number,
  to: number,
  factor: number,
  shift: number,
  sign: 1 | -1,
): void {
  if (sign === 1) {
    for (let i = from; i < to; i += 1) supplied[i]! += decays[i]! * factor + shift - shift
  } else {
    for (let i = from; i < to; i += 1) supplied[i]! -= decays[i]! * factor + shift - shift
  }
}
