import { Unzip, type UnzipFile, UnzipInflate } from 'fflate'
import type { Outcome } from '../problem'
import { decodeText } from './encoding'
import { readKml } from './from-kml'
import { type Import, type ImportOptions, refused, writtenIn } from './import'

/** Unpacked bytes; the text readers take no more. */
export const mostUnpacked = 20_000_000
/** Bytes unpacked at a time. Deflate makes at most 1032 bytes of one, so that not more than 4 MB come unasked. */
const step = 4096

/** Reads KMZ: the first KML file of a zip archive, unpacked little by little so that it can be broken off. */
export function readKmz(bytes: Uint8Array, options: ImportOptions = {}): Outcome<Import> {
  const unpacked = firstKml(bytes)
  if (!unpacked.ok) return unpacked
  const { text, encoding, problems } = decodeText(unpacked.value)
  if (problems.some(({ severity }) => severity === 'error')) return { ok: false, problems }
  const outcome = writtenIn(readKml(text, options), encoding, 'KMZ')
  return { ...outcome, problems: [...problems, ...outcome.problems] }
}

/** The bytes of the first file that ends in .kml, as the standard says (OGC 07-147r2, annex C). */
function firstKml(bytes: Uint8Array): Outcome<Uint8Array> {
  const chunks: Uint8Array[] = []
  let size = 0
  let isFound = false
  let isDone = false
  let isBroken = false
  const onFile = (file: UnzipFile) => {
    if (isFound || !/\.kml$/i.test(file.name)) return
    isFound = true
    file.ondata = (error, chunk, isLast) => {
      if (error !== null) isBroken = true
      else {
        chunks.push(chunk)
        size += chunk.length
        isDone = isLast
      }
    }
    file.start()
  }
  const unzip = new Unzip(onFile)
  unzip.register(UnzipInflate)
  try {
    for (let at = 0; at < bytes.length && size <= mostUnpacked && !isDone && !isBroken; at += step) {
      unzip.push(bytes.subarray(at, at + step), at + step >= bytes.length)
    }
  } catch {
    isBroken = true
  }
  if (size > mostUnpacked) return refused('import-zip-large', { limit: mostUnpacked / 1e6 })
  if (isBroken || (isFound && !isDone)) return refused('import-zip-broken', {})
  if (!isFound) return refused('import-zip-no-kml', {})
  const whole = new Uint8Array(size)
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return { ok: true, value: whole, problems: [] }
}
