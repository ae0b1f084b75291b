import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { map, openSample } from '../support/browser-app'

const browser = withBrowser()

/** One grey pixel. */
const picture = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
)

async function chooseStreetMap(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click()
  await page.getByRole('button', { name: 'Ground of the map' }).click()
  await page.getByRole('radio', { name: /^OpenStreetMap/ }).check()
  await page.getByRole('button', { name: 'Use this ground' }).click()
}

test('a street map is fetched only once it is chosen, from its own server alone, and named', async () => {
  const { page } = await browser.open()
  const asked: string[] = []
  await page.route('https://tile.openstreetmap.org/**', route => {
    asked.push(new URL(route.request().url()).pathname)
    return route.fulfill({ contentType: 'image/png', body: picture })
  })
  await openSample(page, /^Sample B/)
  await page.waitForLoadState('networkidle')
  expect(asked).toEqual([])
  await chooseStreetMap(page)
  await map(page)
    .getByText(/OpenStreetMap/)
    .waitFor()
  await expect.poll(() => asked.length, soon).toBeGreaterThan(3)
  for (const path of asked) expect(path).toMatch(/^\/\d+\/\d+\/\d+\.png$/)
})

test('without a network the map says so and goes on', async () => {
  const visit = await browser.open()
  const { page } = visit
  await openSample(page, /^Sample B/)
  await chooseStreetMap(page)
  await page.getByText(/No map tiles here now/).waitFor()
  await page.getByRole('toolbar').getByRole('button', { name: 'Mud', exact: true }).click()
  const box = await map(page).boundingBox()
  await page.mouse.click(box!.x + 300, box!.y + 300)
  await page.getByRole('region', { name: /^Selected: Mud/ }).waitFor()
  expect(visit.elsewhere.splice(0).every(url => url.startsWith('https://tile.openstreetmap.org/'))).toBe(true)
  // The browser itself notes each picture that did not come.
  expect(visit.faults.splice(0).filter(fault => !fault.includes('ERR_FAILED'))).toEqual([])
})
