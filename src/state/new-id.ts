const letters = '0123456789abcdefghijklmnopqrstuvwxyz'

/** A fresh id such as `row-4k9x0b`. Drawn at random, so that no plan, device or undone step ever gives it twice. */
export function newId(kind: string): string {
  let id = ''
  while (id.length < 6) {
    const [byte = 0] = crypto.getRandomValues(new Uint8Array(1))
    // 252 is the largest multiple of 36 in a byte: above it some letters would come more often.
    if (byte < 252) id += letters[byte % 36]
  }
  return `${kind}-${id}`
}
