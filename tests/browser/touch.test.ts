import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { goTo, ground, orchardCoverage, panel, type Spot, spotOn, startPlan, takeTool } from '../support/browser-app'

const browser = withBrowser()
const phone = { width: 390, height: 844, hasTouch: true } as const

/** One finger put down, led along and lifted. */
async function pull(page: Page, from: Spot, to: Spot): Promise<void> {
  const session = await page.context().newCDPSession(page)
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: readonly Spot[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: at.map(({ x, y }) => ({ x, y })) })
  await send('touchStart', [from])
  for (let step = 1; step <= 10; step += 1) {
    const share = step / 10
    await send('touchMove', [{ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }])
  }
  await send('touchEnd', [])
}

test('the whole job with one finger on a phone', async () => {
  const { page } = await browser.open(phone)
  await startPlan(page, 'Pocket field')
  await takeTool(page, 'Row')
  for (const [x, y] of [
    [0.5, 0.2],
    [0.5, 0.8],
  ] as const) {
    const spot = await spotOn(page, x, y)
    await page.touchscreen.tap(spot.x, spot.y)
  }
  await page.getByRole('button', { name: 'Finish' }).tap()
  await panel(page).getByRole('region', { name: 'Selected: Row 1' }).waitFor()
  await takeTool(page, 'Nest station')
  const place = await spotOn(page, 0.7, 0.5)
  await page.touchscreen.tap(place.x, place.y)
  await panel(page).getByRole('region', { name: 'Selected: Nest station 1' }).waitFor()
  await goTo(page, 'Bloom and flight')
  await page.getByRole('button', { name: /^Fill in \d+ bloom/ }).tap()
  await page.getByRole('button', { name: 'Add a batch of cocoons' }).first().tap()
  const field = page.getByRole('textbox', { name: 'Female cocoons' }).first()
  await field.fill('60')
  await field.press('Enter')
  await goTo(page, 'Coverage')
  await orchardCoverage(page).waitFor()
})

test('a finger on a station moves the station, a finger beside it moves the map', async () => {
  const { page } = await browser.open(phone)
  await startPlan(page, 'Pocket field')
  await takeTool(page, 'Nest station')
  const place = await spotOn(page, 0.5, 0.5)
  await page.touchscreen.tap(place.x, place.y)
  const undo = page.getByRole('button', { name: /^Undo/ })
  await pull(page, place, await spotOn(page, 0.7, 0.3))
  await expect.poll(() => undo.textContent(), soon).toMatch(/[Mm]ove/)
  const before = await undo.textContent()
  await pull(page, await spotOn(page, 0.2, 0.8), await spotOn(page, 0.4, 0.6))
  expect(await undo.textContent()).toBe(before)
})

test('nothing on a phone needs more width than it has', async () => {
  const { page } = await browser.open(phone)
  const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(await overflow()).toBeLessThanOrEqual(0)
  await startPlan(page, 'Pocket field')
  for (const name of ['Ground', 'Bloom and flight', 'Coverage'] as const) {
    await goTo(page, name)
    expect(await overflow(), name).toBeLessThanOrEqual(0)
  }
  const box = await ground(page).boundingBox()
  expect(box?.height).toBeGreaterThan(150)
})

test('what a finger has to hit is large enough', async () => {
  const { page } = await browser.open(phone)
  await startPlan(page, 'Pocket field')
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('button, select, summary, input:not([type=radio]):not([type=checkbox])')]
      .map(element => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
      .map(
        ({ element, box }) => `${element.outerHTML.slice(0, 80)} ${Math.round(box.width)}x${Math.round(box.height)}`,
      ),
  )
  expect(small).toEqual([])
})
