import type { AsyncEngineApi, MakePort } from './protocol'

/** Reads files of other programs away from the page, so that none of them can hold it up. */
export type ImportReader = {
  open(...input: Parameters<AsyncEngineApi['openImport']>): ReturnType<AsyncEngineApi['openImport']>
  readTable(...input: Parameters<AsyncEngineApi['readImportTable']>): ReturnType<AsyncEngineApi['readImportTable']>
  /** Ends what is under way; it is never answered. */
  stop(): void
}

/** A reader with a worker of its own, made when first asked: coverage goes on meanwhile, and a hostile file ends with it. */
export function createImportReader(makePort: MakePort): ImportReader {
  let port: ReturnType<MakePort> | null = null
  let fail: (error: Error) => void = () => {}
  const stop = (): void => {
    port?.terminate()
    port = null
  }
  const ask = <T>(call: (api: AsyncEngineApi) => Promise<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      fail = reject
      port ??= makePort(reason => {
        stop()
        fail(new Error(reason))
      })
      call(port.api).then(resolve, reject)
    })
  return {
    open: (...input) => ask(api => api.openImport(...input)),
    readTable: (...input) => ask(api => api.readImportTable(...input)),
    stop,
  }
}
