import { readFile as readBytes } from 'node:fs/promises'
import { oneLine } from '#geo/wording/plain'
import type { ReadFile } from './run'

/** Reads a file, or standard input for `-`, as UTF-8; a byte order mark is dropped. */
export const readFile: ReadFile = async name => {
  const shown = name === '-' ? 'standard input' : `“${oneLine(name)}”`
  try {
    const bytes = name === '-' ? await standardInput() : await readBytes(name)
    return { text: new TextDecoder('utf-8').decode(bytes) }
  } catch (error) {
    return { fault: `${shown} cannot be read: ${reason(error)}` }
  }
}

async function standardInput(): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  for await (const chunk of process.stdin) chunks.push(chunk)
  return Buffer.concat(chunks)
}

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : ''
  switch (code) {
    case 'ENOENT':
      return 'there is no such file.'
    case 'EISDIR':
      return 'it is a folder, not a plan file.'
    case 'EACCES':
    case 'EPERM':
      return 'this user may not read it.'
    default:
      return error instanceof Error ? `${error.message}.` : String(error)
  }
}
