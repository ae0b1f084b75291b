import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest'

/** How a page is opened; what is left out is a wide window with a mouse in Britain. */
export type PageOptions = {
  readonly width?: number
  readonly height?: number
  readonly hasTouch?: boolean
  readonly locale?: string
  readonly timezone?: string
  readonly colorScheme?: 'light' | 'dark'
}

/** How long a page may take to show what a test waits for, ms: long enough for a machine with much else to do. */
const patience = 8_000

/** For `expect.poll`. */
export const soon = { timeout: patience }

/** A page of the app, and everything that went wrong on it. */
export type Visit = {
  readonly page: Page
  /** Errors of the page and requests that failed; a test with any of them fails. */
  readonly faults: string[]
  /** Addresses outside the app that the page asked for. They are cut off, and a test with any of them fails. */
  readonly elsewhere: string[]
}

const shots = fileURLToPath(new URL('../../node_modules/.cache/nestreach-shots/', import.meta.url))

/** The moment at which every page believes to be opened. */
export const today = '2026-04-01T12:00:00Z'

/**
 * A browser for the tests of one file. Each test opens its own pages, with storage of their own; afterwards they are
 * closed and looked through for faults.
 */
export function withBrowser(): { open(options?: PageOptions): Promise<Visit> } {
  let browser: Browser | undefined
  let contexts: { readonly context: BrowserContext; readonly visit: Visit }[] = []
  beforeAll(async () => {
    const { path, fonts } = inject('browser')
    const env = fonts === null ? process.env : { ...process.env, FONTCONFIG_FILE: fonts }
    browser = await chromium.launch({
      executablePath: path,
      args: ['--no-sandbox'],
      env: Object.fromEntries(
        Object.entries(env).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])),
      ),
    })
  })
  afterEach(async ({ task }) => {
    const opened = contexts
    contexts = []
    for (const [i, { context, visit }] of opened.entries()) {
      if (task.result?.state === 'fail') await shot(visit.page, `failed ${task.name} ${i + 1}`).catch(() => undefined)
      await context.close()
    }
    const told = opened.flatMap(({ visit }) => [
      ...visit.faults,
      ...visit.elsewhere.map(url => `asked another server: ${url}`),
    ])
    expect(told).toEqual([])
  })
  afterAll(async () => {
    await browser?.close()
  })
  return {
    async open(options = {}) {
      if (browser === undefined) throw new TypeError('a page can be opened only within a test')
      const context = await browser.newContext({
        viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
        hasTouch: options.hasTouch ?? false,
        isMobile: options.hasTouch ?? false,
        locale: options.locale ?? 'en-GB',
        timezoneId: options.timezone ?? 'Europe/London',
        colorScheme: options.colorScheme ?? 'light',
        acceptDownloads: true,
      })
      context.setDefaultTimeout(patience)
      const visit = await visitIn(context)
      contexts.push({ context, visit })
      await visit.page.goto(inject('appUrl'))
      return visit
    },
  }
}

async function visitIn(context: BrowserContext): Promise<Visit> {
  const home = new URL(inject('appUrl')).origin
  const faults: string[] = []
  const elsewhere: string[] = []
  await context.route(
    url => url.origin !== home && /^https?:$/.test(url.protocol),
    route => {
      elsewhere.push(route.request().url())
      return route.abort()
    },
  )
  const page = await context.newPage()
  await page.addInitScript(shiftClock, Date.parse(today))
  page.on('console', message => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`)
  })
  page.on('pageerror', error => faults.push(`uncaught: ${error.message}`))
  page.on('response', response => {
    if (response.status() >= 400) faults.push(`${response.status()}: ${response.url()}`)
  })
  page.on('requestfailed', request => {
    // A newer question ends the worker of the older, and leaving the page ends all: even such as are still being fetched.
    if (request.failure()?.errorText === 'net::ERR_ABORTED' && /\.worker-[^/]+\.js$/.test(request.url())) return
    if (request.url().startsWith(home)) faults.push(`${request.failure()?.errorText}: ${request.url()}`)
  })
  return { page, faults, elsewhere }
}

/** Lets the page's clock start at `start` and go on from there; timers and frames stay those of the browser. */
function shiftClock(start: number): void {
  const Real = Date
  const shift = start - Real.now()
  globalThis.Date = new Proxy(Real, {
    construct: (target, given) =>
      given.length === 0 ? new target(target.now() + shift) : Reflect.construct(target, given),
    get: (target, key) => (key === 'now' ? () => target.now() + shift : Reflect.get(target, key)),
  })
}

/** Keeps a picture of the page under node_modules/.cache/nestreach-shots. */
export async function shot(page: Page, name: string): Promise<void> {
  mkdirSync(shots, { recursive: true })
  await page.screenshot({ path: `${shots}${name.replace(/[^\w]+/g, '-').toLowerCase()}.png` })
}
