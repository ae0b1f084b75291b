import type { AsyncEngineApi, MakePort } from './protocol'

type Call<K extends keyof AsyncEngineApi> = AsyncEngineApi[K]

/** Reads files of other programs away from the page, so that none of them can hold it up. What was read stays there. */
export type ImportReader = {
  readonly open: Call<'openImport'>
  readonly rewrite: Call<'rewriteImport'>
  readonly readTable: Call<'readImportTable'>
  readonly shapes: Call<'importShapes'>
  readonly things: Call<'importThings'>
  /** Ends what is under way; it is never answered. */
  stop(): void
}

/** A reader with a worker of its own, made when first asked: coverage goes on meanwhile, and a hostile file ends with it. */
export function createImportReader(makePort: MakePort): ImportReader {
  let port: ReturnType<MakePort> | null = null
  const failing = new Set<(error: Error) => void>()
  const stop = (): void => {
    port?.terminate()
    port = null
    failing.clear()
  }
  const ask = <T>(call: (api: AsyncEngineApi) => Promise<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      failing.add(reject)
      port ??= makePort(reason => {
        const left = [...failing]
        stop()
        for (const fail of left) fail(new Error(reason))
      })
      call(port.api)
        .then(resolve, reject)
        .finally(() => failing.delete(reject))
    })
  return {
    open: (...input) => ask(api => api.openImport(...input)),
    rewrite: (...input) => ask(api => api.rewriteImport(...input)),
    readTable: (...input) => ask(api => api.readImportTable(...input)),
    shapes: (...input) => ask(api => api.importShapes(...input)),
    things: (...input) => ask(api => api.importThings(...input)),
    stop,
  }
}
