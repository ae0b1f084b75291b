import { type Feature, isPresent, isStation, type Plan, type Station, seasonOf } from '#geo/plan/plan'
import type { DayReport } from '#geo/report/day'
import type { PointCoverage } from '#geo/report/report'
import { pointsText } from '#geo/seasons/cause-text'
import { answerNow, stockNow } from '../../state/boxes-actions'
import { featureById, settingsOf, stationSeasonOf } from '../../state/selectors'
import type { Job, PlannerState, PlannerStore } from '../../state/store'
import type { OtherSeason } from '../../state/years'
import { changeMapShown, yearAgainst } from '../../state/years-actions'
import type { Ghost } from '../tools/tool'
import type { Picture } from './canvas-layer'
import { changePicture } from './change'
import { captionsOf, isAtWork, paintWork } from './day-marks'
import { paintCandidate, paintMud, paintPlantRings, paintStation, stationHalfAt } from './marks'
import { paintNames } from './names'
import { plantPicture } from './plants'
import { paintShapes } from './shapes'
import { droppedNow, paintSuggested, suggestedPlaces } from './suggested'

/** The value to draw: a finished one, or the last good one while another is under way. */
export function drawn<T>(job: Job<T>): T | null {
  switch (job.status) {
    case 'ready':
      return job.value
    case 'running':
    case 'failed':
      return job.last
    case 'idle':
      return null
    default:
      return job satisfies never
  }
}

/** Pictures of a plan and its results; they read the store when they are asked to paint. */
export function planPainters(
  store: PlannerStore,
  ghostNow: () => Ghost | null,
  /** The season that is looked at, or the one it is held against. */
  season: 'shown' | 'against' = 'shown',
): { readonly shapes: Picture; readonly plants: Picture; readonly marks: Picture } {
  const plants = plantPicture()
  const change = changePicture()
  const isAgainst = season === 'against'
  const yearOf = (state: PlannerState) => (isAgainst ? yearAgainst(state) : null) ?? state.view.year
  const dayOf = (state: PlannerState) => (isAgainst ? null : dayShown(state))
  const hiddenNow = (): ReadonlySet<string> => new Set(ghostNow()?.hidden ?? [])
  const hiddenIds = () => (ghostNow()?.hidden ?? []).join(' ')
  const standing = (state: PlannerState) => [
    yearOf(state),
    changeMapShown(state) === 'change' ? yearAgainst(state) : null,
    hiddenIds(),
  ]
  const shadesOf = (state: PlannerState) => {
    if (!isAgainst) return { cloud: drawn(state.results.cloud), coverage: coverageShown(state) }
    const other = otherNow(state)
    return { cloud: other?.cloud ?? null, coverage: other?.evaluation.coverage ?? null }
  }
  const outlineOf = (id: string) => {
    const { plan } = store.getState().document
    return (plan && featureById(plan, id)?.geometry) ?? null
  }
  const shapes: Picture = {
    inputs() {
      const state = store.getState()
      return [state.document.plan?.features, state.view.selection, ...standing(state)]
    },
    painter(frame) {
      const state = store.getState()
      const { plan } = state.document
      if (plan === null) return
      const hidden = hiddenNow()
      const shown = presentIn(plan, state, yearOf(state)).filter(({ id }) => !hidden.has(id))
      const selected = new Set(state.view.selection)
      paintShapes(frame, shown, id => selected.has(id))
    },
  }
  const plantsPicture: Picture = {
    inputs() {
      const state = store.getState()
      const { cloud, coverage } = shadesOf(state)
      return [cloud, coverage, state.view.shading, otherNow(state), changeMapShown(state), hiddenIds()]
    },
    painter(frame) {
      const state = store.getState()
      const { view } = state
      const other = otherNow(state)
      const { cloud, coverage } = shadesOf(state)
      if (!isAgainst && view.shading && changeMapShown(state) === 'change' && cloud && coverage && other) {
        change.setSeasons({ cloud: other.cloud, coverage: other.evaluation.coverage }, { cloud, coverage })
        change.paint(frame, { hidden: hiddenNow(), outlineOf })
        return
      }
      plants.setCloud(cloud)
      plants.setCoverage(coverage)
      plants.paint(frame, { isShaded: view.shading, hidden: hiddenNow(), outlineOf })
    },
  }
  const marks: Picture = {
    inputs() {
      const state = store.getState()
      const { results, view, boxes, years, document } = state
      const answers = [results.suggestion, results.stock, results.comparison, results.otherSeason, dayOf(state)]
      return [document.plan, view.selection, view.page, view.reachCircles, boxes, years, ...answers, ...standing(state)]
    },
    painter(frame) {
      const state = store.getState()
      const { plan } = state.document
      if (plan === null) return
      const hidden = hiddenNow()
      const year = yearOf(state)
      const features = presentIn(plan, state, year)
      const selected = new Set(state.view.selection)
      const isSelected = (id: string) => selected.has(id)
      for (const feature of features) {
        if (hidden.has(feature.id)) continue
        const { kind } = feature.properties
        if (kind === 'mud') paintMud(frame, feature.geometry.coordinates as [number, number], isSelected(feature.id))
        if (kind === 'candidate')
          paintCandidate(frame, feature.geometry.coordinates as [number, number], isSelected(feature.id))
        if (kind === 'plant' && isSelected(feature.id)) paintPlantRings(frame, feature)
      }
      const day = dayOf(state)
      if (day !== null)
        paintWork(
          frame,
          features.filter(({ id }) => !hidden.has(id)),
          day,
          isSelected,
        )
      const dropped = droppedNow(state)
      const stations = plan.features.filter(isStation)
      const suggested = isAgainst ? [] : suggestedPlaces(state)
      const places = [...stations.map(({ geometry }) => geometry.coordinates), ...suggested]
      const half = stationHalfAt(places.map(frame.toCanvas))
      stations.forEach((station, index) => {
        if (hidden.has(station.id)) return
        paintStation(frame, station.geometry.coordinates, {
          number: stationNumber(station, index),
          isStocked:
            day === null
              ? isStocked(plan, year, station.id) && !dropped.includes(station.id)
              : isAtWork(day, station.id),
          isSelected: isSelected(station.id),
          reach: reachOf(state, station.id),
          half,
        })
      })
      if (!isAgainst) paintSuggested(frame, state, half)
      const captions = isAgainst ? noCaptions : day === null ? pointsOf(state) : captionsOf(day)
      paintNames(frame, features, hidden, { suggested, captions })
    },
  }
  return { shapes, plants: plantsPicture, marks }
}

const noCaptions: ReadonlyMap<string, string> = new Map()

/** Points that each planting gained or lost beside its name, where the map of change is asked for them. */
function pointsOf(state: PlannerState): ReadonlyMap<string, string> {
  const { comparison } = state.results
  const compared = drawn(comparison)
  if (!state.years.hasNumbers || changeMapShown(state) !== 'change' || compared === null) return noCaptions
  const captions: readonly (readonly [string, string])[] = [
    // Stations keep their numbers and make room.
    ...compared.plan.features.filter(isStation).map(({ id }) => [id, ''] as const),
    ...compared.comparison.plantings.map(({ id, name, wanted, change }) => {
      if (wanted.from === null) return [id, `${name}: new`] as const
      if (wanted.to === null) return [id, `${name}: gone`] as const
      return [id, change === null ? name : `${name} ${pointsText(change).replace('-', '−')}`] as const
    }),
  ]
  return new Map(captions)
}

/** The season held against the one looked at, as soon as it is worked out. */
function otherNow(state: PlannerState): OtherSeason | null {
  const other = drawn(state.results.otherSeason)
  return other !== null && other.year === yearAgainst(state) ? other : null
}

/** The day's work, while a day is looked at and as soon as it is known. */
function dayShown(state: PlannerState): DayReport | null {
  const { view, results } = state
  // Seasons are compared as wholes.
  return view.day === null || changeMapShown(state) !== 'season' ? null : drawn(results.day)
}

/** What to shade by: a day's work, or the season's coverage as it is or, on the page More boxes, as it would be. */
function coverageShown(state: PlannerState): PointCoverage | null {
  const { results, view, boxes } = state
  const day = dayShown(state)
  if (day !== null) return day.work
  const isAfter = view.page === 'boxes' && boxes.isShownAfter && (answerNow(state) ?? stockNow(state)) !== null
  return (isAfter ? drawn(results.trial)?.coverage : undefined) ?? drawn(results.report)?.coverage ?? null
}

/** What stands in a season; on the map of change what stands in either of the two. */
function presentIn(plan: Plan, state: PlannerState, year: number): readonly Feature[] {
  const against = changeMapShown(state) === 'change' ? yearAgainst(state) : null
  if (against === null) return present(plan, year)
  const ids = new Set([...present(plan, year), ...present(plan, against)].map(({ id }) => id))
  return plan.features.filter(({ id }) => ids.has(id))
}

/** What stands on the ground in the season: plantings and forage by their years, all else always. */
function present(plan: Plan, year: number): readonly Feature[] {
  return plan.features.filter(feature => {
    const { kind } = feature.properties
    switch (kind) {
      case 'row':
      case 'block':
      case 'plant':
      case 'bed':
      case 'forage':
        return isPresent(feature as Parameters<typeof isPresent>[0], year)
      default:
        return true
    }
  })
}

/** The number in a station's mark: that of its name, else its place among the stations. */
export function stationNumber(station: Station | undefined, index: number): number {
  const inName = /(\d{1,3})$/.exec(station?.properties.name ?? '')
  return inName === null ? index + 1 : Number(inName[1])
}

export function isStocked(plan: Plan, year: number, stationId: string): boolean {
  return stationSeasonOf(plan, year, stationId)?.releases?.some(({ females }) => females > 0) ?? false
}

/** Typical foraging radius of a station's bee, m; null where no circle is asked for. */
export function reachOf({ document, view }: PlannerState, stationId: string): number | null {
  const { plan } = document
  if (plan === null || !view.reachCircles) return null
  const { selection } = view
  const isAnyStation = selection.some(id => plan.features.some(feature => feature.id === id && isStation(feature)))
  if (isAnyStation && !selection.includes(stationId)) return null
  const bee = seasonOf(plan, view.year)?.stations?.[stationId]?.bee ?? plan.bee
  return settingsOf(plan).bees[bee].typicalForagingRadius
}
