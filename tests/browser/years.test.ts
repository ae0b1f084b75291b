import { expect, test } from 'vitest'
import { withBrowser } from '../support/browser'
import { goTo, openSample, panel } from '../support/browser-app'

const browser = withBrowser()

test('a round with one thumb on a phone, and one look at what it says', async () => {
  const { page } = await browser.open({ width: 390, height: 844, hasTouch: true })
  await openSample(page, /allotment/i)
  await goTo(page, 'Years')
  await panel(page)
    .getByRole('button', { name: /^Next season/ })
    .tap()
  await page.getByRole('button', { name: 'Add the season' }).tap()
  await panel(page)
    .getByRole('button', { name: /^Station round/ })
    .tap()
  const other = panel(page).getByRole('button', { name: 'Other day' })
  // The clock decides whether a day has to be chosen.
  if (await other.isVisible()) await other.tap()
  await panel(page).getByLabel('Day of the round').fill('2026-05-20')
  const station = panel(page).getByRole('combobox', { name: 'Station' })
  const seen: string[] = []
  for (let at = 0; at < 5; at += 1) {
    seen.push(await station.inputValue())
    const more = panel(page).getByRole('button', { name: 'Ten more: Capped tubes' })
    await more.tap()
    const boxes = await Promise.all(
      [more, panel(page).getByRole('button', { name: /^Save/ })].map(button => button.boundingBox()),
    )
    for (const box of boxes) {
      expect(Math.min(box!.width, box!.height)).toBeGreaterThanOrEqual(48)
      expect(box!.y + box!.height).toBeLessThanOrEqual(844)
    }
    await panel(page).getByRole('button', { name: /^Save/ }).tap()
  }
  expect(new Set(seen).size).toBe(5)
  await panel(page).getByText('The round of 20 May 2026 is complete: 5 stations.').waitFor()
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0)
  await panel(page).getByRole('button', { name: 'Finish the round' }).tap()
  await panel(page).getByText('In 2026, 50 tubes were capped at the last count, at all 5 stations.').waitFor()
  await panel(page)
    .getByRole('button', { name: /Coverage as found/ })
    .waitFor()
})
