import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { soon, withBrowser } from '../support/browser'
import { goTo, orchardCoverage, panel, spotOn, startPlan, takeTool } from '../support/browser-app'

const browser = withBrowser()

/** A row drawn from top to bottom by mouse, and a station beside its middle. */
async function drawRowAndStation(page: Page): Promise<void> {
  await takeTool(page, 'Row')
  const from = await spotOn(page, 0.5, 0.3)
  const to = await spotOn(page, 0.5, 0.7)
  await page.mouse.click(from.x, from.y)
  await page.mouse.move(to.x, to.y, { steps: 5 })
  await page.mouse.dblclick(to.x, to.y)
  await panel(page).getByRole('region', { name: 'Selected: Row 1' }).waitFor()
  await takeTool(page, 'Nest station')
  const beside = await spotOn(page, 0.53, 0.5)
  await page.mouse.click(beside.x, beside.y)
  await panel(page)
    .getByRole('region', { name: /^Selected: Nest station/ })
    .waitFor()
}

async function setBloomAndBees(page: Page, cocoons: string): Promise<void> {
  await goTo(page, 'Bloom and flight')
  await page.getByRole('button', { name: /^Fill in \d+ bloom/ }).click()
  await page.getByRole('button', { name: 'Add a batch of cocoons' }).first().click()
  const field = page.getByRole('textbox', { name: 'Female cocoons' }).first()
  await field.fill(cocoons)
  await field.press('Enter')
}

test('from a new plan to coverage: draw, crop, bloom, station, cocoons, and how it was worked out', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Top field')
  await drawRowAndStation(page)
  await panel(page)
    .getByRole('button', { name: /^Row 1/ })
    .click()
  const selected = panel(page).getByRole('region', { name: 'Selected: Row 1' })
  await selected.getByRole('combobox', { name: 'Crop' }).selectOption({ label: 'European pear' })
  await selected.getByText('European pear').first().waitFor()

  await panel(page)
    .getByRole('button', { name: /^Nest station 1/ })
    .click()
  await setBloomAndBees(page, '60')
  await goTo(page, 'Coverage')
  const figure = orchardCoverage(page)
  await figure.waitFor()
  await figure.click()
  await page.getByRole('heading', { name: /how was this worked out/i }).waitFor()

  // Fewer bees, less coverage: the figure follows.
  const before = await figure.textContent()
  await goTo(page, 'Bloom and flight')
  const field = page.getByRole('textbox', { name: 'Female cocoons' }).first()
  await field.fill('10')
  await field.press('Enter')
  await goTo(page, 'Coverage')
  await expect.poll(() => figure.textContent(), soon).not.toBe(before)
})

test('undo and redo, one step at a time, each by name', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Top field')
  await drawRowAndStation(page)
  const undo = page.getByRole('button', { name: /^Undo/ })
  const redo = page.getByRole('button', { name: /^Redo/ })
  expect(await undo.textContent()).toMatch(/Nest station 1/)
  await undo.click()
  expect(await undo.textContent()).toMatch(/Row 1/)
  await expect
    .poll(() =>
      panel(page)
        .getByRole('button', { name: /^Nest station 1/ })
        .count(),
    )
    .toBe(0)
  await undo.click()
  expect(await undo.isDisabled()).toBe(true)
  await panel(page).getByText('Nothing is drawn yet.').waitFor()
  await redo.click()
  await redo.click()
  expect(await redo.isDisabled()).toBe(true)
  await panel(page)
    .getByRole('button', { name: /^Nest station 1/ })
    .waitFor()
})

test('a saved file holds the plan, and opens again as the same plan', async () => {
  const { page } = await browser.open()
  // Without the picker of the operating system, which no test can answer, files come as downloads.
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await startPlan(page, 'Top field')
  await drawRowAndStation(page)
  await setBloomAndBees(page, '60')
  await page.getByRole('button', { name: 'Menu' }).click()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ])
  expect(download.suggestedFilename()).toBe('Top field.plan.geojson')
  const path = await download.path()
  const read = readPlan(readFileSync(path, 'utf8'))
  // Nobody has drawn mud: that is told, and is no fault.
  expect(read.problems.filter(({ severity }) => severity !== 'note')).toEqual([])
  expect(read.ok && read.value.features.map(({ properties }) => properties.kind)).toEqual(['row', 'station'])

  const again = await browser.open()
  const [chooser] = await Promise.all([
    again.page.waitForEvent('filechooser'),
    again.page.getByRole('button', { name: 'Open a plan file' }).click(),
  ])
  await chooser.setFiles(path)
  await panel(again.page)
    .getByRole('button', { name: /^Row 1/ })
    .waitFor()
  await goTo(page, 'Coverage')
  await goTo(again.page, 'Coverage')
  await orchardCoverage(again.page).waitFor()
  expect(await orchardCoverage(again.page).textContent()).toBe(await orchardCoverage(page).textContent())
})

test('a file that is no plan is refused in words, and nothing is lost', async () => {
  const { page } = await browser.open()
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a plan file' }).click(),
  ])
  await chooser.setFiles({ name: 'holiday.json', mimeType: 'application/json', buffer: Buffer.from('{"a":') })
  await page
    .getByText(/line 1/)
    .first()
    .waitFor()
  expect(await page.getByRole('button', { name: 'Start the plan' }).isVisible()).toBe(true)
})

test('a reload keeps the plan and the place in it', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Top field')
  await drawRowAndStation(page)
  await page.getByText(/^Saved on this device at/).waitFor()
  await page.reload()
  await panel(page)
    .getByRole('button', { name: /^Row 1/ })
    .waitFor()
  expect(await page.getByRole('textbox', { name: 'Name of the plan' }).inputValue()).toBe('Top field')
  await panel(page)
    .getByRole('button', { name: /^Nest station 1/ })
    .waitFor()
})
