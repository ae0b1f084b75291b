/** Text as bytes of another encoding than UTF-8, with or without a byte order mark. */
export function utf16(text: string, order: 'le' | 'be', isMarked: boolean): Uint8Array {
  const units = [...(isMarked ? [0xfeff] : []), ...Array.from({ length: text.length }, (_, i) => text.charCodeAt(i))]
  return Uint8Array.from(units.flatMap(unit => (order === 'le' ? [unit & 0xff, unit >> 8] : [unit >> 8, unit & 0xff])))
}

export function utf8(text: string, isMarked = false): Uint8Array {
  return new TextEncoder().encode(isMarked ? `\uFEFF${text}` : text)
}

/** Letters up to U+00FF, which Windows-1252 shares with ISO 8859-1 but for 80 to 9F. */
export function latin1(text: string): Uint8Array {
  return Uint8Array.from([...text].map(letter => letter.charCodeAt(0)))
}
