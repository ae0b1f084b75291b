import { crops } from '../data/crops'
import type { FeatureKind, Plan } from '../plan/plan'
import { isFeatureKind } from './format'
import { folded } from './spelling'

/** Words by which people name each kind of thing; the first that fits counts. */
const words: readonly (readonly [FeatureKind, RegExp])[] = [
  ['mud', /\b(mud|clay|puddle)\b/i],
  ['keepout', /\b(keep ?out|spray|road|track|play|no[- ]stations?)\b/i],
  ['candidate', /\b(candidate|possible|site)\b/i],
  ['windbreak', /\b(wind ?breaks?|hedges?|shelter ?belts?)\b/i],
  ['forage', /\b(forage|meadow|clover|wild ?flowers?|flower (strip|bank))\b/i],
  ['boundary', /\b(boundary|fence|property|perimeter|parcel)\b/i],
  ['station', /\b(stations?|nests?|bees?|tubes)\b/i],
  ['bed', /\b(beds?|strawberr(y|ies))\b/i],
  ['plant', /\b(trees?|plants?|bush(es)?)\b/i],
  ['block', /\b(blocks?|orchards?|fields?)\b/i],
  ['row', /\brows?\b/i],
]

/** What a file says of something, beside its shape. */
type Said = { readonly name: string; readonly label: string; readonly given: Readonly<Record<string, unknown>> }

/** The likeliest kind of something, of those that its shape allows: what it says itself, else its words, else the usual. */
export function kindByWords({ given, label, name }: Said, kinds: readonly FeatureKind[]): FeatureKind {
  const { kind } = given
  if (isFeatureKind(kind) && kinds.includes(kind)) return kind
  const isGrown = typeof given.crop === 'string' || typeof given.cultivar === 'string'
  if (isGrown && kinds.includes('plant')) return 'plant'
  for (const text of [label, name]) {
    const found = words.find(([each, pattern]) => kinds.includes(each) && pattern.test(text.slice(0, 200)))
    if (found !== undefined) return found[0]
  }
  return kinds[0]!
}

/** What crops are called, folded. */
function namesOfCrops(own: Plan['crops']): ReadonlyMap<string, string> {
  const known = new Map<string, string>()
  for (const [id, { name, botanicalName }] of Object.entries(crops)) {
    for (const text of [botanicalName, name.split(/[,(]/)[0]!, name, id])
      if (folded(text) !== '') known.set(folded(text), id)
  }
  for (const [id, { name }] of Object.entries(own)) {
    for (const text of [name ?? '', id]) if (folded(text) !== '') known.set(folded(text), id)
  }
  return known
}

/**
 * Tells which crop one of several texts means: a crop's id, its name or its botanical name, whatever the case; null where
 * none. Names are put together once, and each text is looked at once: long lists say the same over and over.
 */
export function cropFinder(own: Plan['crops']): (texts: readonly string[]) => string | null {
  const known = namesOfCrops(own)
  const told = new Map<string, string | null>()
  const meant = (text: string): string | null => {
    const key = folded(text)
    // People write "apples" and "cherries"; the tables have one of each.
    const found = [key, key.replace(/ies$/, 'y'), key.replace(/es$/, ''), key.replace(/s$/, '')].find(each =>
      known.has(each),
    )
    return found === undefined ? null : known.get(found)!
  }
  return texts => {
    for (const text of texts) {
      let crop = told.get(text)
      if (crop === undefined) {
        crop = meant(text)
        told.set(text, crop)
      }
      if (crop !== null) return crop
    }
    return null
  }
}
