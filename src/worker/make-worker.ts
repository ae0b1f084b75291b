import { wrap } from 'comlink'
import { type KeepingApi, tellingChanges } from './kept-plan'
import type { EnginePort } from './protocol'

/** Starts one engine worker in the browser. */
export function makeWorker(onFailure: (reason: string) => void): EnginePort {
  const worker = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module', name: 'engine' })
  worker.addEventListener('error', event => onFailure(event.message || 'the calculation could not be started'))
  worker.addEventListener('messageerror', () => onFailure('an answer could not be read'))
  return { api: tellingChanges(wrap<KeepingApi>(worker)), terminate: () => worker.terminate() }
}
