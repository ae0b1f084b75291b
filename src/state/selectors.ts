import { type Settings, settingsFor } from '#geo/data/settings'
import { checkPlan } from '#geo/plan/check'
import {
  type Bloom,
  type Feature,
  type Forage,
  isForage,
  isPlanting,
  isPresent,
  isStation,
  type Plan,
  type Planting,
  type Season,
  type Station,
  type StationSeason,
  seasonOf,
} from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import { stationYears } from '#geo/seasons/record'
import { stationStories } from '#geo/seasons/station-story'
import { orchardYear } from '#geo/seasons/year'
import { type Plane, planeOf } from '#geo/space/plane'
import type { PlannerState } from './store'

/** Remembers one answer for each object it was asked of, for as long as that object lives. */
function remembered<K extends object, T>(of: (key: K) => T): (key: K) => T {
  const answers = new WeakMap<K, { readonly answer: T }>()
  return key => {
    const known = answers.get(key)
    if (known) return known.answer
    const answer = of(key)
    answers.set(key, { answer })
    return answer
  }
}

/** The same for a plan in a year. */
function rememberedByYear<T>(of: (plan: Plan, year: number) => T): (plan: Plan, year: number) => T {
  const years = remembered((_: Plan) => new Map<number, { readonly answer: T }>())
  return (plan, year) => {
    const known = years(plan).get(year)
    if (known) return known.answer
    const answer = of(plan, year)
    years(plan).set(year, { answer })
    return answer
  }
}

type Features = Plan['features']
const byId = remembered((features: Features) => new Map(features.map(feature => [feature.id, feature])))
const plantingsOf = remembered((features: Features): readonly Planting[] => features.filter(isPlanting))
const stationsOf = remembered((features: Features): readonly Station[] => features.filter(isStation))
const foragesOf = remembered((features: Features): readonly Forage[] => features.filter(isForage))
const planes = remembered((features: Features) => planeOf(features))

export function featureById(plan: Plan, id: string): Feature | undefined {
  return byId(plan.features).get(id)
}

export function plantings(plan: Plan): readonly Planting[] {
  return plantingsOf(plan.features)
}

export function stations(plan: Plan): readonly Station[] {
  return stationsOf(plan.features)
}

export function forages(plan: Plan): readonly Forage[] {
  return foragesOf(plan.features)
}

/** The plan's flat metric frame. */
export function planeOfPlan(plan: Plan): Plane {
  return planes(plan.features)
}

/** Plantings that stand in the ground in `year`. */
export const plantingsIn = rememberedByYear((plan, year): readonly Planting[] =>
  plantings(plan).filter(planting => isPresent(planting, year)),
)

/** Stations that the season lists. */
export const stationsInUse = rememberedByYear((plan, year): readonly Station[] => {
  const uses = seasonOf(plan, year)?.stations ?? {}
  return stations(plan).filter(({ id }) => Object.hasOwn(uses, id))
})

/** Ids of the crops that stand in the ground in `year`, in the order in which the plan names them first. */
export const cropsIn = rememberedByYear((plan, year): readonly string[] => [
  ...new Set(plantingsIn(plan, year).map(({ properties }) => properties.crop)),
])

/** How a station is used in `year`; undefined where it is not in use. */
export function stationSeasonOf(plan: Plan, year: number, stationId: string): StationSeason | undefined {
  return entryOf(seasonOf(plan, year)?.stations, stationId)
}

/** A planting's bloom in `year`, its own or else its crop's; a forage area's own. */
export function bloomOf(plan: Plan, year: number, feature: Planting | Forage): Bloom | undefined {
  const season: Season | undefined = seasonOf(plan, year)
  const own = entryOf(season?.bloom, feature.id)
  return own ?? (isPlanting(feature) ? entryOf(season?.bloom, feature.properties.crop) : undefined)
}

const settings = remembered((parameters: Plan['parameters']) =>
  remembered((crops: Plan['crops']): Settings => settingsFor({ parameters, crops })),
)

/** Tables with the grower's own values over them; the same object until one of these changes. */
export function settingsOf(plan: Plan): Settings {
  return settings(plan.parameters)(plan.crops)
}

/** What the field checks find in the plan for the season `year`. */
export const problemsOf = rememberedByYear((plan, year): readonly Problem[] => checkPlan(plan, year))

/** What was counted in a season, station by station and together, and each station's years up to it. */
export const stationYearsOf = rememberedByYear((plan, year) => stationYears(plan, year))
export const orchardYearOf = rememberedByYear((plan, year) => orchardYear(plan, year, stationYearsOf(plan, year)))
export const stationStoriesOf = rememberedByYear((plan, year) => stationStories(plan, year))

export function selectedFeatures(state: PlannerState): readonly Feature[] {
  const { plan } = state.document
  if (plan === null || state.view.selection.length === 0) return none
  return selected(plan)(state.view.selection)
}

const none: readonly Feature[] = []
const selected = remembered((plan: Plan) =>
  remembered((ids: readonly string[]): readonly Feature[] => {
    return ids.map(id => featureById(plan, id)).filter(feature => feature !== undefined)
  }),
)

/** "Undo: move station North gate"; null where there is nothing to undo. */
export function undoName(state: PlannerState): string | null {
  return named('Undo', state.document.past.at(-1)?.label)
}

export function redoName(state: PlannerState): string | null {
  return named('Redo', state.document.future.at(-1)?.label)
}

function named(verb: string, label: string | undefined): string | null {
  return label === undefined ? null : `${verb}: ${label.charAt(0).toLowerCase()}${label.slice(1)}`
}

function entryOf<T>(entries: Readonly<Record<string, T>> | undefined, key: string): T | undefined {
  return entries && Object.hasOwn(entries, key) ? entries[key] : undefined
}
