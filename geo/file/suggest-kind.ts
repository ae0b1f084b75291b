import { cropWords } from '../data/crop-words'
import { crops } from '../data/crops'
import type { FeatureKind, Plan } from '../plan/plan'
import { isFeatureKind } from './format'
import { folded, misspeltBy } from './spelling'

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

/** The crop that words mean, or that they likely do, by a usual word for it or a misspelt name; both null where neither. */
export type CropMeant = { readonly crop: string | null; readonly likely: string | null }

const nothingMeant: CropMeant = { crop: null, likely: null }

/**
 * Tells which crop one of several texts means: a crop's id, its name or its botanical name, whatever the case. Names are
 * put together once, and each text is looked at once: long lists say the same over and over.
 */
export function cropFinder(own: Plan['crops']): (texts: readonly string[]) => CropMeant {
  const known = namesOfCrops(own)
  const told = new Map<string, CropMeant>()
  const meant = (text: string): CropMeant => {
    const key = folded(text)
    // People write "apples" and "cherries"; the tables have one of each.
    const forms = [key, key.replace(/ies$/, 'y'), key.replace(/es$/, ''), key.replace(/s$/, '')]
    const found = forms.find(each => known.has(each))
    return found === undefined
      ? { crop: null, likely: likelyCrop([...new Set(forms)], known) }
      : { crop: known.get(found)!, likely: null }
  }
  return texts => {
    const all = texts.map(text => {
      const before = told.get(text)
      if (before !== undefined) return before
      const crop = meant(text)
      told.set(text, crop)
      return crop
    })
    return all.find(({ crop }) => crop !== null) ?? all.find(({ likely }) => likely !== null) ?? nothingMeant
  }
}

/** The crop of a usual word, else of the name or word that is nearest; null where several crops are as near. */
function likelyCrop(forms: readonly string[], known: ReadonlyMap<string, string>): string | null {
  const word = forms.find(each => Object.hasOwn(cropWords, each))
  if (word !== undefined) return cropWords[word]!.crop
  let least = Number.POSITIVE_INFINITY
  let nearest = new Set<string>()
  for (const [name, crop] of [...known, ...Object.entries(cropWords).map(([each, of]) => [each, of.crop] as const)]) {
    for (const form of forms) {
      const letters = misspeltBy(form, name)
      if (letters === null || letters > least) continue
      if (letters < least) nearest = new Set()
      least = letters
      nearest.add(crop)
    }
  }
  return nearest.size === 1 ? [...nearest][0]! : null
}
