import { describe, expect, test } from 'vitest'
import { type PageOptions, withBrowser } from '../support/browser'
import { goTo, openSample, panel, spotOn, takeTool } from '../support/browser-app'
import { violations } from '../support/browser-axe'

const browser = withBrowser()

const screens: readonly { readonly name: string; readonly options: PageOptions }[] = [
  { name: 'wide', options: { width: 1280, height: 800 } },
  { name: 'phone', options: { width: 390, height: 844, hasTouch: true } },
]

describe.each(screens)('axe finds nothing, $name', ({ options }) => {
  test('on the first screen', async () => {
    const { page } = await browser.open(options)
    await page.getByRole('button', { name: /^Sample A/ }).waitFor()
    expect(await violations(page)).toEqual([])
  })

  test('on any page of a plan, with a thing selected and with a working open', async () => {
    const { page } = await browser.open(options)
    await openSample(page, /^Sample B/)
    for (const name of ['Ground', 'Bloom and flight', 'Coverage'] as const) {
      await goTo(page, name)
      expect(await violations(page), name).toEqual([])
    }
    const working = panel(page).getByRole('button', { name: /how was this worked out/ })
    await working.first().click()
    await page.getByRole('heading', { name: /how was this worked out/i }).waitFor()
    expect(await violations(page), 'working').toEqual([])
    await page.getByRole('button', { name: 'Close', exact: true }).click()
    await goTo(page, 'Ground')
    await panel(page)
      .getByRole('button', { name: /^Plums/ })
      .click()
    expect(await violations(page), 'selected').toEqual([])
  })

  test('while a block is drawn, and while a table comes in', async () => {
    const { page } = await browser.open(options)
    await openSample(page, /^Sample B/)
    await takeTool(page, 'Block by rows')
    const spot = await spotOn(page, 0.5, 0.5)
    await page.mouse.click(spot.x, spot.y)
    await page.getByText('Press where the last plant of this row', { exact: false }).waitFor()
    expect(await violations(page), 'drawing').toEqual([])
    await page.getByRole('button', { name: 'Menu' }).click()
    await page.getByRole('button', { name: 'Bring in from another program' }).click()
    await page
      .getByLabel('Or paste cells here')
      .fill('row\ttree\tlongitude\tlatitude\n1\t1\t-1,7\t52,2\n1\t2\t-1,70005\t52,2')
    await page.getByRole('button', { name: 'Look at what was pasted' }).click()
    await page.getByText('Read as', { exact: false }).waitFor()
    expect(await violations(page), 'bringing in').toEqual([])
  })
})

test.each(['Dark', 'High contrast'])('axe finds nothing in the look: %s', async look => {
  const { page } = await browser.open()
  await openSample(page, /^Sample B/)
  await page.getByRole('button', { name: 'Menu' }).click()
  expect(await violations(page), 'menu').toEqual([])
  await page.getByRole('radio', { name: new RegExp(`^${look}`) }).check()
  await page.keyboard.press('Escape')
  await goTo(page, 'Coverage')
  expect(await violations(page)).toEqual([])
})
