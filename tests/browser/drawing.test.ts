import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { ground, panel, spotOn, startPlan, takeTool } from '../support/browser-app'

const browser = withBrowser()
const phone = { width: 390, height: 844, hasTouch: true } as const

test('a block by its rows in three presses of the mouse, measured, and turned back by undo', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Top field')
  await takeTool(page, 'Block by rows')
  for (const [x, y] of [
    [0.1, 0.7],
    [0.1, 0.4],
  ] as const) {
    const spot = await spotOn(page, x, y)
    await page.mouse.click(spot.x, spot.y)
  }
  const last = await spotOn(page, 0.25, 0.55)
  await page.mouse.move(last.x, last.y, { steps: 3 })
  const plant = page.getByRole('button', { name: /^Plant \d+ rows of \d+/ })
  const words = (await plant.textContent()) ?? ''
  const plants = /([\d,]+) plants$/.exec(words)?.[1]
  await page.mouse.click(last.x, last.y)
  await panel(page).getByRole('region', { name: 'Selected: Block 1' }).waitFor()
  await panel(page).getByText(`1 planting with ${plants} plants`, { exact: false }).waitFor()

  await takeTool(page, 'Measure')
  const a = await spotOn(page, 0.3, 0.3)
  const b = await spotOn(page, 0.3, 0.6)
  await page.mouse.click(a.x, a.y)
  await page.mouse.dblclick(b.x, b.y)
  await page.getByRole('button', { name: 'Clear the measure' }).click()
  const undo = page.getByRole('button', { name: /^Undo/ })
  await expect.poll(() => undo.textContent(), soon).toBe('Undo: add Block 1')
})

test('an orchard of 28 rows of 8 trees at 30 by 16 ft typed from the keyboard, on the map', async () => {
  const { page } = await browser.open({ locale: 'en-US', timezone: 'America/Denver' })
  await page.getByRole('textbox', { name: 'Name of the plan' }).fill('Old rows')
  await page.getByRole('radio', { name: 'Feet and acres' }).check()
  await page.getByRole('button', { name: 'Start the plan' }).click()
  await panel(page).waitFor()
  await takeTool(page, 'Block by rows')
  await ground(page).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Enter')
  const fill = async (label: string, text: string) => {
    const field = page
      .getByRole('region', { name: 'What is being drawn' })
      .getByRole('textbox', { name: label, exact: true })
    await field.fill(text)
    await field.press('Tab')
  }
  await fill('In the row', '16')
  await fill('Between rows', '30')
  await fill('Bearing', '90')
  await fill('Plants in the row', '8')
  await page.getByRole('button', { name: 'Set the end of the row' }).press('Enter')
  await fill('Number of rows', '28')
  await page.getByRole('button', { name: 'Plant 28 rows of 8, 224 plants' }).press('Enter')
  await panel(page).getByText('1 planting with 224 plants', { exact: false }).waitFor()
})

test('on a phone: points by finger, the last one taken off, two fingers move the map and set nothing', async () => {
  const { page } = await browser.open(phone)
  await startPlan(page, 'Pocket field')
  await takeTool(page, 'Row')
  const first = await spotOn(page, 0.5, 0.3)
  const second = await spotOn(page, 0.5, 0.7)
  await page.touchscreen.tap(first.x, first.y)
  await page.touchscreen.tap(second.x, second.y)
  await page.getByText('2 points set', { exact: false }).waitFor()
  const session = await page.context().newCDPSession(page)
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', spots: readonly (readonly [number, number])[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: spots.map(([x, y], id) => ({ x, y, id })) })
  await send('touchStart', [[120, 250]])
  await send('touchStart', [
    [120, 250],
    [220, 250],
  ])
  for (let i = 1; i <= 6; i += 1) {
    await send('touchMove', [
      [120 + 8 * i, 250],
      [220 + 8 * i, 250],
    ])
  }
  await send('touchEnd', [])
  expect(await page.getByText('2 points set', { exact: false }).count()).toBe(1)
  const back = page.getByRole('button', { name: 'Take off last point' })
  const size = await back.boundingBox()
  expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(44)
  await back.tap()
  await page.getByText('Press where it ends', { exact: false }).waitFor()
  // The row of tools goes on beyond the edge, and says so.
  const more = page.getByRole('button', { name: 'More tools' })
  const seen = new Set<string>()
  const look = async () => {
    const bar = await page.getByRole('toolbar', { name: 'Drawing tools' }).boundingBox()
    const next = (await page.getByRole('button', { name: /^(More|First) tools$/ }).boundingBox())?.x ?? 0
    for (const tool of await page.getByRole('toolbar').getByRole('button').all()) {
      const box = await tool.boundingBox()
      if (box && bar && box.x >= bar.x - 1 && box.x + box.width <= next + 1) seen.add((await tool.textContent()) ?? '')
    }
  }
  await look()
  while ((await more.count()) > 0) {
    await more.tap()
    await look()
  }
  expect([...seen]).toEqual(expect.arrayContaining(['Row', 'Plant', 'Nest station', 'Mud', 'Windbreak', 'Measure']))
  await page.getByRole('button', { name: 'First tools' }).tap()
  await expect.poll(() => more.count(), soon).toBe(1)
})
