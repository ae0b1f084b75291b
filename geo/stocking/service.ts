import type { Coverage, StationInput } from '../coverage/coverage'
import { decaysOfTile, tileInDisc } from '../coverage/field'
import { endOf } from '../time/curve'
import type { SeasonGround } from './season-ground'

/**
 * What plantings want, point by point or, on large plans, cell by cell: points of one planting within a small square
 * stand together. What is summed over a cell is never less than the sum over its points with the cap at each, so a
 * ceiling for cells is one for plants.
 */
export type Cells = {
  /** Planting (ground) of each cell. */
  readonly ground: Uint32Array
  /** Females wanted, and what the stations that stay serve of it (at most that). */
  readonly wanted: Float64Array
  readonly base: Float64Array
  /** Cell of each point of the field; forage and plantings without bloom have none (`noCell`). */
  readonly ofPoint: Uint32Array
}

export const noCell = 0xffffffff

/** Service of sites to cells, each by one nesting female: columns of entries. */
export type ServiceMatrix = {
  readonly start: Uint32Array
  readonly point: Uint32Array
  readonly service: Float64Array
}

/** Cells of side `side` metres; 0 = every point for itself. `kept` is the coverage by the stations that stay. */
export function cellsOf(ground: SeasonGround, kept: Coverage, side: number): Cells {
  const { field, demand } = ground
  const ofPoint = new Uint32Array(field.x.length).fill(noCell)
  const grounds: number[] = []
  const wanted: number[] = []
  const base: number[] = []
  demand.grounds.forEach(({ group }, g) => {
    if (group.isForage || group.bloom === null || !(group.wanted > 0)) return
    const cells = new Map<number, number>()
    for (let i = field.groupStart[g]!; i < field.groupStart[g + 1]!; i += 1) {
      const key = side > 0 ? Math.floor(field.x[i]! / side) * 2e6 + Math.floor(field.y[i]! / side) : i
      let cell = cells.get(key)
      if (cell === undefined) {
        cell = wanted.length
        cells.set(key, cell)
        grounds.push(g)
        wanted.push(0)
        base.push(0)
      }
      ofPoint[i] = cell
      wanted[cell]! += group.wanted
      base[cell]! += Math.min(group.wanted, kept.supplied[i]!)
    }
  })
  return {
    ground: Uint32Array.from(grounds),
    wanted: Float64Array.from(wanted),
    base: Float64Array.from(base),
    ofPoint,
  }
}

/** A place that a station of the kind `unit` (one female) may stand at. */
export type Site = { readonly x: number; readonly y: number; readonly unit: StationInput }

/** Service of every site to every cell in its range (section 6 of the model), independent of all other stations. */
export function serviceMatrix(ground: SeasonGround, cells: Cells, sites: readonly Site[]): ServiceMatrix {
  const { field, demand, coverage } = ground
  const { grounds, blooms } = demand
  const decays = new Float64Array(field.x.length)
  const inCell = new Float64Array(cells.wanted.length)
  const firstDay = Math.min(...blooms.map(({ open }) => open.start))
  const days = blooms.length === 0 ? 0 : Math.max(...blooms.map(({ open }) => endOf(open))) - firstDay
  const pull = { start: firstDay, values: new Float64Array(days) }
  const start = new Uint32Array(sites.length + 1)
  const entries = new Entries()
  sites.forEach(({ x, y, unit }, site) => {
    const touched: number[] = []
    pull.values.fill(unit.background)
    grounds.forEach(({ group }, g) => {
      if (group.bloom === null) return
      let sum = 0
      for (let tile = field.groupTile[g]!; tile < field.groupTile[g + 1]!; tile += 1) {
        const standing = tileInDisc(field, tile, x, y, unit.kernel.range)
        if (standing === 0) continue
        sum += decaysOfTile(field, tile, { x, y }, unit.kernel, standing === 1, decays)
        for (let i = field.tileStart[tile]!; i < field.tileStart[tile + 1]!; i += 1) {
          const cell = cells.ofPoint[i]!
          if (cell === noCell || decays[i] === 0) continue
          if (inCell[cell] === 0) touched.push(cell)
          inCell[cell]! += decays[i]!
        }
      }
      if (sum === 0) return
      const { open } = blooms[group.bloom]!
      const blossom = group.blossom * sum
      for (let i = 0; i < open.values.length; i += 1)
        pull.values[open.start - firstDay + i]! += blossom * open.values[i]!
    })
    const perBloom = blooms.map((_, bloom) => coverage.serviceOf(unit, bloom, unit.flight, pull))
    for (const cell of touched) {
      const { group } = grounds[cells.ground[cell]!]!
      const service = inCell[cell]! * group.blossom * perBloom[group.bloom!]!
      if (service > 0) entries.push(cell, service)
      inCell[cell] = 0
    }
    start[site + 1] = entries.length
  })
  return { start, point: entries.points(), service: entries.services() }
}

/** Pairs of a point and its service, as many as come, without an object for each. */
class Entries {
  length = 0
  #points = new Uint32Array(1024)
  #services = new Float64Array(1024)

  push(point: number, service: number): void {
    if (this.length === this.#points.length) {
      const points = new Uint32Array(2 * this.length)
      const services = new Float64Array(2 * this.length)
      points.set(this.#points)
      services.set(this.#services)
      this.#points = points
      this.#services = services
    }
    this.#points[this.length] = point
    this.#services[this.length] = service
    this.length += 1
  }

  points(): Uint32Array {
    return this.#points.slice(0, this.length)
  }

  services(): Float64Array {
    return this.#services.slice(0, this.length)
  }
}
