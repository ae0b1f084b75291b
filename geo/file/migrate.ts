/** A file's content as JSON gives it, before its shape is known. */
export type Stored = Readonly<Record<string, unknown>>

/** One step: a file of version `from` becomes one of version `from + 1`. */
export type Migration = { readonly from: number; upgrade(stored: Stored): Stored }

/** Every step there has been, oldest first. Version 1 is the first format, so there is none yet. */
export const migrations: readonly Migration[] = []

/** The stored file as version `to` has it; `version` must be at most `to`. */
export function migrate(stored: Stored, version: number, to: number, steps = migrations): Stored {
  let result = stored
  for (let at = version; at < to; at += 1) {
    const step = steps.find(({ from }) => from === at)
    if (step === undefined) throw new RangeError(`no step from version ${at} of the plan file`)
    result = step.upgrade(result)
  }
  return result
}
