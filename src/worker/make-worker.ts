import { wrap } from 'comlink'
import type { EngineApi, EnginePort } from './protocol'

/** Starts one engine worker in the browser. */
export function makeWorker(onFailure: (reason: string) => void): EnginePort {
  const worker = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module', name: 'engine' })
  worker.addEventListener('error', event => onFailure(event.message || 'the calculation could not be started'))
  worker.addEventListener('messageerror', () => onFailure('an answer could not be read'))
  return { api: wrap<EngineApi>(worker), terminate: () => worker.terminate() }
}
