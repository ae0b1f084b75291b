import { Unzip, type UnzipFile, UnzipInflate } from 'fflate'

/** Unpacked bytes; the text readers take no more. */
export const mostUnpacked = 20_000_000
/** Bytes unpacked at a time. Deflate makes at most 1032 bytes of one, so that not more than 4 MB come unasked. */
const step = 4096

export type UnpackedKml = {
  /** Files that came out whole, by their paths in the archive, in its order. */
  readonly files: ReadonlyMap<string, Uint8Array>
  /** Whether one was begun, whole or not. */
  readonly isFound: boolean
  /** Whether they hold more than can be read; those until then are there. */
  readonly isLarge: boolean
  readonly isBroken: boolean
}

/**
 * The files of a zip archive that end in .kml, unpacked little by little so that it can be broken off: the first alone,
 * which is the one that counts (OGC 07-147r2, annex C), or all of them.
 */
export function unpackKml(bytes: Uint8Array, which: 'first' | 'all'): UnpackedKml {
  const files = new Map<string, Uint8Array>()
  let size = 0
  let isFound = false
  let isBroken = false
  const onFile = (file: UnzipFile) => {
    if ((isFound && which === 'first') || !/\.kml$/i.test(file.name)) return
    isFound = true
    const chunks: Uint8Array[] = []
    file.ondata = (error, chunk, isLast) => {
      if (error !== null) {
        isBroken = true
        return
      }
      chunks.push(chunk)
      size += chunk.length
      if (isLast) files.set(file.name, joined(chunks))
    }
    file.start()
  }
  const unzip = new Unzip(onFile)
  unzip.register(UnzipInflate)
  const isWanted = () => size <= mostUnpacked && !isBroken && (which === 'all' || files.size === 0)
  try {
    for (let at = 0; at < bytes.length && isWanted(); at += step) {
      unzip.push(bytes.subarray(at, at + step), at + step >= bytes.length)
    }
  } catch {
    isBroken = true
  }
  return { files, isFound, isLarge: size > mostUnpacked, isBroken }
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return whole
}
