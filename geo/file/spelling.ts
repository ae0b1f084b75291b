import { cultivarOffsets } from '../data/cultivars'

/** A cultivar under the spelling it is brought in by, and all that are taken for it. */
export type Spelling = {
  readonly used: string
  readonly written: readonly { readonly text: string; readonly count: number }[]
  /** None is known, and another is as frequent as the one used: which is right is anybody's guess. */
  readonly isTie: boolean
}

/** On one line, without blanks around it, control characters or broken signs. */
export function tidyName(text: string): string {
  return text
    .replace(/\p{Surrogate}/gu, '\uFFFD')
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .trim()
}

/** What two spellings of a word have in common: letters and digits, without accents and case. */
export function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .toLowerCase()
}

/** Words of fewer letters differ by one letter and mean different things. */
const fewLetters = 6
/** Words of more letters than any cultivar's name, and more words than any orchard's, are not compared with each other. */
const manyLetters = 40
const mostCompared = 500

/**
 * Spellings gathered by what they fold to; one that is a letter off another that is known, or more frequent, goes with
 * that one. Of several the known one is used, else the most frequent.
 */
export function gatheredSpellings(cultivars: readonly unknown[]): readonly Spelling[] {
  const counts = new Map<string, number>()
  for (const each of cultivars)
    if (typeof each === 'string' && each !== '') counts.set(each, (counts.get(each) ?? 0) + 1)
  const known = new Map(
    Object.values(cultivarOffsets).flatMap(names => Object.keys(names).map(name => [folded(name), name])),
  )
  const heaps = new Map<string, { text: string; count: number }[]>()
  for (const [text, count] of counts) {
    const key = folded(text) || text
    heaps.set(key, [...(heaps.get(key) ?? []), { text, count }])
  }
  const total = (key: string) => heaps.get(key)!.reduce((sum, { count }) => sum + count, 0)
  const order = [...heaps.keys()].sort((a, b) => Number(known.has(b)) - Number(known.has(a)) || total(b) - total(a))
  const heads: string[] = []
  for (const key of order) {
    const near =
      known.has(key) || key.length < fewLetters || key.length > manyLetters || order.length > mostCompared
        ? undefined
        : heads.find(head => Math.abs(head.length - key.length) <= 1 && editDistance(head, key) === 1)
    if (near === undefined) heads.push(key)
    else heaps.set(near, [...heaps.get(near)!, ...heaps.get(key)!])
  }
  return heads.map(head => {
    const written = heaps.get(head)!.toSorted((a, b) => b.count - a.count || (a.text < b.text ? -1 : 1))
    const isTie = !known.has(head) && written[0]!.count === written[1]?.count
    return { used: known.get(head) ?? written[0]!.text, written, isTie }
  })
}

/** Letters to change, add or drop to make one word of the other (Levenshtein). */
export function editDistance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, i) => i)
  for (let i = 1; i <= from.length; i += 1) {
    const next = [i]
    for (let j = 1; j <= to.length; j += 1) {
      const change = row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1)
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1))
    }
    row = next
  }
  return row[to.length]!
}

/** Words of fewer letters are near to too many others. */
const leastLetters = 4
/** In words of so many letters two may be wrong. */
const longWord = 8

/**
 * How many letters a word seems to be misspelt by; null where it is another word. Neighbours that were exchanged count as
 * one letter, and in a short word a letter in another's place makes another word.
 */
export function misspeltBy(word: string, name: string): number | null {
  const [short, long] = [Math.min(word.length, name.length), Math.max(word.length, name.length)]
  if (short < leastLetters || long > manyLetters || long - short > 2) return null
  if (isExchanged(word, name)) return 1
  const letters = editDistance(word, name)
  if (letters > (short < longWord ? 1 : 2)) return null
  return short < fewLetters && letters > 0 && word.length === name.length ? null : letters
}

function isExchanged(word: string, name: string): boolean {
  const at = [...word].findIndex((letter, i) => letter !== name[i])
  if (at < 0 || word.length !== name.length) return false
  return word === name.slice(0, at) + name.slice(at + 1, at + 2) + name.slice(at, at + 1) + name.slice(at + 2)
}
