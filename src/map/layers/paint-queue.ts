/** Something that can be brought up to date; whether there was anything to do. */
type Refreshed = { refresh(): boolean }

/**
 * Once painting has taken this long in a frame the rest waits for the next one: a large plan's layers all at once would
 * hold up the hand. Each layer that was painted has as much work before it again, for the browser, ms.
 */
const longest = 6

const waiting = new Set<Refreshed>()
let frame = 0

/** Brings a layer up to date in one of the next frames, those asked first before others. */
export function paintSoon(layer: Refreshed): void {
  waiting.add(layer)
  if (frame === 0) frame = requestAnimationFrame(paintSome)
}

export function forget(layer: Refreshed): void {
  waiting.delete(layer)
}

function paintSome(): void {
  frame = 0
  const start = performance.now()
  for (const layer of waiting) {
    waiting.delete(layer)
    if (layer.refresh() && performance.now() - start > longest) break
  }
  if (waiting.size > 0) frame = requestAnimationFrame(paintSome)
}
