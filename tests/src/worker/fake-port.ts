import type { AsyncEngineApi, EnginePort } from '../../../src/worker/protocol'

export type Call = {
  readonly name: keyof AsyncEngineApi
  readonly input: readonly unknown[]
  /** Number of the worker that was asked, from 1. */
  readonly worker: number
  answer(value: unknown): Promise<void>
  fail(message: string): Promise<void>
}

/** Workers that answer when a test says so, and a list of all that they were asked. */
export function fakeWorkers() {
  const calls: Call[] = []
  const ended: number[] = []
  const failures: ((reason: string) => void)[] = []

  const makePort = (onFailure: (reason: string) => void): EnginePort => {
    const worker = failures.push(onFailure)
    const ask =
      (name: keyof AsyncEngineApi) =>
      (...input: unknown[]) =>
        new Promise<never>((resolve, reject) => {
          calls.push({
            name,
            input,
            worker,
            answer: value => settled(() => resolve(value as never)),
            fail: message => settled(() => reject(new Error(message))),
          })
        })
    const api = {
      evaluate: ask('evaluate'),
      moveStation: ask('moveStation'),
      day: ask('day'),
      cloud: ask('cloud'),
      ranges: ask('ranges'),
      tryPlan: ask('tryPlan'),
      suggest: ask('suggest'),
      stock: ask('stock'),
      compare: ask('compare'),
      project: ask('project'),
      yearRecord: ask('yearRecord'),
      releaseAdvice: ask('releaseAdvice'),
      typicalCoverage: ask('typicalCoverage'),
      curve: ask('curve'),
      openImport: ask('openImport'),
      rewriteImport: ask('rewriteImport'),
      readImportTable: ask('readImportTable'),
      importShapes: ask('importShapes'),
      importThings: ask('importThings'),
    }
    return { api, terminate: () => void ended.push(worker) }
  }

  return {
    makePort,
    calls,
    ended,
    /** The calls of one name, oldest first. */
    of: (name: Call['name']) => calls.filter(call => call.name === name),
    dies: (worker: number, reason: string) => failures[worker - 1]!(reason),
  }
}

/** Lets everything run that waits for an answer. */
export async function settled(act: () => void = () => {}): Promise<void> {
  act()
  for (let i = 0; i < 10; i += 1) await Promise.resolve()
}
