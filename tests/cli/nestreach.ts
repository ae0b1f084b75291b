import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** The command line as `npm run build:cli` leaves it. */
export const built = fileURLToPath(new URL('../../dist-cli/nestreach.mjs', import.meta.url))

export function scenario(name: string): string {
  return fileURLToPath(new URL(`../../scenarios/${name}.plan.geojson`, import.meta.url))
}

export const scenarioNames = ['allotment', 'mixed-orchard', 'farm', 'providence-apples'] as const

export type Ended = { readonly exitCode: number | null; readonly out: string; readonly err: string }

/** Starts the built command line and waits for its end. */
export function nestreach(words: readonly string[], input: string | Uint8Array = ''): Ended {
  if (!existsSync(built)) throw new Error('There is no built command line to test: run npm run build:cli first.')
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [built, ...words], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  })
  if (error !== undefined) throw error
  return { exitCode: status, out: stdout, err: stderr }
}

/** The lines of a table under the line `head`, up to the next empty line. */
export function tableUnder(text: string, head: string): readonly string[] {
  const lines = text.split('\n')
  const start = lines.findIndex(line => line.startsWith(head)) + 1
  if (start === 0) throw new RangeError(`no line begins with ${head}`)
  const end = lines.indexOf('', start)
  return lines.slice(start, end < 0 ? undefined : end)
}
