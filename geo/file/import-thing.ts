import type { FeatureKind, Geometry } from '../plan/plan'

/** One thing as it would stand in the plan, but for its id. Kind and geometry go together. */
export type ImportThing = {
  readonly geometry: Geometry
  readonly properties: { readonly kind: FeatureKind; readonly [name: string]: string | number }
}
