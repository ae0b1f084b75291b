import { trackDefaults } from '../data/track-figures'
import type { LngLat, Metres } from '../space/plane'
import { localFrame } from '../space/ring'
import { distance } from '../space/shape'
import type { Track } from './track'

const { fastest, leastSpike, pauseRadius, pauseTime } = trackDefaults
/** Without times: a leg is a jump where it is so many times the usual one, so that tracks of corners alone keep theirs. */
const jump = 5
/** Points in a row that may be off before they are taken for the way itself. */
const mostOff = 5
/** Without times: as many points within the circle of a pause, on a way three times as long as it leads. */
const pausePoints = 10
const wandering = 3
/** Legs at either end among which the crossing is looked for where a round was walked past its start. */
const overlap = 30

type Step = { readonly at: LngLat; readonly time: number | null; readonly xy: Metres }

export type CleanOptions = {
  /** The track is the outline of an area: it is closed, and cut off where it crosses its own beginning. */
  readonly isRing?: boolean
}

/** A walked track without pauses and spikes; what is left of it are its own points, untouched. */
export function cleanTrack({ positions, times }: Track, { isRing = false }: CleanOptions = {}): Track {
  const first = positions[0]
  if (first === undefined) return { positions, times }
  const toLocal = localFrame(first)
  const steps = positions.map((at, i): Step => ({ at, time: times[i] ?? null, xy: toLocal(at) }))
  const clean = standing(withoutSpikes(steps)).kept
  const kept = isRing ? closed(clean) : clean
  return { positions: kept.map(({ at }) => at), times: kept.map(({ time }) => time) }
}

/** How many stray points and pauses cleaning takes out of a track. */
export type TrackCut = { readonly strays: number; readonly pauses: number }

/** What cleaning takes out, whatever the track is to be. */
export function trackCut({ positions, times }: Track): TrackCut {
  const first = positions[0]
  if (first === undefined) return { strays: 0, pauses: 0 }
  const toLocal = localFrame(first)
  const steps = positions.map((at, i): Step => ({ at, time: times[i] ?? null, xy: toLocal(at) }))
  const kept = withoutSpikes(steps)
  return { strays: steps.length - kept.length, pauses: standing(kept).pauses }
}

/** Seconds from one point to the other; null where either time is not known. */
function seconds(from: Step, to: Step): number | null {
  return from.time === null || to.time === null ? null : (to.time - from.time) / 1000
}

function withoutSpikes(steps: readonly Step[]): readonly Step[] {
  const legs = steps.slice(1).map((step, i) => distance(steps[i]!.xy, step.xy))
  const usual = legs.toSorted((a, b) => a - b)[Math.floor(legs.length / 2)] ?? 0
  const isJump = (from: Step, to: Step): boolean => {
    const length = distance(from.xy, to.xy)
    const time = seconds(from, to)
    // Within what a fix wanders by, a speed says nothing.
    if (length < pauseRadius) return false
    return time === null ? length > Math.max(leastSpike, jump * usual) : length > fastest * time
  }
  const kept: Step[] = []
  for (let i = 0; i < steps.length; i += 1) {
    const step = steps[i]!
    const before = kept.at(-1)
    if (before === undefined || !isJump(before, step)) {
      kept.push(step)
      continue
    }
    // A jump is a spike where the way goes on soon from where it came; else it is a gap, and the way goes on behind it.
    const after = steps.slice(i + 1, i + 1 + mostOff).findIndex(next => !isJump(before, next))
    if (after >= 0) i += after
    else if (i < steps.length - 1) kept.push(step)
  }
  return kept
}

/** Each pause as its first point, and how many there are. */
function standing(steps: readonly Step[]): { readonly kept: readonly Step[]; readonly pauses: number } {
  const kept: Step[] = []
  let pauses = 0
  for (let i = 0; i < steps.length; ) {
    const start = steps[i]!
    kept.push(start)
    let end = i
    while (end + 1 < steps.length && distance(start.xy, steps[end + 1]!.xy) <= pauseRadius) end += 1
    const isStanding = isPause(steps, i, end)
    if (isStanding) pauses += 1
    i = isStanding ? end + 1 : i + 1
  }
  return { kept, pauses }
}

/** Whether the points from `start` to `end`, all within the circle, are of somebody who stood. */
function isPause(steps: readonly Step[], start: number, end: number): boolean {
  const time = seconds(steps[start]!, steps[end]!)
  if (time !== null) return time >= pauseTime
  if (end - start < pausePoints) return false
  let way = 0
  for (let i = start + 1; i <= end; i += 1) way += distance(steps[i - 1]!.xy, steps[i]!.xy)
  return way > wandering * pauseRadius
}

/** The round closed on its first point; what was walked past its own beginning is cut off. */
function closed(steps: readonly Step[]): readonly Step[] {
  const first = steps[0]
  if (first === undefined || steps.length < 4) return steps
  const { head, tail } = crossing(steps) ?? { head: 0, tail: steps.length - 1 }
  const round = steps.slice(head, tail + 1)
  const start = round[0]!
  const last = round.at(-1)!
  return start.at[0] === last.at[0] && start.at[1] === last.at[1] ? round : [...round, { ...start, time: last.time }]
}

/** The points between which the last legs do not cross the first ones any more; null where they never do. */
function crossing(steps: readonly Step[]): { readonly head: number; readonly tail: number } | null {
  const count = Math.min(overlap, Math.floor(steps.length / 3))
  for (let i = 0; i < count; i += 1) {
    for (let j = steps.length - 2; j >= steps.length - 1 - count && j > i + 1; j -= 1) {
      const [a, b, c, d] = [steps[i]!.xy, steps[i + 1]!.xy, steps[j]!.xy, steps[j + 1]!.xy]
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return { head: i + 1, tail: j }
    }
  }
  return null
}

function side(a: Metres, b: Metres, c: Metres): number {
  return Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x))
}
