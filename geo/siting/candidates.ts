import { sitingDefaults } from '../data/siting-figures'
import { type Feature, nameOf, type Station } from '../plan/plan'
import type { LngLat, Metres } from '../space/plane'
import { bearing, distance, isInside } from '../space/shape'
import { keptPosition, type SeasonGround } from '../stocking/season-ground'
import { Nearby } from './near'
import { isInLane, type Planted, plantedOn } from './orchard-rows'
import {
  alongBoundary,
  alongWindbreak,
  clearance,
  gridOver,
  nearestLine,
  type Place,
  type PlaceSource,
  rowEnds,
  rowGaps,
} from './places'

/** What speaks for or against living at a place. */
export type PlaceNotes = {
  /** Metres to the nearest mud that is drawn; null where none is. */
  readonly mud: number | null
  /** The nearest hedge or other shelter within 20 m; null in the open. `morning`: on its eastern or southern side. */
  readonly shelter: { readonly name: string; readonly distance: number; readonly side: 'morning' | 'evening' } | null
  /** In a lane between rows, which tractors use. */
  readonly isInLane: boolean
}

/** A place where a station may stand. */
export type CandidateSite = Metres & {
  readonly id: string
  readonly at: LngLat
  readonly source: PlaceSource
  readonly notes: PlaceNotes
}

export type CandidateOptions = {
  /** Metres to keep from stations that stay, and between new ones. */
  readonly spacing?: number
  /** Metres round the plantings that count as the grower's ground where no boundary is drawn. */
  readonly margin?: number
  /** At most so many places. */
  readonly most?: number
  /** 2 doubles the number of places on the same ground: to see what thinning costs. */
  readonly density?: number
  /** Also in the middle of lanes that tractors use. */
  readonly withLanes?: boolean
  /** Only places with mud this near, m. */
  readonly mudWithin?: number
  /** Only places with shelter within 20 m. */
  readonly isSheltered?: boolean
}

export const defaultSpacing = sitingDefaults.stationSpacing
const defaultMargin = 15
const defaultMost = 300
/** Fewer places than this leave too little choice: they are then thinned less. */
const fewest = 120
/** Places nearer to each other than this are one, m. */
export const leastPitch = 1.5
/** Places farther from every plant than this serve next to nothing, m. */
const farthest = 60
const shelterReach = 20

type Standing = Pick<Station, 'id' | 'geometry'>

/** Places where stations may stand, and the distance they were thinned to (0: the grower's own, not thinned). */
export type Candidates = {
  readonly sites: readonly CandidateSite[]
  readonly pitch: number
  /** Where a station stands, with its notes, whether a new one would be allowed there or not. */
  standing(station: Standing): CandidateSite
  /** Whether a station that stands unused may be used: far enough from those that stay, and as the grower wishes. */
  isUsable(station: Standing): boolean
  /** Finer places within `radius` of some that were chosen, `step` apart, without those that were given before. */
  around(chosen: readonly Metres[], radius: number, step: number): readonly CandidateSite[]
}

/**
 * The grower's own candidate points if there are any, else places made from the plan: row ends, along shelter and the
 * inner side of the boundary, between plants in rows, open ground elsewhere. None lies outside the ground, in an area
 * where no station may stand, on plants, or nearer than a spacing to `stays`.
 */
export function candidatesOf(
  ground: SeasonGround,
  stays: readonly Metres[],
  options: CandidateOptions = {},
): Candidates {
  const { spacing = defaultSpacing } = options
  const rules = new Rules(ground, options)
  const standing = new Nearby(Math.max(spacing, 1), stays)
  const isFree = (place: Metres) => !(spacing > 0 && standing.has(place, spacing)) && !rules.isKeptOut(place)
  const at = ({ geometry }: Standing): Place => ({ ...placeOf(ground, geometry.coordinates), source: 'station' })
  const standingOn = (station: Standing): CandidateSite => ({
    ...rules.site(at(station), station.id),
    // What the file has, not what comes back from the plane.
    at: keptPosition(station.geometry.coordinates),
  })
  const isUsable = (station: Standing) => isFree(at(station)) && rules.fits(at(station))
  const ofStations = { standing: standingOn, isUsable }
  const own = ground.plan.features.filter(({ properties }) => properties.kind === 'candidate')
  if (own.length > 0) {
    const sites = own
      .map(({ id, geometry }) => ({ place: placeOf(ground, geometry.coordinates as LngLat), id }))
      .filter(({ place }) => isFree(place) && rules.fits(place))
      .map(({ place, id }) => rules.site(place, id))
    return { sites, pitch: 0, ...ofStations, around: () => [] }
  }
  const allowed = rules.places().filter(place => isFree(place) && rules.isAllowed(place) && rules.fits(place))
  const { places, pitch } = thinnedTo(allowed, {
    fewest: fewest * (options.density ?? 1),
    most: (options.most ?? defaultMost) * (options.density ?? 1),
    // Neighbours a spacing apart may both be chosen.
    pitch: Math.max(16, spacing) / Math.sqrt(options.density ?? 1),
  })
  const numbers = new Map(allowed.map((place, i) => [place, i + 1]))
  const taken = new Set(places)
  const siteOf = (place: Place) => rules.site(place, `place-${numbers.get(place)}`)
  return {
    sites: places.map(siteOf),
    pitch,
    ...ofStations,
    around: (chosen, radius, step) => {
      const near = new Nearby(radius, chosen)
      const finer = thinned(
        allowed.filter(place => !taken.has(place) && near.has(place, radius)),
        step,
      )
      for (const place of finer) taken.add(place)
      return finer.map(siteOf)
    },
  }
}

function placeOf({ plane }: SeasonGround, at: LngLat): Place {
  return { ...plane.toMetres(at), source: 'own' }
}

/** Places thinned until there are neither too few nor too many. */
function thinnedTo(allowed: readonly Place[], wish: { fewest: number; most: number; pitch: number }) {
  const { fewest: least, most } = wish
  let { pitch } = wish
  let places = thinned(allowed, pitch)
  while (places.length < least && pitch > leastPitch && places.length < allowed.length) {
    pitch /= Math.SQRT2
    places = thinned(allowed, pitch)
  }
  while (places.length > most) {
    pitch *= 1.1
    places = thinned(allowed, pitch)
  }
  return { places, pitch }
}

/** Takes places in their order, leaving out those nearer than `pitch` to one taken before. */
export function thinned<T extends Metres>(places: readonly T[], pitch: number): T[] {
  const taken = new Nearby(pitch)
  return places.filter(place => {
    if (taken.has(place, pitch)) return false
    taken.add(place)
    return true
  })
}

/** The rules of one plan's ground. */
class Rules {
  readonly #ground: SeasonGround
  readonly #planted: Planted
  readonly #options: CandidateOptions
  readonly #margin: number
  readonly #boundaries: readonly (readonly (readonly Metres[])[])[]
  readonly #keepouts: readonly (readonly (readonly Metres[])[])[]
  readonly #windbreaks: readonly { readonly name: string; readonly line: readonly Metres[] }[]
  readonly #mud: readonly Metres[]
  readonly #plants: Nearby
  readonly #around: Nearby

  constructor(ground: SeasonGround, options: CandidateOptions) {
    const { margin = defaultMargin } = options
    this.#options = options
    const { plan, plane, demand, plantings } = ground
    const ringsOf = (kind: Feature['properties']['kind']) =>
      plan.features.flatMap(({ properties, geometry }) =>
        properties.kind === kind && geometry.type === 'Polygon'
          ? [geometry.coordinates.map(ring => ring.map(plane.toMetres))]
          : [],
      )
    this.#ground = ground
    this.#margin = margin
    this.#planted = plantedOn(ground)
    this.#boundaries = ringsOf('boundary')
    this.#keepouts = ringsOf('keepout')
    this.#windbreaks = plan.features.flatMap(feature =>
      feature.properties.kind === 'windbreak'
        ? [{ name: nameOf(feature), line: (feature.geometry.coordinates as readonly LngLat[]).map(plane.toMetres) }]
        : [],
    )
    this.#mud = plan.features.flatMap(({ properties, geometry }) =>
      properties.kind === 'mud' ? [plane.toMetres(geometry.coordinates as LngLat)] : [],
    )
    this.#plants = new Nearby(clearance, this.#planted.plants)
    const points = demand.grounds.slice(0, plantings).flatMap(({ points: each }) =>
      // One in some is enough to know what is far from all.
      Array.from({ length: Math.ceil(each.length / 2) }, (_, i) => ({ x: each[2 * i]!, y: each[2 * i + 1]! })),
    )
    const reach = this.#boundaries.length > 0 ? farthest : margin
    this.#around = new Nearby(Math.max(reach, 1), thinned(points, Math.max(reach / 5, 0.1)))
  }

  /** Places by rank: where two are near each other, the earlier is taken. */
  places(): Place[] {
    const bedCorners = this.#planted.beds.flatMap(rings => rings[0] ?? [])
    return [
      ...rowEnds(this.#planted),
      ...this.#windbreaks.flatMap(({ line }) => alongWindbreak(line)),
      ...this.#boundaries.flatMap(rings => (rings[0] === undefined ? [] : alongBoundary(rings[0]))),
      ...rowGaps(this.#planted),
      ...gridOver([...this.#planted.plants, ...bedCorners], this.#boundaries.length > 0 ? farthest : this.#margin),
    ]
  }

  isKeptOut(place: Metres): boolean {
    return this.#keepouts.some(rings => isInside(rings, place))
  }

  isAllowed(place: Metres): boolean {
    const near = this.#boundaries.length > 0 ? farthest : this.#margin
    return (
      this.#around.has(place, near) &&
      (this.#boundaries.length === 0 || this.#boundaries.some(rings => isInside(rings, place))) &&
      !this.#plants.has(place, clearance) &&
      !this.#planted.beds.some(rings => isInside(rings, place))
    )
  }

  /** Whether a place meets the grower's wishes. */
  fits(place: Place): boolean {
    const { withLanes, mudWithin, isSheltered } = this.#options
    if (mudWithin !== undefined && !((this.#mudFrom(place) ?? mudWithin + 1) <= mudWithin)) return false
    if (isSheltered === true && this.#shelterOf(place) === null) return false
    return withLanes === true || place.source === 'own' || place.source === 'station' || !isInLane(this.#planted, place)
  }

  site(place: Place, id: string): CandidateSite {
    // The place that a file keeps, not the one it was made from: what is told is then what is saved.
    const at = keptPosition(this.#ground.plane.toLngLat(place))
    const { x, y } = this.#ground.plane.toMetres(at)
    return { id, at, x, y, source: place.source, notes: this.#notes(place) }
  }

  #notes(place: Metres): PlaceNotes {
    return { mud: this.#mudFrom(place), shelter: this.#shelterOf(place), isInLane: isInLane(this.#planted, place) }
  }

  #mudFrom(place: Metres): number | null {
    return this.#mud.length === 0 ? null : Math.min(...this.#mud.map(each => distance(each, place)))
  }

  #shelterOf(place: Metres): PlaceNotes['shelter'] {
    const near = nearestLine(this.#windbreaks, place)
    if (near === null || near.distance > shelterReach) return null
    // The sun of the morning comes from the east to the south: shelter should stand on the other side.
    const side = isMorning(bearing(near.at, place)) ? 'morning' : 'evening'
    return { name: near.of.name, distance: near.distance, side }
  }
}

function isMorning(degrees: number): boolean {
  return degrees >= 45 && degrees <= 225
}
