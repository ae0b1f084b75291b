import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { openSample } from '../support/browser-app'

const { open } = withBrowser()

const slider = (page: Page) => page.getByRole('slider', { name: 'Day of the season' })
const strip = (page: Page) => page.getByRole('region', { name: 'Bloom and flight over the season' })
const spoken = (page: Page) => slider(page).getAttribute('aria-valuetext')
const brought = /The bees bring \d+% of what the open flowers want\./

/** Days are pulled through from share `from` of the strip's width to share `to`. */
async function pull(page: Page, from: number, to: number): Promise<void> {
  const box = (await slider(page).boundingBox())!
  const y = box.y + box.height / 2
  await page.mouse.move(box.x + from * box.width, y)
  await page.mouse.down()
  for (let i = 1; i <= 20; i += 1) await page.mouse.move(box.x + (from + ((to - from) * i) / 20) * box.width, y)
  await page.mouse.up()
}

describe('the season', () => {
  it('is pulled through day by day and played, the map and the words following; its table has the same figures', async () => {
    const { page } = await open()
    await openSample(page, /farm with early and late blocks/)
    await pull(page, 0.25, 0.4)
    await expect.poll(() => spoken(page), soon).toMatch(/ April 2025: .*open.*females at work\.$/)
    await strip(page).getByText(brought).waitFor()
    const before = Number(await slider(page).getAttribute('aria-valuenow'))
    await strip(page).getByRole('button', { name: 'Play' }).click()
    await expect
      .poll(async () => Number(await slider(page).getAttribute('aria-valuenow')), soon)
      .toBeGreaterThan(before + 1)
    await strip(page).getByRole('button', { name: 'Pause' }).click()
    await slider(page).press('ArrowLeft')
    await strip(page).getByText(brought).waitFor()
    const [date, words] = (await spoken(page))!.split(': ')
    await page.getByText('Legend', { exact: true }).click()
    await page.getByText('Shade plants by the work of the day').waitFor()
    await strip(page).getByRole('button', { name: 'Table' }).click()
    const sheet = page.getByRole('dialog', { name: /^Season 2025/ })
    await sheet.getByRole('heading', { name: `Who works where on ${date}` }).waitFor()
    const females = /about ([\d,]+) females at work/.exec(words!)![1]!
    await sheet.getByRole('row', { name: new RegExp(`^${date} .* ${females}$`) }).waitFor()
    await sheet.getByRole('button', { name: 'Close' }).click()
    await strip(page).getByRole('button', { name: 'Whole season' }).click()
    await page.getByText('Shade plants by coverage').waitFor()
  })

  it('is chosen by touch on a phone, with targets large enough', async () => {
    const { page } = await open({ width: 390, height: 844, hasTouch: true })
    await openSample(page, /mixed orchard/)
    await strip(page).getByRole('button', { name: 'Unfold the season' }).tap()
    const box = (await slider(page).boundingBox())!
    await page.touchscreen.tap(box.x + 0.5 * box.width, box.y + box.height / 2)
    await strip(page).getByText(brought).waitFor()
    for (const button of await strip(page).getByRole('button').all()) {
      const { width, height } = (await button.boundingBox())!
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(44)
    }
    const map = (await page.getByRole('main', { name: 'Map' }).boundingBox())!
    expect(map.height).toBeGreaterThan(180)
  })
})
