import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { openSample } from '../support/browser-app'

const { open } = withBrowser()

async function openCompare(page: Page, sample: RegExp): Promise<void> {
  await openSample(page, sample)
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Years' }).click()
  await page.getByRole('button', { name: /^One year beside the next/ }).click()
  await page.getByRole('heading', { name: 'Why it changed' }).waitFor()
}

const maps = (page: Page) => page.locator('.map')

describe('one year beside the next', () => {
  it('says what most of the change came from', async () => {
    const { page } = await open()
    await openCompare(page, /mixed orchard/)
    await page
      .getByText(/^Coverage as planned rose from 45% in 2024 to 57% in 2025; most of it from .*three batches/)
      .waitFor()
    await page.getByText(/^What lies in reach of a station rose from 59% in 2024 to 99% in 2025/).waitFor()
  })

  it('shows the change, and two maps that move together', async () => {
    const { page } = await open()
    await openCompare(page, /mixed orchard/)
    await page.getByLabel('Change from 2024 to 2025').check()
    await page.getByText('Legend', { exact: true }).click()
    await page.getByText('Gained 20 points or more').waitFor()
    await page.getByText('Legend', { exact: true }).click()
    await page.getByLabel('2024 and 2025 side by side').check()
    await expect.poll(() => maps(page).count(), soon).toBe(2)
    const [left, right] = [maps(page).nth(0), maps(page).nth(1)]
    const boxes = [(await left.boundingBox())!, (await right.boundingBox())!]
    expect(boxes[0]!.x + boxes[0]!.width).toBeLessThanOrEqual(boxes[1]!.x + 2)
    expect(Math.abs(boxes[0]!.width - boxes[1]!.width)).toBeLessThanOrEqual(4)
    const shift = (at: number) =>
      maps(page)
        .nth(at)
        .locator('.leaflet-map-pane')
        .evaluate(pane => getComputedStyle(pane).transform)
    const before = [await shift(0), await shift(1)]
    await page.mouse.move(boxes[0]!.x + 200, boxes[0]!.y + 300)
    await page.mouse.down()
    await page.mouse.move(boxes[0]!.x + 260, boxes[0]!.y + 330, { steps: 6 })
    await page.mouse.up()
    await expect.poll(() => shift(0), soon).not.toBe(before[0])
    await expect.poll(() => shift(1), soon).not.toBe(before[1])
    await page.getByLabel('Coverage in 2025').check()
    await expect.poll(() => maps(page).count(), soon).toBe(1)
  })

  it('on a phone lays one map above the other', async () => {
    const { page } = await open({ width: 390, height: 844, hasTouch: true })
    await openCompare(page, /farm with early and late blocks/)
    await page.getByText('2024 and 2025 side by side').tap()
    await expect.poll(() => maps(page).count(), soon).toBe(2)
    const [upper, lower] = [(await maps(page).nth(0).boundingBox())!, (await maps(page).nth(1).boundingBox())!]
    expect(upper.y + upper.height).toBeLessThanOrEqual(lower.y + 2)
    expect(Math.min(upper.height, lower.height)).toBeGreaterThan(120)
  })
})

it('the seasons to come are reckoned as a band', async () => {
  const { page } = await open()
  await openSample(page, /allotment/)
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Years' }).click()
  await page.getByRole('button', { name: /^The seasons to come/ }).click()
  await page.getByText(/^With cocoons taken in .* anything from under 1% to 82% of what is wanted in 2030\.$/).waitFor()
})
