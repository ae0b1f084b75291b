import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { ground, panel, type Spot, spotOn, startPlan, takeTool } from '../support/browser-app'

const browser = withBrowser()
const phone = { width: 390, height: 844, hasTouch: true } as const

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ })

async function pull(page: Page, from: Spot, to: Spot): Promise<void> {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(to.x, to.y, { steps: 4 })
  await page.mouse.up()
}

/** Two fingers put down one after the other and led aside and back, so that the map is where it was. */
async function twoFingers(page: Page, { x, y }: Spot): Promise<void> {
  const session = await page.context().newCDPSession(page)
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', by: number, fingers: number) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: [0, 1].slice(0, fingers).map(id => ({ x: x + 90 * id + by, y, id })),
    })
  await send('touchStart', 0, 1)
  await send('touchStart', 0, 2)
  for (const by of [10, 20, 30, 20, 10, 0]) await send('touchMove', by, 2)
  await send('touchEnd', 0, 0)
}

test('a row is turned at its grip by the mouse, and by keys', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Turning')
  await takeTool(page, 'Row')
  const [from, to] = [await spotOn(page, 0.2, 0.8), await spotOn(page, 0.2, 0.4)]
  await page.mouse.click(from.x, from.y)
  await page.mouse.click(to.x, to.y)
  await page.keyboard.press('Enter')
  await panel(page).getByRole('region', { name: 'Selected: Row 1' }).waitFor()
  // The grip stands 44 pixels beyond the end.
  await pull(page, { x: to.x, y: to.y - 44 }, { x: to.x + 60, y: to.y - 30 })
  await expect.poll(() => undo(page).textContent(), soon).toBe('Undo: turn Row 1')
  await undo(page).click()
  await ground(page).focus()
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Enter')
  await page.getByText('Pull the round mark', { exact: false }).waitFor()
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(() => undo(page).textContent(), soon).toBe('Undo: turn Row 1')
})

test('on a phone a box by two taps selects what lies inside; keys do the same with the cross', async () => {
  const { page } = await browser.open(phone)
  await startPlan(page, 'Boxes')
  await takeTool(page, 'Plant')
  await page.getByRole('button', { name: 'Draw several' }).tap()
  for (const x of [0.3, 0.5, 0.7]) {
    const spot = await spotOn(page, x, 0.4)
    await page.touchscreen.tap(spot.x, spot.y)
  }
  await page.getByRole('button', { name: 'Put the tool down' }).tap()
  await takeTool(page, 'Select by box')
  const [from, to] = [await spotOn(page, 0.2, 0.25), await spotOn(page, 0.6, 0.5)]
  await twoFingers(page, from)
  await page.getByText('Pull a box over what you want', { exact: false }).waitFor()
  await page.touchscreen.tap(from.x, from.y)
  await page.getByText('Press the corner across', { exact: false }).waitFor()
  await page.touchscreen.tap(to.x, to.y)
  await panel(page).getByText('2 things selected').waitFor()
  await page.keyboard.press('Escape')
  await takeTool(page, 'Select by box')
  await ground(page).focus()
  await page.keyboard.press('Enter')
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Shift+ArrowUp')
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Shift+ArrowLeft')
  await page.keyboard.press('Enter')
  for (let i = 0; i < 7; i += 1) await page.keyboard.press('Shift+ArrowRight')
  for (let i = 0; i < 6; i += 1) await page.keyboard.press('Shift+ArrowDown')
  await page.keyboard.press('Enter')
  await expect
    .poll(
      () =>
        panel(page)
          .getByText(/things selected/)
          .count(),
      soon,
    )
    .toBeGreaterThan(0)
})

test('a picture is pulled about on the map, and rests once it is locked', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Sketching')
  await page.getByText('Photograph or sketch under the map').click()
  const image = await page.evaluate(() => {
    const canvas = document.createElement('canvas')
    canvas.width = 300
    canvas.height = 200
    canvas.getContext('2d')!.fillRect(40, 40, 100, 100)
    return canvas.toDataURL('image/png').split(',')[1]!
  })
  const file = { name: 'garden.png', mimeType: 'image/png', buffer: Buffer.from(image, 'base64') }
  await page.locator('input[type="file"][aria-label="Choose a picture"]').setInputFiles(file)
  await page.getByText('Pull the picture to move it', { exact: false }).waitFor()
  const shown = page.locator('.map-picture')
  const box = async () => (await shown.boundingBox())!
  const before = await box()
  const middle = { x: before.x + before.width / 2, y: before.y + before.height / 2 }
  await pull(page, middle, { x: middle.x - 40, y: middle.y + 30 })
  await expect.poll(() => undo(page).textContent(), soon).toBe('Undo: move picture garden')
  const after = await box()
  expect(after.x - before.x).toBeCloseTo(-40, 0)
  expect(after.y - before.y).toBeCloseTo(30, 0)
  await pull(
    page,
    { x: after.x + after.width, y: after.y + after.height },
    { x: after.x + 1.5 * after.width, y: after.y + 1.5 * after.height },
  )
  await expect.poll(() => undo(page).textContent(), soon).toBe('Undo: resize picture garden')
  expect((await box()).width / after.width).toBeCloseTo(1.5, 1)
  await ground(page).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(() => undo(page).textContent(), soon).toBe('Undo: turn picture garden')
  await page.getByRole('checkbox', { name: 'Locked: it stays where it lies' }).check()
  const still = await box()
  const inside = { x: still.x + still.width / 2, y: still.y + still.height / 2 }
  await pull(page, inside, { x: inside.x - 30, y: inside.y })
  await expect.poll(() => undo(page).textContent(), soon).toBe('Undo: lock picture garden')
})
