import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { goTo, ground, openSample, panel, startPlan } from '../support/browser-app'
import { hasFocusRing, pressByKey, tabTo, typeByKey } from '../support/browser-keys'

const browser = withBrowser()

test('a plan from nothing to coverage without touching the mouse', async () => {
  const { page } = await browser.open()
  const button = (name: string | RegExp) => page.getByRole('button', { name })
  const field = (name: string) => page.getByRole('textbox', { name, exact: true })
  await typeByKey(page, field('Name of the plan'), 'By keys')
  await pressByKey(page, button('Start the plan'))

  await typeByKey(page, field('Start'), '0, 0')
  await typeByKey(page, field('Length'), '100')
  await pressByKey(page, button('Add the row'))
  await panel(page).getByText('56 plants').first().waitFor()

  const what = page.getByRole('combobox', { name: 'What' })
  if (!(await what.isVisible())) await pressByKey(page, page.getByText('Add by typing'))
  await tabTo(page, what)
  await page.keyboard.type('Nest')
  await typeByKey(page, field('Position'), '5, 50')
  await pressByKey(page, button('Add the nest station'))

  await pressByKey(page, page.getByRole('button', { name: 'Bloom and flight', exact: true }))
  await pressByKey(page, button(/^Fill in \d+ bloom/))
  await pressByKey(page, button('Add a batch of cocoons').first())
  await typeByKey(page, field('Female cocoons').first(), '60')
  await page.keyboard.press('Enter')

  await pressByKey(page, page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Coverage' }))
  const coverage = page
    .getByRole('region', { name: 'The orchard' })
    .getByRole('button', { name: /^(yes|partly|no)\b.*\d+%.*In number/ })
  await coverage.waitFor()
  await pressByKey(page, coverage)
  await page.getByRole('heading', { name: /how was this worked out/i }).waitFor()

  // Undo takes back step by step, from wherever the focus is.
  await pressByKey(page, button('Ground'))
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect.poll(() => page.getByRole('button', { name: /^Redo: / }).isEnabled(), soon).toBe(true)
  expect(await page.getByRole('button', { name: /^Redo: / }).textContent()).toMatch(/batch|cocoon|release/i)
})

test('a row drawn, a station put up, moved and deleted on the map by keys', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'By keys')
  const press = async (key: string, times = 1) => {
    for (let i = 0; i < times; i += 1) await page.keyboard.press(key)
  }
  const undo = page.getByRole('button', { name: /^Undo/ })
  const selected = (name: string) => panel(page).getByRole('region', { name: `Selected: ${name}` })
  /** The tools are one stop of Tab; arrows lead from one to the next. */
  const takeByKey = async (steps: number) => {
    await tabTo(page, page.getByRole('toolbar').getByRole('button', { name: 'Select', exact: true }))
    await press('ArrowDown', steps)
    await press('Enter')
    await tabTo(page, ground(page), 'Shift+Tab')
  }

  // The tool gives the map the focus and puts the cross there.
  await takeByKey(2)
  await press('Enter')
  await press('ArrowUp', 12)
  await press('Enter', 2)
  await selected('Row 1').waitFor()

  await takeByKey(7)
  await press('ArrowRight', 3)
  await press('Enter')
  await selected('Nest station 1').waitFor()
  expect(await undo.textContent()).toMatch(/add .*Nest station 1/)

  // Three presses in a row are one move, and one step of undo.
  await press('ArrowLeft', 3)
  await expect.poll(() => undo.textContent(), soon).toMatch(/move .*Nest station 1/)
  await press('Control+z')
  expect(await undo.textContent()).toMatch(/add .*Nest station 1/)
  await press('Delete')
  await expect
    .poll(() =>
      panel(page)
        .getByRole('button', { name: /^Nest station 1/ })
        .count(),
    )
    .toBe(0)
  await press('Control+z')
  await panel(page)
    .getByRole('button', { name: /^Nest station 1/ })
    .waitFor()
})

/** How often Tab stops from here to the end of the page, and what has the focus there without showing it. */
async function walked(page: Page): Promise<{ readonly stops: number; readonly blind: readonly string[] }> {
  const blind: string[] = []
  let stops = 0
  for (; stops < 100; stops += 1) {
    await page.keyboard.press('Tab')
    const name = await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 120) ?? '')
    if (name.startsWith('<body')) break
    if (!(await hasFocusRing(page))) blind.push(name)
  }
  return { stops, blind }
}

test('the focus can be seen at every stop', async () => {
  const { page } = await browser.open()
  await openSample(page, /^Sample B/)
  await goTo(page, 'Coverage')
  await page.getByRole('heading', { name: 'Plantings' }).waitFor()
  await page.evaluate(() => document.body.focus())
  const plan = await walked(page)
  expect(plan.blind).toEqual([])
  expect(plan.stops).toBeGreaterThan(15)
})
