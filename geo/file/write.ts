import { beeParameterNames } from '../data/bees'
import { beeIds } from '../data/own'
import { siteParameterNames } from '../data/parameters'
import { isRecord } from '../plan/place'
import type { Feature, Plan } from '../plan/plan'
import { currentVersion, isFeatureKind, planMember, propertyNames } from './format'
import { type JsonLayout, printJson } from './print-json'

/** A tenth of a millimetre on the ground; what a drawn position can mean is far coarser. */
const coordinateDecimals = 9

const bloom: JsonLayout = { known: ['first', 'full', 'end', 'observed'] }
const release: JsonLayout = { known: ['date', 'females', 'males', 'lot'] }
const stationSeason: JsonLayout = {
  known: ['bee', 'tubes', 'bore', 'depth', 'material', 'releases'],
  members: { releases: { each: release } },
}
const nestCounts = ['cells', 'females', 'males', 'losses']
const losses: JsonLayout = { known: ['mite', 'fly', 'wasp', 'mould', 'chalk', 'dead', 'other'] }
const stationRecord: JsonLayout = {
  known: ['visits', 'takenIn', 'opening'],
  members: {
    visits: { each: { known: ['date', 'capped', 'mudWet', 'damage', 'note'] } },
    opening: {
      known: ['date', 'tubesOpened', ...nestCounts, 'tubes'],
      members: { losses, tubes: { each: { known: nestCounts, members: { losses } } } },
    },
  },
}
const shareOut: JsonLayout = {
  known: ['rule', 'shares'],
  members: { shares: { each: { known: ['to', 'measure', 'cocoons'] } } },
}
const season: JsonLayout = {
  known: [
    'year',
    'appleFullBloom',
    'bloom',
    'stations',
    'weather',
    'records',
    'fruitSet',
    'shareOut',
    'coldStore',
    'setAside',
  ],
  members: {
    bloom: { isMap: true, each: bloom },
    stations: { isMap: true, each: stationSeason },
    weather: { known: ['days'] },
    records: { isMap: true, each: stationRecord },
    fruitSet: { isMap: true, each: { known: ['flowers', 'fruit'] } },
    shareOut,
    coldStore: { known: ['from', 'temperature'] },
    setAside: { each: { known: ['code', 'at', 'reason'] } },
  },
}
const plan: JsonLayout = {
  known: Object.keys(planMember.shape),
  members: {
    parameters: { known: [...siteParameterNames, ...beeIds], each: { known: beeParameterNames } },
    crops: {
      isMap: true,
      each: { known: ['basedOn', 'name', 'stockingRate', 'blossomDensity', 'appeal', 'spacing', 'rowSpacing'] },
    },
    lots: { each: { known: ['id', 'origin', 'count', 'femaleShare', 'station', 'season'] } },
    seasons: { each: season },
    pictures: {
      each: {
        known: ['id', 'name', 'width', 'height', 'corners', 'opacity', 'isLocked', 'isHidden', 'isInFile', 'image'],
        members: { corners: { decimals: coordinateDecimals } },
      },
    },
  },
}
const geometry: JsonLayout = {
  known: ['type', 'coordinates'],
  members: { coordinates: { decimals: coordinateDecimals } },
}

function featureLayout(feature: unknown): JsonLayout {
  const properties = isRecord(feature) && isRecord(feature.properties) ? feature.properties : {}
  const known = isFeatureKind(properties.kind) ? propertyNames(properties.kind) : ['kind', 'name']
  return { known: ['type', 'id', 'geometry', 'properties'], members: { geometry, properties: { known } } }
}

/** Edits share all they do not touch: of a plan of 3,000 rows that is saved again, one row is printed anew. */
const featureTexts = new WeakMap<object, string>()

const fileLayout: JsonLayout = {
  known: ['type', 'plan', 'features'],
  members: { plan, features: { each: featureLayout, remembered: featureTexts } },
}

/**
 * The one canonical text of a plan: equal plans give equal texts, whatever order their members were set in. Members
 * stand in the order of the format, unknown ones after them by code point; maps by id in natural order; seasons,
 * features, releases and visits stay in the order they have; coordinates have at most 9 decimals.
 */
export function writePlan({ features, besides, ...members }: Plan): string {
  const { plan: unknownMembers, features: unknownFeatures, ...top } = besides
  const file = {
    ...top,
    type: 'FeatureCollection',
    plan: { ...(isRecord(unknownMembers) ? unknownMembers : {}), ...members, version: currentVersion },
    features: [...features, ...(Array.isArray(unknownFeatures) ? unknownFeatures : [])],
  }
  return `${printJson(file, fileLayout)}\n`
}

/** Features that are not printed yet. */
export function unprinted(features: readonly Feature[]): readonly Feature[] {
  return features.filter(feature => !featureTexts.has(feature))
}

/** Prints features ahead, so that the plan they are in is written sooner. */
export function printAhead(features: readonly Feature[]): void {
  printJson({ features }, fileLayout)
}
