import { valueOn } from '../time/curve'
import type { Coverage } from './coverage'
import { decaysOfTile, tileInDisc } from './field'

/**
 * Service that every point receives on one day, in the field's order: the day's term of its sum E, before the sum
 * (section 6 of the model). All days together give E. Blue orchard bee females.
 */
export function serviceOfDay(coverage: Coverage, day: number): Float64Array {
  const { field, groups, blooms, stations } = coverage
  const service = new Float64Array(field.x.length)
  const decays = new Float64Array(field.x.length)
  const open = groups.map(({ bloom, isForage }) => !isForage && bloom !== null && valueOn(blooms[bloom]!.open, day) > 0)
  stations.forEach((station, index) => {
    if (!(station.females > 0)) return
    const pull = coverage.pullOf(index)
    groups.forEach(({ bloom, blossom }, group) => {
      if (!open[group] || coverage.decaysOf(index, group) === 0) return
      const perDecay = blossom * coverage.serviceOn(day, station, bloom!, pull)
      if (perDecay === 0) return
      for (let tile = field.groupTile[group]!; tile < field.groupTile[group + 1]!; tile += 1) {
        const place = tileInDisc(field, tile, station.x, station.y, station.kernel.range)
        if (place === 0) continue
        decaysOfTile(field, tile, station, station.kernel, place === 1, decays)
        const end = field.tileStart[tile + 1]!
        for (let i = field.tileStart[tile]!; i < end; i += 1) service[i]! += decays[i]! * perDecay
      }
    })
  })
  return service
}

/**
 * Shares of a station's work that go to each group's blossom on one day, in the groups' order; what lacks to 1 goes to
 * blossom that nobody drew. null where nothing in range is open, drawn or not.
 */
export function workOfDay(coverage: Coverage, index: number, day: number): readonly number[] | null {
  const { groups, blooms, stations } = coverage
  // Outside the days of all blooms nothing drawn is open.
  const drawn = groups.map(({ bloom, blossom }, group) =>
    bloom === null ? 0 : blossom * coverage.decaysOf(index, group) * valueOn(blooms[bloom]!.open, day),
  )
  const pull = stations[index]!.background + drawn.reduce((sum, each) => sum + each, 0)
  return pull > 0 ? drawn.map(each => each / pull) : null
}
