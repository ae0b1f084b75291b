import { carrying } from '../space/carry'
import type { LngLat } from '../space/plane'
import type { Edit } from './edits'
import { compose, patched } from './edits'
import { setStationSeason, withCopiedReferences, withoutReferences } from './edits-seasons'
import { memberWords, thing, things } from './edits-wording'
import type { Feature, FeatureKind, Geometry, Plan, Station, StationSeason } from './plan'
import { wholeRows, withTheirPlants } from './whole-rows'

/** How far to move: degrees east and north. */
export type Shift = { readonly lng: number; readonly lat: number }

/** New things, after all others. Their ids must be new to the plan. */
export function addFeatures(features: readonly Feature[]): Edit {
  return {
    label: `Add ${things(features)}`,
    apply(plan) {
      if (features.length === 0) return plan
      const ids = new Set(plan.features.map(feature => feature.id))
      for (const { id } of features) {
        if (ids.has(id)) throw new RangeError(`the plan already has a feature ${id}`)
        ids.add(id)
      }
      const rounded = features.map(feature => withGeometry(feature, roundedGeometry(feature.geometry)))
      return { ...plan, features: [...plan.features, ...wholeRows(plan, rounded)] }
    },
  }
}

/** A new station together with its use in the season `year`. */
export function addStationInUse(station: Station, year: number, use: StationSeason): Edit {
  return compose(`Add ${thing(station)}`, [addFeatures([station]), setStationSeason(year, station.id, use)])
}

/**
 * Takes things off the plan, and their own bloom and their use out of every season. What was recorded of them (records,
 * fruit set) stays: it happened.
 */
export function removeFeatures(ids: readonly string[]): Edit {
  const gone = new Set(ids)
  return {
    label: plan => `Remove ${things(plan.features.filter(({ id }) => gone.has(id)))}`,
    apply(plan) {
      const features = plan.features.filter(({ id }) => !gone.has(id))
      if (features.length === plan.features.length) return plan
      return withoutReferences({ ...plan, features }, gone)
    },
  }
}

/** A new place or shape for one thing; `isRigid` = only turned or carried, so that a row keeps its plants. */
export function setGeometry(
  id: string,
  geometry: Geometry,
  gestureKey?: string,
  { isRigid = false }: { readonly isRigid?: boolean } = {},
): Edit {
  const verb = geometry.type === 'Point' ? 'Move' : 'Reshape'
  return {
    label: plan => `${verb} ${thing(featureOf(plan, id))}`,
    key: gestureKey,
    apply: plan =>
      changeFeature(plan, id, before => {
        const after = withGeometry(before, roundedGeometry(geometry))
        return isRigid ? (withTheirPlants(plan, [before], [after])[0] ?? after) : after
      }),
  }
}

type KeyOf<P> = P extends unknown ? keyof P : never
type ValueOf<P, K> = P extends unknown ? (K extends keyof P ? P[K] : never) : never

/** New values for properties of whatever kind; `undefined` takes one away. The kind of a thing never changes. */
export type PropertiesPatch = {
  readonly [K in Exclude<KeyOf<Feature['properties']>, 'kind'>]?: ValueOf<Feature['properties'], K> | undefined
}

export function setProperties(id: string, patch: PropertiesPatch, key?: string): Edit {
  const names = Object.keys(patch)
  const isRename = names.length === 1 && names[0] === 'name'
  return {
    label: plan => {
      const name = thing(featureOf(plan, id))
      return isRename ? `Rename ${name}` : `Change ${memberWords(names)} of ${name}`
    },
    key,
    apply: plan =>
      changeFeature(plan, id, feature => {
        const properties = patched(feature.properties, patch)
        return properties === feature.properties ? feature : ({ ...feature, properties } as Feature)
      }),
  }
}

/** Moves things together by a step in degrees. */
export function moveFeatures(ids: readonly string[], by: Shift, key?: string): Edit {
  return {
    label: plan => `Move ${things(chosenOf(plan, ids))}`,
    key,
    apply(plan) {
      const chosen = new Set(chosenOf(plan, ids))
      if (chosen.size === 0 || (by.lng === 0 && by.lat === 0)) return plan
      const before = [...chosen]
      const after = withTheirPlants(plan, before, movedTogether(before, by))
      const changed = new Map(before.map((feature, i) => [feature, after[i]!]))
      return { ...plan, features: plan.features.map(feature => changed.get(feature) ?? feature) }
    },
  }
}

/**
 * Copies of things, moved by a step, after all others. A planting's own bloom is copied in every season, a station's use
 * in the seasons from `year` on (only the latest where no year is given); nothing recorded is copied.
 * `newId` is asked once for each thing, in the order of the plan, however often the edit is applied.
 */
export function duplicateFeatures(
  ids: readonly string[],
  newId: (kind: FeatureKind) => string,
  by: Shift,
  year?: number,
): Edit {
  const copyIds = new Map<string, string>()
  const copyOf = (feature: Feature): Feature => {
    const copyId = copyIds.get(feature.id) ?? newId(feature.properties.kind)
    copyIds.set(feature.id, copyId)
    const { name } = feature.properties
    const properties = name ? { ...feature.properties, name: `${name} copy` } : feature.properties
    return { ...feature, id: copyId, properties } as Feature
  }
  return {
    label: plan => `Copy ${things(chosenOf(plan, ids))}`,
    apply(plan) {
      const before = chosenOf(plan, ids)
      const copies = withTheirPlants(plan, before, movedTogether(before, by)).map(copyOf)
      const copied = addFeatures(copies).apply(plan)
      return withCopiedReferences(copied, copyIds, year)
    },
  }
}

function featureOf(plan: Plan, id: string): Feature {
  const feature = plan.features.find(each => each.id === id)
  if (feature === undefined) throw new RangeError(`the plan has no feature ${id}`)
  return feature
}

/** In the order of the plan. */
function chosenOf(plan: Plan, ids: readonly string[]): readonly Feature[] {
  const wanted = new Set(ids)
  const chosen = plan.features.filter(({ id }) => wanted.delete(id))
  for (const id of wanted) throw new RangeError(`the plan has no feature ${id}`)
  return chosen
}

function changeFeature(plan: Plan, id: string, change: (feature: Feature) => Feature): Plan {
  const before = featureOf(plan, id)
  const changed = change(before)
  if (changed === before) return plan
  const [after] = wholeRows(plan, [changed]) as readonly [Feature]
  return { ...plan, features: plan.features.map(feature => (feature === before ? after : feature)) }
}

/** A geometry belongs to its kind by the tools that draw it; the reader checks files. */
function withGeometry(feature: Feature, geometry: Geometry): Feature {
  return { ...feature, geometry } as Feature
}

/** Moved by a step in degrees that holds for the first position of the first thing; all keep their shapes in metres. */
function movedTogether(features: readonly Feature[], by: Shift): readonly Feature[] {
  const from = features[0] && firstPosition(features[0].geometry)
  if (from === undefined) return features
  const move = carrying(from, by)
  return features.map(feature =>
    withGeometry(
      feature,
      mapPositions(feature.geometry, at => roundedPosition(move(at))),
    ),
  )
}

function firstPosition({ type, coordinates }: Geometry): LngLat | undefined {
  if (type === 'Point') return coordinates
  return type === 'Polygon' ? coordinates[0]?.[0] : coordinates[0]
}

function roundedGeometry(geometry: Geometry): Geometry {
  return mapPositions(geometry, roundedPosition)
}

/** As many decimals as a file keeps, so that a plan is the same after it was saved and read. */
function roundedPosition(position: LngLat): LngLat {
  const [lng, lat, ...rest] = position
  const round = (value: number): number => Number(value.toFixed(9))
  return [round(lng), round(lat), ...rest.map(round)]
}

function mapPositions(geometry: Geometry, change: (position: LngLat) => LngLat): Geometry {
  switch (geometry.type) {
    case 'Point':
      return { ...geometry, coordinates: change(geometry.coordinates) }
    case 'MultiPoint':
    case 'LineString':
      return { ...geometry, coordinates: geometry.coordinates.map(change) }
    case 'Polygon':
      return { ...geometry, coordinates: geometry.coordinates.map(ring => ring.map(change)) }
    default:
      throw new TypeError(`unknown geometry ${(geometry satisfies never as Geometry).type}`)
  }
}
