import type { Edit } from '../plan/edits'
import { addFeatures } from '../plan/edits-features'
import { things } from '../plan/edits-wording'
import type { Feature, FeatureKind } from '../plan/plan'
import type { ImportThing } from './import-thing'

/** One edit that brings things in. `newId` is asked once for each, however often the edit is applied; ids must be new to the plan. */
export function importEdit(coming: readonly ImportThing[], newId: (kind: FeatureKind) => string): Edit {
  const features = coming.map(
    ({ geometry, properties }) =>
      // Kind and geometry of a thing go together.
      ({ type: 'Feature', id: newId(properties.kind), geometry, properties }) as unknown as Feature,
  )
  return { label: `Bring in ${things(features)}`, apply: addFeatures(features).apply }
}
