import type { Feature, FeatureKind, Plan } from './plan'

/** What a person calls each kind of thing on the map. */
export const kindWords: Readonly<Record<FeatureKind, string>> = {
  row: 'row',
  block: 'block',
  plant: 'plant',
  bed: 'bed',
  station: 'station',
  candidate: 'candidate site',
  forage: 'forage area',
  mud: 'mud place',
  keepout: 'no-station ground',
  boundary: 'boundary',
  windbreak: 'windbreak',
}

const plurals: Readonly<Record<FeatureKind, string>> = {
  row: 'rows',
  block: 'blocks',
  plant: 'plants',
  bed: 'beds',
  station: 'stations',
  candidate: 'candidate sites',
  forage: 'forage areas',
  mud: 'mud places',
  keepout: 'no-station grounds',
  boundary: 'boundaries',
  windbreak: 'windbreaks',
}

/** `station North gate`; `Row 3` where the name already says the kind; `block` where it has no name. */
export function thing(feature: Feature): string {
  const { kind, name } = feature.properties
  const word = kindWords[kind]
  if (!name) return word
  return name.toLowerCase().startsWith(word) ? name : `${word} ${name}`
}

/** One thing by its name, several by their number: `3 rows`, or `4 things` where they are of several kinds. */
export function things(features: readonly Feature[]): string {
  const [first] = features
  if (first === undefined) return 'nothing'
  if (features.length === 1) return thing(first)
  const isOneKind = features.every(feature => feature.properties.kind === first.properties.kind)
  return `${features.length} ${isOneKind ? plurals[first.properties.kind] : 'things'}`
}

/** `station North gate` by id; the id itself where the plan does not have it. */
export function thingById(plan: Plan, id: string): string {
  const feature = plan.features.find(each => each.id === id)
  return feature ? thing(feature) : id
}

const propertyWords: Readonly<Record<string, string>> = {
  rowSpacing: 'row spacing',
  count: 'number of plants',
  femalesPerPlant: 'females per plant',
  bearing: 'direction of the rows',
  planted: 'year of planting',
  removed: 'year of removal',
  since: 'first year',
  until: 'last year',
  blossomDensity: 'blossom density',
}

/** Names of changed members in words: `spacing`, `spacing and row spacing`; `details` for more than two. */
export function memberWords(names: readonly string[]): string {
  if (names.length === 0 || names.length > 2) return 'details'
  return names.map(name => propertyWords[name] ?? name).join(' and ')
}
