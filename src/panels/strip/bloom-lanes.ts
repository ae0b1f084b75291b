import { endOf, valueOn } from '#geo/time/curve'
import { letterWidth, shortened } from '../../parts/chart'
import type { BloomBand } from '../season-bands'
import { doubtCurve } from './season-days'
import { type Frost, isFrostOf } from './season-frost'
import type { Stretch } from './stretch'

/** Blooms that follow each other on one line, each with its name beside its hill; or, with a label, many over each other. */
export type BloomLane = {
  readonly kind: 'lane'
  readonly id: string
  readonly label: string | null
  readonly blooms: readonly LaneBloom[]
}
/** `isNameBefore`: the name stands left of the hill, not right of it. */
export type LaneBloom = { readonly band: BloomBand; readonly isNameBefore: boolean }

/** Between hill and name, and between neighbours, px. */
export const laneGap = 4

type Room = {
  /** Days that the whole strip shows. */
  readonly whole: Stretch
  /** How wide these days are drawn, and how much is free left of them, px. */
  readonly plot: number
  readonly labelWidth: number
}

/**
 * Blooms in few lines that hold them side by side, names, doubt and nights of frost included. Each goes into the first
 * line that is free there, its name on the side that is free; of two orders, by date and longest names first, the one
 * that takes fewer lines.
 */
export function bloomLanes(blooms: readonly BloomBand[], frosts: readonly Frost[], room: Room): readonly BloomLane[] {
  const byDate = filledLanes(blooms, frosts, room)
  const byName = filledLanes(
    [...blooms].sort((a, b) => b.label.length - a.label.length),
    frosts,
    room,
  )
  return byName.length < byDate.length ? byName : byDate
}

function filledLanes(
  blooms: readonly BloomBand[],
  frosts: readonly Frost[],
  { whole, plot, labelWidth }: Room,
): readonly BloomLane[] {
  const perDay = plot / Math.max(1, whole.to - whole.from)
  const first = whole.from - labelWidth / perDay
  const lanes: { blooms: LaneBloom[]; taken: Stretch[] }[] = []
  for (const band of blooms) {
    const hill = reachOf(band, frosts)
    const name = (shortened(band.label, labelWidth).length * letterWidth + 2 * laneGap) / perDay
    const spaces = [
      { from: hill.from - name, to: hill.to, isNameBefore: true },
      { from: hill.from, to: hill.to + name, isNameBefore: false },
    ].filter(({ from, to }) => from >= first && to <= whole.to)
    // On a strip too narrow for either, left is where most of a name is seen.
    const wanted = spaces.length > 0 ? spaces : [{ ...hill, isNameBefore: true }]
    const free = lanes.flatMap(lane =>
      wanted.filter(space => isFree(space, lane.taken)).map(space => ({ lane, space })),
    )
    const { lane, space } = free[0] ?? { lane: { blooms: [], taken: [] }, space: wanted[0]! }
    if (free.length === 0) lanes.push(lane)
    lane.blooms.push({ band, isNameBefore: space.isNameBefore })
    lane.taken.push(space)
  }
  // Earliest bloom on top, whatever the order in which they were put in.
  const start = ({ band }: LaneBloom) => band.curve.start
  return lanes
    .map(({ blooms: inLane }) => inLane.sort((a, b) => start(a) - start(b)))
    .sort(([a], [b]) => start(a!) - start(b!))
    .map(inLane => ({ kind: 'lane', id: inLane[0]!.band.id, label: null, blooms: inLane }))
}

/** No more than `most` lines: those that hold most blooms, and below them one with all the others' hills and no names. */
export function fewLanes(lanes: readonly BloomLane[], most: number): readonly BloomLane[] {
  if (lanes.length <= most) return lanes
  const bySize = [...lanes].sort((a, b) => b.blooms.length - a.blooms.length)
  const kept = new Set(bySize.slice(0, most - 1))
  const others = lanes.filter(lane => !kept.has(lane)).flatMap(({ blooms }) => blooms)
  const last = { kind: 'lane' as const, id: 'others', label: `${others.length} more`, blooms: others }
  return [...lanes.filter(lane => kept.has(lane)), last]
}

function isFree(space: Stretch, taken: readonly Stretch[]): boolean {
  return taken.every(each => space.to <= each.from || each.to <= space.from)
}

/** Blooms of one crop as one: on every day as far open as the one that is most. */
export function bloomsByCrop(blooms: readonly BloomBand[]): readonly BloomBand[] {
  const crops = new Map<string, BloomBand[]>()
  for (const band of blooms) {
    const key = band.crop ?? band.id
    crops.set(key, [...(crops.get(key) ?? []), band])
  }
  return [...crops].map(([crop, bands]) => (bands.length === 1 ? bands[0]! : together(crop, bands)))
}

function together(crop: string, bands: readonly BloomBand[]): BloomBand {
  const [first] = bands
  const start = Math.min(...bands.map(({ curve }) => curve.start))
  const end = Math.max(...bands.map(({ curve }) => endOf(curve)))
  const values = Float64Array.from({ length: end - start }, (_, i) =>
    Math.max(...bands.map(({ curve }) => valueOn(curve, start + i))),
  )
  const name = bands.find(({ id }) => id === crop)?.label ?? first!.label
  const label = `${name} + ${bands.length - 1}`
  return { ...first!, id: crop, label, doubt: null, curve: { start, values } }
}

/** Days that a bloom's hill, its doubt and the wedges of its frosts take up. */
export function reachOf(band: BloomBand, frosts: readonly Frost[]): Stretch {
  const curve = doubtCurve(band) ?? band.curve
  const nights = frosts.filter(frost => isFrostOf(frost, band.id)).map(({ day }) => day)
  return {
    from: Math.min(curve.start - 1, ...nights.map(day => day - 1)),
    to: Math.max(endOf(curve), ...nights.map(day => day + 1)),
  }
}
