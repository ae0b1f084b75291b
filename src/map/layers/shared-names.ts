/** A single plant's name, and where it would stand; pixels. */
export type NamedMark = { readonly id: string; readonly name: string; readonly x: number; readonly y: number }

/** Fewer plants of a name have room for it each. */
const fewest = 3

/** What the names of single plants in a row have in common: `Row 1` of `Row 1, tree 12`; null where no number ends it. */
export function sharedPart(name: string): string | null {
  const found = /^(.*?[^\s,;:.#-])[\s,;:.#-]*(?:\b(?:tree|plant|bush|no|nr)\b\.?)?[\s#]*(?<!\d)\d+$/iu.exec(
    name.slice(0, 200),
  )
  return found !== null && /\p{L}/u.test(found[1]!) ? found[1]! : null
}

/**
 * What is written in place of the names of plants that stand too close for them: what the names have in common, at the
 * first of the plants, and nothing at the others. Plants that are not in the answer keep their names.
 */
export function sharedNames(
  marks: readonly NamedMark[],
  widthOf: (name: string) => number,
): ReadonlyMap<string, string | null> {
  const groups = new Map<string, NamedMark[]>()
  for (const mark of marks) {
    const part = sharedPart(mark.name)
    if (part === null) continue
    const group = groups.get(part)
    if (group === undefined) groups.set(part, [mark])
    else group.push(mark)
  }
  const shown = new Map<string, string | null>()
  for (const [part, group] of groups) {
    if (group.length < fewest || apart(group) > widthOf(group[0]!.name)) continue
    for (const [i, { id }] of group.entries()) shown.set(id, i === 0 ? part : null)
  }
  return shown
}

/** From one plant to the next on an average, along the box that they fill; pixels. */
function apart(group: readonly NamedMark[]): number {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { x, y } of group) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  return Math.hypot(right - left, bottom - top) / (group.length - 1)
}
