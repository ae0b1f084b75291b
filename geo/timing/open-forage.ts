import type { Coverage } from '../coverage/coverage'
import { tileInDisc } from '../coverage/field'
import type { BeeSettings } from '../data/settings'
import { valueOn } from '../time/curve'
import type { TimingGround } from './timing-ground'

/** First bloom (BBCH 61) is a tenth of the flowers open: less is no blossom to live on. A hair under, for rounding. */
const openEnough = 0.1 - 1e-9

/** A ground with blossom near a station: its index, and its blossom weighed by distance decay. */
export type NearBlossom = { readonly ground: number; readonly bloom: number; readonly blossom: number }

/** The blossom within `reach` metres of station `index` of a coverage. */
export function nearBlossom(
  { demand, field }: TimingGround,
  coverage: Coverage,
  index: number,
  place: { readonly x: number; readonly y: number },
  reach: number,
): readonly NearBlossom[] {
  return demand.grounds.flatMap(({ group }, ground): NearBlossom[] => {
    const blossom = group.blossom * coverage.decaysOf(index, ground)
    if (group.bloom === null || !(blossom > 0)) return []
    for (let tile = field.groupTile[ground]!; tile < field.groupTile[ground + 1]!; tile += 1) {
      const standing = tileInDisc(field, tile, place.x, place.y, reach)
      if (standing === 0) continue
      for (let i = field.tileStart[tile]!; i < field.tileStart[tile + 1]!; i += 1) {
        if (standing === 2 || Math.hypot(field.x[i]! - place.x, field.y[i]! - place.y) <= reach) {
          return [{ ground, bloom: group.bloom, blossom }]
        }
      }
    }
    return []
  })
}

/** The days on which the first females of a batch set out on `day` begin to nest: the first sixth of them up to their mean. */
export function firstNestingDays(day: number, { lag, spreadDays }: BeeSettings): readonly [from: number, to: number] {
  return [day + Math.max(0, Math.floor(lag - spreadDays)), day + Math.floor(lag)]
}

/** Whether some blossom near the station is open on every first nesting day of a batch set out on `day`. */
export function isFedOn(
  { demand }: TimingGround,
  near: readonly NearBlossom[],
  day: number,
  bee: BeeSettings,
): boolean {
  const blooms = [...new Set(near.map(({ bloom }) => bloom))]
  const [from, to] = firstNestingDays(day, bee)
  for (let t = from; t <= to; t += 1) {
    if (!blooms.some(bloom => valueOn(demand.blooms[bloom]!.open, t) >= openEnough)) return false
  }
  return true
}

/** Open blossom of each near ground over the first nesting days of a batch, added to `sums` by ground. */
export function addOpenBlossom(
  { demand }: TimingGround,
  near: readonly NearBlossom[],
  day: number,
  bee: BeeSettings,
  sums: Map<number, number>,
): void {
  const [from, to] = firstNestingDays(day, bee)
  for (const { ground, bloom, blossom } of near) {
    let open = 0
    for (let t = from; t <= to; t += 1) open += valueOn(demand.blooms[bloom]!.open, t)
    if (open > 0) sums.set(ground, (sums.get(ground) ?? 0) + blossom * open)
  }
}
