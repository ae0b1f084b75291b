import { writeFile as writeText } from 'node:fs/promises'
import { oneLine } from '#geo/wording/plain'
import type { WriteFile } from './run'

/** Writes a file, over one that is there. */
export const writeFile: WriteFile = async (name, text) => {
  try {
    await writeText(name, text)
    return { fault: null }
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    return { fault: `“${oneLine(name)}” cannot be written: ${oneLine(reason)}.` }
  }
}
