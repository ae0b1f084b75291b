import type { Plan } from './plan'

/** Names for copies: "Row 4", "Row 5" after "Row 3"; "Gala 2" after "Gala"; none for what has none. */
export function namesAfter(plan: Plan, name: string | undefined, count: number): readonly string[] {
  if (!name) return Array.from({ length: count }, () => '')
  const [, stem = name, number] = /^(.*?)\s*(\d+)$/.exec(name) ?? []
  let highest = Number(number ?? 1)
  for (const { properties } of plan.features) {
    const rest = properties.name?.startsWith(stem) ? properties.name.slice(stem.length).trim() : ''
    if (/^\d+$/.test(rest)) highest = Math.max(highest, Number(rest))
  }
  return Array.from({ length: count }, (_, i) => `${stem} ${highest + 1 + i}`)
}
