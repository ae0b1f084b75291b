import type {
  Bloom,
  Boundary,
  LineGeometry,
  Opening,
  PointGeometry,
  PolygonGeometry,
  Release,
  StationRecord,
  Visit,
} from '#geo/plan/plan'
import { type LngLat, planeAt } from '#geo/space/plane'
import type { IsoDate } from '#geo/time/day'

/** Draws in metres east and north of a site's south-west corner; the site's middle lies on the anchor. */
export type Frame = {
  at(x: number, y: number): LngLat
  point(x: number, y: number): PointGeometry
  line(...corners: readonly (readonly [x: number, y: number])[]): LineGeometry
  /** An upright rectangle, counter-clockwise from its south-west corner. */
  box(west: number, south: number, east: number, north: number): PolygonGeometry
}

/** Decimals of a degree that plan files carry. */
const decimals = 9

export function frameAt(anchor: LngLat, width: number, depth: number): Frame {
  const plane = planeAt(anchor)
  const at = (x: number, y: number): LngLat => {
    const [lng, lat] = plane.toLngLat({ x: x - width / 2, y: y - depth / 2 })
    return [Number(lng.toFixed(decimals)), Number(lat.toFixed(decimals))]
  }
  return {
    at,
    point: (x, y) => ({ type: 'Point', coordinates: at(x, y) }),
    line: (...corners) => ({ type: 'LineString', coordinates: corners.map(([x, y]) => at(x, y)) }),
    box: (west, south, east, north) => ({
      type: 'Polygon',
      coordinates: [[at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]],
    }),
  }
}

export function boundary(id: string, name: string, geometry: PolygonGeometry): Boundary {
  return { type: 'Feature', id, geometry, properties: { kind: 'boundary', name } }
}

export function bloom(first: IsoDate, full: IsoDate, end: IsoDate): Bloom {
  return { first, full, end }
}

/** `total` whole things in proportion to `weights`; what is left over goes to the largest remainders, earlier first. */
export function shareOut(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((all, weight) => all + weight, 0)
  const exact = weights.map(weight => (total * weight) / sum)
  const whole = exact.map(Math.floor)
  const left = total - whole.reduce((all, count) => all + count, 0)
  const byRemainder = exact
    .map((share, i) => ({ i, remainder: share - whole[i]! }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i)
  for (const { i } of byRemainder.slice(0, left)) whole[i]! += 1
  return whole
}

/** A batch of cocoons: how many in all, how many of them females, and each station's weight. */
export type Batch = {
  readonly date: IsoDate
  readonly cocoons: number
  readonly females: number
  readonly weights: Readonly<Record<string, number>>
  readonly lot?: string
}

/** Releases by station: the females and the males of every batch shared out by the weights. */
export function releasesOf(batches: readonly Batch[]): Record<string, Release[]> {
  const releases: Record<string, Release[]> = {}
  for (const { date, cocoons, females, weights, lot } of batches) {
    const ids = Object.keys(weights)
    const femaleShares = shareOut(females, Object.values(weights))
    const maleShares = shareOut(cocoons - females, Object.values(weights))
    ids.forEach((id, i) => {
      const release = { date, females: femaleShares[i]!, males: maleShares[i]!, ...(lot === undefined ? {} : { lot }) }
      releases[id] = [...(releases[id] ?? []), release]
    })
  }
  return releases
}

/** What was counted over a whole site when its nests were opened. */
export type SiteOpening = {
  readonly date: IsoDate
  readonly cells: number
  readonly females: number
  readonly males: number
  readonly losses: {
    readonly mite: number
    readonly fly: number
    readonly wasp: number
    readonly mould: number
    readonly other: number
  }
}

/** Records by station: its visits, and its part of the site's opening in proportion to the tubes it had capped. */
export function recordsOf(
  visits: Readonly<Record<string, readonly Visit[]>>,
  opening: SiteOpening,
): Record<string, StationRecord> {
  const ids = Object.keys(visits)
  const capped = ids.map(id => visits[id]!.findLast(visit => visit.capped != null)?.capped ?? 0)
  const parts = { females: opening.females, males: opening.males, ...opening.losses }
  const counted = Object.values(parts).reduce((sum, part) => sum + part, 0)
  if (counted !== opening.cells) throw new RangeError(`${counted} cells accounted for, ${opening.cells} opened`)
  const shares = Object.fromEntries(Object.entries(parts).map(([name, total]) => [name, shareOut(total, capped)]))
  return Object.fromEntries(
    ids.map((id, i) => {
      const of = (name: string): number => shares[name]![i]!
      const losses = Object.fromEntries(Object.keys(opening.losses).map(name => [name, of(name)]))
      const cells = Object.keys(parts).reduce((sum, name) => sum + of(name), 0)
      const opened: Opening = {
        date: opening.date,
        tubesOpened: capped[i]!,
        cells,
        females: of('females'),
        males: of('males'),
        losses,
      }
      return [id, { visits: visits[id]!, opening: opened }]
    }),
  )
}

/** One visit a station, at the end of the flight. */
export function lastVisits(date: IsoDate, capped: Readonly<Record<string, number>>): Record<string, Visit[]> {
  return Object.fromEntries(Object.entries(capped).map(([id, tubes]) => [id, [{ date, capped: tubes }]]))
}
