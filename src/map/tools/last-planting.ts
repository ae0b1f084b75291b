import { type Block, isPlanting, type Plan, type Row } from '#geo/plan/plan'

/** The row or block drawn last: the next one is most likely planted as it is. A block goes by blocks first. */
export function lastPlanting(plan: Plan, kind: 'row' | 'block'): Row | Block | null {
  const inRows = plan.features.filter(
    (feature): feature is Row | Block =>
      isPlanting(feature) && (feature.properties.kind === 'row' || feature.properties.kind === 'block'),
  )
  return inRows.findLast(({ properties }) => properties.kind === kind) ?? inRows.at(-1) ?? null
}

/** Its own spacings; the crop's count where it has none. */
export function ownSpacings(
  plan: Plan,
  kind: 'row' | 'block',
): { readonly spacing?: number | undefined; readonly rowSpacing?: number | undefined } {
  const { spacing, rowSpacing } = lastPlanting(plan, kind)?.properties ?? {}
  return { spacing, rowSpacing }
}

/** What the next one takes over beside the spacings. */
export function ownRows(last: Row | Block | null): { readonly cultivar?: string } {
  const cultivar = last?.properties.cultivar
  return cultivar ? { cultivar } : {}
}
