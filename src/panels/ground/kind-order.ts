import type { FeatureKind } from '#geo/plan/plan'

/** Kinds in the order in which a grower would go round. */
export const kindOrder: readonly FeatureKind[] = [
  'row',
  'block',
  'plant',
  'bed',
  'station',
  'candidate',
  'forage',
  'mud',
  'keepout',
  'boundary',
  'windbreak',
]
