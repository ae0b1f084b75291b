import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { withBrowser } from '../support/browser'
import { goTo, map, openSample, orchardCoverage, panel } from '../support/browser-app'
import { violations } from '../support/browser-axe'

const browser = withBrowser()

async function openBoxes(page: Page): Promise<void> {
  await openSample(page, /^Sample B/)
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2024')
  await goTo(page, 'More boxes')
}

async function look(page: Page): Promise<void> {
  await panel(page).getByRole('button', { name: 'Look for places' }).click()
  await panel(page).getByRole('heading', { name: 'How good is that?' }).waitFor()
}

/** Coverage of the orchard as the page Coverage gives it, percent, once it answers the plan as it is. */
async function coverage(page: Page): Promise<number> {
  await goTo(page, 'Coverage')
  await page.locator('.page [aria-busy="false"]').waitFor()
  return Number(/(\d+)%/.exec((await orchardCoverage(page).textContent()) ?? '')?.[1])
}

test('two more stations: asked for, answered, accepted, and taken back by one undo', async () => {
  const { page, elsewhere } = await browser.open()
  await openBoxes(page)
  const before = await coverage(page)
  await goTo(page, 'More boxes')
  await look(page)
  const lead = (await panel(page).locator('.lead').textContent()) ?? ''
  expect(lead).toMatch(/^Two more stations lift coverage from about \d+% to \d+%/)
  const promised = Number(/to (\d+)%/.exec(lead)?.[1])
  await panel(page).getByRole('button', { name: 'Accept all' }).click()
  await page.getByText('2 stations added. One press of Undo takes all of it back.').waitFor()
  expect(await coverage(page)).toBe(promised)
  expect(promised).toBeGreaterThan(before)
  await page.getByRole('button', { name: /^Undo: accept 2 suggested stations/ }).click()
  await expect.poll(() => coverage(page)).toBe(before)
  expect(elsewhere).toEqual([])
})

test('the answer is proven by the solver in the page, and the proof can be stopped', async () => {
  const { page } = await browser.open()
  await openBoxes(page)
  await page.getByRole('textbox', { name: 'Stations to add' }).fill('1')
  await look(page)
  const proof = panel(page).getByText(/^Proven: of all choices among/)
  if (!(await proof.isVisible())) {
    await panel(page).getByRole('button', { name: 'Prove it' }).click()
    await proof.waitFor({ timeout: 60_000 })
  }
  await page.getByRole('textbox', { name: 'Stations to add' }).fill('6')
  await look(page)
  await panel(page)
    .getByText(/^Six more stations/)
    .waitFor()
  const prove = panel(page).getByRole('button', { name: 'Prove it' })
  if (await prove.isVisible()) {
    await prove.click()
    await panel(page).getByRole('button', { name: 'Stop, and keep what is known' }).click()
    await panel(page).getByRole('button', { name: 'Accept all' }).waitFor()
  }
})

test('a search that is stopped keeps the best so far', async () => {
  const { page } = await browser.open()
  await openBoxes(page)
  await page.getByRole('textbox', { name: 'Stations to add' }).fill('12')
  await panel(page).getByRole('button', { name: 'Look for places' }).click()
  await panel(page).getByText('Best so far').waitFor()
  // The best answer is told along with the words of progress, at most twice a second.
  await page.waitForTimeout(1200)
  const stop = panel(page).getByRole('button', { name: 'Stop', exact: true })
  if (await stop.isVisible()) await stop.click()
  await panel(page)
    .getByText(/^Twelve more stations|^12 more stations/)
    .waitFor()
  expect(await panel(page).getByRole('progressbar').count()).toBe(0)
  await panel(page).getByRole('button', { name: 'Accept all' }).click()
  await page.getByText('12 stations added. One press of Undo takes all of it back.').waitFor()
})

test('the solver works without a network, too', async () => {
  const { page } = await browser.open()
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await openBoxes(page)
  await look(page)
  await page.context().setOffline(true)
  await panel(page).getByRole('button', { name: 'Prove it' }).click()
  await panel(page)
    .getByText(/^Proven: of all choices among/)
    .waitFor({ timeout: 60_000 })
})

test('a suggested station is pulled over the map, and what that costs is told', async () => {
  const { page } = await browser.open()
  await openBoxes(page)
  await look(page)
  await panel(page).getByRole('button', { name: 'Nest station 5', exact: true }).click()
  const place = panel(page).getByRole('textbox', { name: 'Place of Nest station 5' })
  const suggested = await place.inputValue()
  const box = (await map(page).boundingBox())!
  // Typed to where it can be found again: the middle of the grid, which is in the middle of the map.
  await place.fill('0, 0')
  await place.press('Enter')
  await panel(page)
    .getByText(/^With your changes about/)
    .waitFor()
  const middle = await middleOfGrid(page)
  await page.mouse.move(box.x + middle.x, box.y + middle.y)
  await page.mouse.down()
  await page.mouse.move(box.x + middle.x + 60, box.y + middle.y + 40, { steps: 6 })
  await page.mouse.up()
  await expect.poll(() => place.inputValue()).not.toMatch(/^0(\.0+)?, -?0/)
  await panel(page)
    .getByText(/points? (less|more) than suggested|no difference/)
    .waitFor()
  await panel(page).getByRole('button', { name: 'Put it back where it was suggested' }).click()
  expect(await place.inputValue()).toBe(suggested)
})

/** Where the middle of the grid lies in the map, pixels: the plan fills the room beside the tools. */
async function middleOfGrid(page: Page): Promise<{ readonly x: number; readonly y: number }> {
  const size = await map(page).evaluate(element => ({ x: element.clientWidth, y: element.clientHeight }))
  return { x: (70 + size.x - 210) / 2, y: size.y / 2 }
}

test('the fewest cocoons for stations that stay', async () => {
  const { page } = await browser.open()
  await openBoxes(page)
  await page.getByRole('combobox', { name: 'What is asked' }).selectOption('Stations stay: fewest cocoons')
  await page.getByRole('textbox', { name: 'Coverage wanted, percent' }).fill('40')
  await panel(page).getByRole('button', { name: 'Work out the cocoons' }).click()
  await panel(page).getByRole('heading', { name: 'Cocoons for each station' }).waitFor()
  expect(await violations(page)).toEqual([])
  await panel(page).getByRole('button', { name: 'Accept these cocoons' }).click()
  await page.getByRole('button', { name: /^Undo: accept the suggested stock/ }).click()
})

test.each([
  { name: 'wide', options: { width: 1280, height: 800 } },
  { name: 'phone', options: { width: 390, height: 844, hasTouch: true } },
])('the page fits, and axe finds nothing: $name', async ({ options }) => {
  const { page } = await browser.open(options)
  await openBoxes(page)
  expect(await violations(page), 'question').toEqual([])
  for (const summary of await panel(page).locator('.disclosure > summary').all()) await summary.click()
  expect(await violations(page), 'unfolded').toEqual([])
  await look(page)
  await panel(page).getByRole('button', { name: 'Nest station 5', exact: true }).click()
  await panel(page).getByRole('button', { name: 'Try one station, two, three and on' }).click()
  await panel(page)
    .getByRole('img', { name: /^Coverage by number of new stations/ })
    .waitFor()
  await panel(page)
    .getByText(/another one adds under a point|each one still adds a point or more/)
    .waitFor()
  expect(await violations(page), 'answer').toEqual([])
  const overflow = await page.evaluate(() => {
    const edge = document.querySelector('.panel')!.getBoundingClientRect().right + 1
    const wide = [...document.querySelectorAll('.panel-body *')].filter(
      element => element.getBoundingClientRect().right > edge && element.closest('.table-frame') === null,
    )
    return [document.documentElement.scrollWidth - innerWidth, ...wide.map(element => element.outerHTML.slice(0, 80))]
  })
  expect(overflow).toEqual([0])
})
