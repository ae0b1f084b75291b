import type { Outcome } from '../problem'
import { decodeText } from './encoding'
import { readKml } from './from-kml'
import { type Import, type ImportOptions, refused, writtenIn } from './import'
import { mostUnpacked, unpackKml } from './unpack-kml'

/** Reads KMZ: the first KML file of a zip archive, and those beside it that it points to. */
export function readKmz(bytes: Uint8Array, options: ImportOptions = {}): Outcome<Import> {
  const { files, isFound, isLarge, isBroken } = unpackKml(bytes, 'first')
  const [[own, first] = ['', undefined]] = files
  if (isLarge) return refused('import-zip-large', { limit: mostUnpacked / 1e6 })
  if (isBroken || (isFound && first === undefined)) return refused('import-zip-broken', {})
  if (first === undefined) return refused('import-zip-no-kml', {})
  const { text, encoding, problems } = decodeText(first)
  if (problems.some(({ severity }) => severity === 'error')) return { ok: false, problems }
  const outcome = writtenIn(readKml(text, options, { own, textOf: othersIn(bytes) }), encoding, 'KMZ')
  return { ...outcome, problems: [...problems, ...outcome.problems] }
}

/** The texts of an archive's files by their paths; all are unpacked once one is asked for. */
function othersIn(bytes: Uint8Array): (path: string) => string | null {
  let files: ReadonlyMap<string, Uint8Array> | null = null
  return path => {
    files ??= unpackKml(bytes, 'all').files
    const file = files.get(path)
    if (file === undefined) return null
    const { text, problems } = decodeText(file)
    return problems.some(({ severity }) => severity === 'error') ? null : text
  }
}
