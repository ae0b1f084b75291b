import type { Problem } from '../problem'

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'

/** A file's text, what it was written in, and what is to be said of it; an error among the problems means it is no text. */
export type DecodedText = {
  readonly text: string
  readonly encoding: Encoding
  readonly problems: readonly Problem[]
}

/** Bytes looked at for the zeros that Latin letters leave in UTF-16. */
const lookedAt = 4096
/** Latin text in UTF-16 has nearly half zeros, all on one side; other text has none. */
const zeroShare = 0.3

/**
 * Bytes to text without being told the encoding: a byte order mark settles it; else zeros on one side of each pair mean
 * UTF-16, sound sequences UTF-8 (RFC 3629), and anything else is taken for Windows-1252, as older spreadsheets write it.
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return fromUtf8(bytes.subarray(3), true)
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return fromUtf16(bytes.subarray(2), 'utf-16le', [])
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return fromUtf16(bytes.subarray(2), 'utf-16be', [])
  const pairs = pairOrder(bytes)
  return pairs === null ? fromUtf8(bytes, false) : fromUtf16(bytes, pairs, [guessed(pairs)])
}

/** The same where somebody says what the bytes are written in. */
export function decodeAs(bytes: Uint8Array, encoding: Encoding): DecodedText {
  switch (encoding) {
    case 'utf-8':
      return fromUtf8(bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes, true)
    case 'windows-1252':
      return { ...fromWindows(bytes), problems: [] }
    case 'utf-16le':
    case 'utf-16be': {
      const isMarked =
        bytes[0] === (encoding === 'utf-16le' ? 0xff : 0xfe) && bytes[1] === (encoding === 'utf-16le' ? 0xfe : 0xff)
      return fromUtf16(isMarked ? bytes.subarray(2) : bytes, encoding, [])
    }
    default:
      return encoding satisfies never
  }
}

function pairOrder(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const count = Math.floor(Math.min(bytes.length, lookedAt) / 2)
  const zeros = [0, 0]
  for (let i = 0; i < 2 * count; i += 1) if (bytes[i] === 0) zeros[i % 2]! += 1
  const [even = 0, odd = 0] = zeros.map(each => each / count)
  if (count === 0 || Math.min(even, odd) > zeroShare / 3) return null
  if (odd > zeroShare) return 'utf-16le'
  return even > zeroShare ? 'utf-16be' : null
}

const encodingNames: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
}

function guessed(encoding: Encoding): Problem {
  return { code: 'text-encoding', severity: 'note', at: '', values: { encoding: encodingNames[encoding] } }
}

function broken(count: number, encoding: Encoding): readonly Problem[] {
  if (count === 0) return []
  return [{ code: 'text-broken', severity: 'warning', at: '', values: { count, encoding: encodingNames[encoding] } }]
}

/** Text never holds the character 0; pictures, archives and programs nearly always do. */
function finished(text: string, encoding: Encoding, problems: readonly Problem[]): DecodedText {
  if (!text.includes('\u0000')) return { text, encoding, problems }
  return { text, encoding, problems: [{ code: 'text-binary', severity: 'error', at: '', values: {} }, ...problems] }
}

function fromUtf16(bytes: Uint8Array, encoding: 'utf-16le' | 'utf-16be', problems: readonly Problem[]): DecodedText {
  const out = units()
  const high = encoding === 'utf-16le' ? 1 : 0
  let faults = bytes.length % 2
  let isPairOpen = false
  for (let i = 0; i + 1 < bytes.length; i += 2) {
    const unit = (bytes[i + high]! << 8) | bytes[i + 1 - high]!
    const isLow = unit >= 0xdc00 && unit <= 0xdfff
    if (isLow !== isPairOpen) faults += 1
    isPairOpen = unit >= 0xd800 && unit <= 0xdbff
    out.add(unit)
  }
  if (isPairOpen) faults += 1
  return finished(out.text().replace(/\p{Surrogate}/gu, '\uFFFD'), encoding, [...problems, ...broken(faults, encoding)])
}

/** Of the bytes 80 to 9F, in which it differs from ISO 8859-1 (the WHATWG's index of windows-1252). */
const windows = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ'

function fromWindows(bytes: Uint8Array): DecodedText {
  const out = units()
  for (const byte of bytes) out.add(byte >= 0x80 && byte < 0xa0 ? windows.charCodeAt(byte - 0x80) : byte)
  return finished(out.text(), 'windows-1252', [guessed('windows-1252')])
}

function fromUtf8(bytes: Uint8Array, isMarked: boolean): DecodedText {
  const out = units()
  let faults = 0
  let sound = 0
  for (let i = 0; i < bytes.length; ) {
    const first = bytes[i]!
    if (first < 0x80) {
      let end = i + 1
      while (end < bytes.length && bytes[end]! < 0x80) end += 1
      out.addLatin(bytes, i, end)
      i = end
      continue
    }
    const point = sequenceAt(bytes, i)
    if (point === null) {
      faults += 1
      out.add(0xfffd)
      i += 1
      continue
    }
    sound += 1
    if (point < 0x10000) out.add(point)
    else {
      out.add(0xd800 + ((point - 0x10000) >> 10))
      out.add(0xdc00 + ((point - 0x10000) & 0x3ff))
    }
    i += point < 0x800 ? 2 : point < 0x10000 ? 3 : 4
  }
  // In text of one byte a letter, hardly any two letters in a row happen to be a sound sequence.
  if (faults > 0 && !isMarked && sound < faults) return fromWindows(bytes)
  return finished(out.text(), 'utf-8', broken(faults, 'utf-8'))
}

/** The code point of a sequence of several bytes; null where it is none (RFC 3629, section 3). */
function sequenceAt(bytes: Uint8Array, at: number): number | null {
  const first = bytes[at]!
  const length = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : 2
  if (first < 0xc2 || first > 0xf4 || at + length > bytes.length) return null
  let point = first & (0xff >> (length + 1))
  for (let i = 1; i < length; i += 1) {
    const next = bytes[at + i]!
    if (next >> 6 !== 0b10) return null
    point = (point << 6) | (next & 0x3f)
  }
  const least = [0x80, 0x800, 0x10000][length - 2]!
  const isHalf = point >= 0xd800 && point <= 0xdfff
  return point < least || point > 0x10ffff || isHalf ? null : point
}

/** Gathers UTF-16 units; text is made of many at a time, since one by one takes far longer. */
function units(): {
  add(unit: number): void
  /** All bytes of a stretch, each a letter by itself. */
  addLatin(bytes: Uint8Array, from: number, to: number): void
  text(): string
} {
  const buffer = new Uint16Array(8192)
  const parts: string[] = []
  let filled = 0
  const flush = () => {
    if (filled > 0) parts.push(lettersOf(buffer.subarray(0, filled)))
    filled = 0
  }
  return {
    add(unit) {
      if (filled === buffer.length) flush()
      buffer[filled] = unit
      filled += 1
    },
    addLatin(bytes, from, to) {
      if (to - from > buffer.length - filled) flush()
      if (to - from <= buffer.length) {
        buffer.set(bytes.subarray(from, to), filled)
        filled += to - from
        return
      }
      for (let at = from; at < to; at += buffer.length)
        parts.push(lettersOf(bytes.subarray(at, Math.min(to, at + buffer.length))))
    },
    text() {
      flush()
      return parts.join('')
    },
  }
}

function lettersOf(codes: Uint8Array | Uint16Array): string {
  // Spread out one by one they would take several times as long; the call takes any list of numbers.
  return String.fromCharCode.apply(null, codes as unknown as number[])
}
