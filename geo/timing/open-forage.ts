import type { Coverage } from '../coverage/coverage'
import { tileInDisc } from '../coverage/field'
import type { BeeSettings } from '../data/settings'
import { type DailyCurve, valueOn } from '../time/curve'
import type { TimingGround } from './timing-ground'

/** First bloom (BBCH 61) is a tenth of the flowers open: less is no blossom to live on. A hair under, for rounding. */
const openEnough = 0.1 - 1e-9

/** Whether a bloom has a tenth of its flowers open. */
export function isOpenOn(open: DailyCurve, day: number): boolean {
  return valueOn(open, day) >= openEnough
}

/** A ground with blossom near a station: its index, and its blossom weighed by distance decay. */
export type NearBlossom = { readonly ground: number; readonly bloom: number; readonly blossom: number }

/** Grounds with blossom on known days within `reach` metres of a place. */
export function groundsWithin(
  { demand, field }: Pick<TimingGround, 'demand' | 'field'>,
  place: { readonly x: number; readonly y: number },
  reach: number,
): readonly number[] {
  const isNear = (ground: number): boolean => {
    for (let tile = field.groupTile[ground]!; tile < field.groupTile[ground + 1]!; tile += 1) {
      const standing = tileInDisc(field, tile, place.x, place.y, reach)
      if (standing === 2) return true
      if (standing === 0) continue
      for (let i = field.tileStart[tile]!; i < field.tileStart[tile + 1]!; i += 1) {
        if (Math.hypot(field.x[i]! - place.x, field.y[i]! - place.y) <= reach) return true
      }
    }
    return false
  }
  return [...demand.grounds.keys()].filter(index => {
    const { bloom, blossom } = demand.grounds[index]!.group
    return bloom !== null && blossom > 0 && isNear(index)
  })
}

/** The blossom within `reach` metres of station `index` of a coverage. */
export function nearBlossom(
  ground: TimingGround,
  coverage: Coverage,
  index: number,
  place: { readonly x: number; readonly y: number },
  reach: number,
): readonly NearBlossom[] {
  return groundsWithin(ground, place, reach).map(near => {
    const { bloom, blossom } = ground.demand.grounds[near]!.group
    return { ground: near, bloom: bloom!, blossom: blossom * coverage.decaysOf(index, near) }
  })
}

/** The days on which the first females of a batch set out on `day` begin to nest: the first sixth of them up to their mean. */
function firstNestingDays(day: number, { lag, spreadDays }: BeeSettings): readonly [from: number, to: number] {
  return [day + Math.max(0, Math.floor(lag - spreadDays)), day + Math.floor(lag)]
}

/** Whether some blossom near the station is open on every first nesting day of a batch set out on `day`. */
export function isFedOn(
  { demand }: TimingGround,
  near: readonly Pick<NearBlossom, 'bloom'>[],
  day: number,
  bee: BeeSettings,
): boolean {
  const blooms = [...new Set(near.map(({ bloom }) => bloom))]
  const [from, to] = firstNestingDays(day, bee)
  for (let t = from; t <= to; t += 1) {
    if (!blooms.some(bloom => isOpenOn(demand.blooms[bloom]!.open, t))) return false
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
