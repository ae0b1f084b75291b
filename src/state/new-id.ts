import type { Plan } from '#geo/plan/plan'

const letters = '0123456789abcdefghijklmnopqrstuvwxyz'

/** Random bytes drawn at once: asked one by one, those of a long tree list would take seconds. */
let bytes: Uint8Array = new Uint8Array(0)
let used = 0

/** A fresh id such as `row-4k9x0b`. Drawn at random, so that no plan, device or undone step ever gives it twice. */
export function newId(kind: string): string {
  let id = ''
  while (id.length < 6) {
    const byte = nextByte()
    // 252 is the largest multiple of 36 in a byte: above it some letters would come more often.
    if (byte < 252) id += letters[byte % 36]
  }
  return `${kind}-${id}`
}

function nextByte(): number {
  if (used === bytes.length) {
    bytes = crypto.getRandomValues(new Uint8Array(1024))
    used = 0
  }
  used += 1
  return bytes[used - 1]!
}

/** Ids for many things at once: of forty thousand drawn at random two would often be the same. */
export function newIds(plan: Plan): (kind: string) => string {
  const taken = new Set(plan.features.map(({ id }) => id))
  return kind => {
    let id = newId(kind)
    while (taken.has(id)) id = newId(kind)
    taken.add(id)
    return id
  }
}
