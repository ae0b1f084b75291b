import { bbox, booleanPointInPolygon, buffer, distance, featureCollection, point, union } from '@turf/turf'
import KDBush from 'kdbush'
import { planeAt } from '#geo/space/plane'
import { endOf } from '#geo/time/curve'
import type { Instance } from './instance'

/** One plain sum of x, y and service over the runs that a full recompute reads: the least that any way must do. */
export function plainSum(instance: Instance, supplied: Float64Array): number {
  const { field, stations } = instance
  let a = 0
  let b = 0
  let c = 0
  let d = 0
  const { x, y, tileStart, tileBox } = field
  const tiles = tileStart.length - 1
  for (const { x: px, y: py, kernel } of stations) {
    const limit = kernel.range * kernel.range
    for (let tile = 0; tile < tiles; tile += 1) {
      const dx = Math.max(tileBox[4 * tile]! - px, px - tileBox[4 * tile + 1]!, 0)
      const dy = Math.max(tileBox[4 * tile + 2]! - py, py - tileBox[4 * tile + 3]!, 0)
      if (dx * dx + dy * dy > limit) continue
      const to = tileStart[tile + 1]!
      let i = tileStart[tile]!
      for (; i + 3 < to; i += 4) {
        a += x[i]! + y[i]! + supplied[i]!
        b += x[i + 1]! + y[i + 1]! + supplied[i + 1]!
        c += x[i + 2]! + y[i + 2]! + supplied[i + 2]!
        d += x[i + 3]! + y[i + 3]! + supplied[i + 3]!
      }
      for (; i < to; i += 1) a += x[i]! + y[i]! + supplied[i]!
    }
  }
  return a + b + c + d
}

/** What a careful builder writes: a static index, typed arrays, neighbour lists kept for the second pass. */
export function carefulIndex(instance: Instance): Float64Array {
  const { field, groups, blooms, stations } = instance
  const count = field.x.length
  const index = new KDBush(count)
  const groupOf = new Uint8Array(count)
  for (let g = 0; g < groups.length; g += 1) groupOf.fill(g, field.groupStart[g]!, field.groupStart[g + 1]!)
  for (let i = 0; i < count; i += 1) index.add(field.x[i]!, field.y[i]!)
  index.finish()
  const supplied = new Float64Array(count)
  for (const station of stations) {
    const near = index.within(station.x, station.y, station.kernel.range)
    const decays = new Float64Array(near.length)
    const sums = new Float64Array(groups.length)
    for (let n = 0; n < near.length; n += 1) {
      const i = near[n]!
      const dx = field.x[i]! - station.x
      const dy = field.y[i]! - station.y
      decays[n] = Math.exp(-Math.sqrt(dx * dx + dy * dy) / station.kernel.alpha)
      sums[groupOf[i]!]! += decays[n]!
    }
    const from = Math.min(...blooms.map(({ open }) => open.start))
    const pull = new Float64Array(Math.max(...blooms.map(({ open }) => endOf(open))) - from).fill(station.background)
    blooms.forEach(({ open }, b) => {
      open.values.forEach((value, day) => {
        pull[open.start + day - from]! += groups[b]!.blossom * sums[b]! * value
      })
    })
    const service = blooms.map(({ open, weight }, b) => {
      let sum = 0
      open.values.forEach((value, day) => {
        const t = open.start + day
        sum += (station.flight.values[t - station.flight.start]! * value * weight.values[day]!) / pull[t - from]!
      })
      return (station.effectiveness * groups[b]!.blossom * sum) / (station.best[b]!.overlap * 0.85)
    })
    for (let n = 0; n < near.length; n += 1) supplied[near[n]!]! += decays[n]! * service[groupOf[near[n]!]!]!
  }
  return supplied
}

type OnEarth = { readonly plants: [number, number][]; readonly stations: [number, number][] }

/** The instance in degrees, as the libraries for maps want it. */
export function onEarth(instance: Instance): OnEarth {
  const plane = planeAt([0, 50])
  const { field, stations, side } = instance
  const at = (x: number, y: number): [number, number] => {
    const [lng, lat] = plane.toLngLat({ x: x - side / 2, y: y - side / 2 })
    return [lng, lat]
  }
  return {
    plants: Array.from(field.x, (x, i) => at(x, field.y[i]!)),
    stations: stations.map(({ x, y }) => at(x, y)),
  }
}

/** Distance by turf over all pairs, nothing else; how many pairs lie in range. */
export function turfDistances({ plants, stations }: OnEarth, range: number): number {
  let near = 0
  for (const station of stations) {
    for (const plant of plants) {
      if (distance(station, plant, { units: 'meters' }) <= range) near += 1
    }
  }
  return near
}

/** Reach alone by turf: discs round the stations, their union, and every plant asked whether it lies inside. */
export function turfReach({ plants, stations }: OnEarth, radius: number): number {
  const discs = stations.map(station => buffer(point(station), radius, { units: 'meters', steps: 16 })!)
  const area = discs.length > 1 ? union(featureCollection(discs)) : discs[0]!
  if (area === null || area === undefined) throw new Error('the union of the discs is empty')
  const [west, south, east, north] = bbox(area)
  let reached = 0
  for (const plant of plants) {
    const [lng, lat] = plant
    if (lng < west || lng > east || lat < south || lat > north) continue
    if (booleanPointInPolygon(plant, area)) reached += 1
  }
  return reached
}
