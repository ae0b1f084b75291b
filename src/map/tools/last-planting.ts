import { type Block, isPlanting, type Plan, type Row } from '#geo/plan/plan'

/** The row or block of a crop drawn last: the next one is most likely planted as it is. A block goes by blocks first. */
function lastPlanting(plan: Plan, kind: 'row' | 'block', crop: string): Row | Block | null {
  const inRows = plan.features.filter(
    (feature): feature is Row | Block =>
      isPlanting(feature) &&
      feature.properties.crop === crop &&
      (feature.properties.kind === 'row' || feature.properties.kind === 'block'),
  )
  return inRows.findLast(({ properties }) => properties.kind === kind) ?? inRows.at(-1) ?? null
}

/** Its own spacings; the crop's count where it has none. */
export function ownSpacings(
  plan: Plan,
  kind: 'row' | 'block',
  crop: string,
): { readonly spacing?: number | undefined; readonly rowSpacing?: number | undefined } {
  const { spacing, rowSpacing } = lastPlanting(plan, kind, crop)?.properties ?? {}
  return { spacing, rowSpacing }
}

/** Its cultivar; empty where it has none. */
export function lastCultivar(plan: Plan, kind: 'row' | 'block', crop: string): string {
  return lastPlanting(plan, kind, crop)?.properties.cultivar ?? ''
}
