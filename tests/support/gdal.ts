import { execFile, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'

const run = promisify(execFile)

/** Whether GDAL's command line is on this machine (Debian: gdal-bin). */
export const hasGdal = ['ogrinfo', 'ogr2ogr'].every(command => spawnSync(command, ['--version']).status === 0)

/** A thing as the reader has it: its fields, and its positions to nine decimals without heights. */
export type Seen = {
  readonly properties: Readonly<Record<string, unknown>>
  readonly type: string
  readonly coordinates: unknown
}

async function withFile<T>(name: string, content: string | Uint8Array, use: (path: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'general-reader-'))
  try {
    writeFileSync(join(folder, name), content)
    return await use(join(folder, name))
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Everything that `ogr2ogr` finds in a file, layer by layer. */
export function seenBy(
  name: string,
  content: string | Uint8Array,
  options: readonly string[] = [],
): Promise<readonly Seen[]> {
  return withFile(name, content, async path => {
    const to = ['-f', 'GeoJSONSeq', '-lco', 'COORDINATE_PRECISION=15', '/vsistdout/', path]
    const { stdout } = await run('ogr2ogr', [...to, ...options], { maxBuffer: 1e8 })
    const lines = stdout.split('\n').filter(line => line.trim() !== '')
    return lines.map((line): Seen => {
      const { properties, geometry } = JSON.parse(line)
      return { properties, type: geometry.type, coordinates: rounded(geometry.coordinates) }
    })
  })
}

/** Names of a file's layers, as `ogrinfo` lists them. */
export function layersOf(name: string, content: string | Uint8Array): Promise<readonly string[]> {
  return withFile(name, content, async path => {
    const { stdout } = await run('ogrinfo', ['-q', path])
    return [...stdout.matchAll(/^\d+: (.*?)(?: \([\w ]+\))?$/gm)].map(match => match[1]!)
  })
}

/** The bytes of the file that `ogr2ogr` makes of another with its writer `format`. */
export function madeBy(format: string, ending: string, name: string, content: string): Promise<Uint8Array> {
  return withFile(name, content, async path => {
    await run('ogr2ogr', ['-f', format, `${path}.${ending}`, path])
    return new Uint8Array(readFileSync(`${path}.${ending}`))
  })
}

/** Positions to nine decimals, as a plan keeps them, without heights. */
export function rounded(coordinates: unknown): unknown {
  if (!Array.isArray(coordinates)) return coordinates
  return typeof coordinates[0] === 'number'
    ? coordinates.slice(0, 2).map(part => Number(part.toFixed(9)) + 0)
    : coordinates.map(rounded)
}
