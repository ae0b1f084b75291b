import type { Plan } from '../plan/plan'

/**
 * What a calendar knows a task by. A plan has no id of its own, and its name may change: the id of its first feature
 * stands for it, which is drawn at random in the planner and never given twice, and beside it the place of that feature to
 * a tenth of a degree, which tells plans apart whose ids were written by hand. Neither dates nor names nor amounts go in.
 */
export function taskUid(
  plan: Pick<Plan, 'features'>,
  year: number,
  parts: readonly [kind: string, ...string[]],
): string {
  const [first] = plan.features
  const place = first === undefined ? [] : firstPosition(first.geometry.coordinates).map(degrees => degrees.toFixed(1))
  return `nestreach-${year}-${parts[0]}-${fingerprint(JSON.stringify([first?.id ?? '', place, year, parts]))}`
}

function firstPosition(coordinates: unknown): readonly number[] {
  if (!Array.isArray(coordinates)) return []
  return typeof coordinates[0] === 'number' ? coordinates.slice(0, 2) : firstPosition(coordinates[0])
}

/** FNV-1a in 64 bits, over UTF-16 units, as 16 hexadecimal digits. Source: Fowler, Noll and Vo 1991. */
function fingerprint(text: string): string {
  let hash = 0xcbf29ce484222325n
  for (let i = 0; i < text.length; i += 1) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(text.charCodeAt(i))) * 0x100000001b3n)
  }
  return hash.toString(16).padStart(16, '0')
}
