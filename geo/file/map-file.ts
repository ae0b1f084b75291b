import type { Outcome } from '../problem'
import { decodeText } from './encoding'
import { readForeignGeoJson } from './from-geojson'
import { readGpx } from './from-gpx'
import { readKml } from './from-kml'
import { type Import, type ImportOptions, refused, writtenIn } from './import'
import { readKmz } from './kmz'
import { mostUnpacked } from './unpack-kml'

/** Bytes; larger files would stall the page for seconds. */
export const largestImport = mostUnpacked

/** Reads GPX, KML, KMZ or GeoJSON by what the file holds, whatever it is called. */
export function readMapFile(bytes: Uint8Array, options: ImportOptions = {}): Outcome<Import> {
  if (bytes.length > largestImport) {
    return refused('import-too-large', { megabytes: Math.ceil(bytes.length / 1e6), limit: largestImport / 1e6 })
  }
  // Every zip archive begins with these two letters.
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return readKmz(bytes, options)
  const { text, encoding, problems } = decodeText(bytes)
  if (problems.some(({ severity }) => severity === 'error')) return { ok: false, problems }
  const read = readerOf(text)
  if (read === null) return refused('import-unknown', {}, problems)
  const outcome = writtenIn(read(text, options), encoding)
  return { ...outcome, problems: [...problems, ...outcome.problems] }
}

function readerOf(text: string): ((text: string, options: ImportOptions) => Outcome<Import>) | null {
  const start = text.trimStart()
  if (start.startsWith('{') || start.startsWith('[')) return readForeignGeoJson
  if (!start.startsWith('<')) return null
  // The root stands behind what a file begins with; a document type there is refused by either reader.
  return /<(\w+:)?kml[\s>]/.test(start.slice(0, 10_000)) ? readKml : readGpx
}
