import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { TestProject } from 'vitest/node'
import { type BrowserBinary, browserBinary } from './browser-binary'
import { serve } from './browser-server'

declare module 'vitest' {
  interface ProvidedContext {
    appUrl: string
    browser: BrowserBinary
  }
}

/** Before the browser tests: finds the browser and serves the built app. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = fileURLToPath(new URL('../../dist/', import.meta.url))
  if (!existsSync(`${folder}index.html`)) throw new Error('There is no built app to test: run npm run build first.')
  project.provide('browser', browserBinary())
  const { url, close } = await serve(folder)
  project.provide('appUrl', url)
  return close
}
