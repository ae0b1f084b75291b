import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'
import { startPlan, takeTool } from '../support/browser-app'

const browser = withBrowser()

/** A sheet of paper of 3000 × 2000 pixels with a frame and a row on it, drawn by the browser itself. */
async function sketch(page: Page): Promise<Buffer> {
  const text = await page.evaluate(() => {
    const canvas = document.createElement('canvas')
    canvas.width = 3000
    canvas.height = 2000
    const context = canvas.getContext('2d')!
    context.fillStyle = '#f4efdf'
    context.fillRect(0, 0, 3000, 2000)
    context.lineWidth = 14
    context.strokeRect(300, 200, 2400, 1600)
    context.strokeRect(600, 1000, 1800, 1)
    return canvas.toDataURL('image/png').split(',')[1]!
  })
  return Buffer.from(text, 'base64')
}

async function lay(page: Page): Promise<void> {
  await page.getByText('Photograph or sketch under the map').click()
  const file = { name: 'garden.png', mimeType: 'image/png', buffer: await sketch(page) }
  await page.locator('input[type="file"][aria-label="Choose a picture"]').setInputFiles(file)
  await page.getByText(/from 3000 × 2000 to 2048 × 1365 pixels/).waitFor()
}

/** Marks a point on the picture, given as shares of its width and height, and types where it lies. */
async function know(page: Page, number: number, spot: { u: number; v: number }, position: string): Promise<void> {
  await page.getByRole('radio', { name: new RegExp(`^Point ${number}:`) }).check()
  const face = page.getByRole('button', { name: /^The picture: a tap marks point/ })
  const box = await face.boundingBox()
  await face.click({ position: { x: spot.u * box!.width, y: spot.v * box!.height } })
  const field = page.getByLabel(`Ground position of point ${number}`)
  await field.fill(position)
  await field.press('Tab')
}

/** Where the picture's corners lie in the window. */
function cornersOf(page: Page) {
  return page.locator('.map-picture').evaluate(image => {
    const matrix = new DOMMatrix(getComputedStyle(image).transform)
    const pane = image.parentElement!.getBoundingClientRect()
    const { width, height } = image as HTMLImageElement
    return [
      [0, 0],
      [width, 0],
      [0, height],
    ].map(([x, y]) => {
      const at = matrix.transformPoint({ x: x!, y: y! })
      return { x: at.x + pane.left, y: at.y + pane.top }
    })
  })
}

test('a sketch is placed by two points, turned as they say, nudged by keys, and there again after a reload', async () => {
  const { page } = await browser.open()
  await startPlan(page, 'Sketched')
  await lay(page)
  // 80 % of the width between them: 40 m due north along the top edge turn the sheet by a quarter to the left.
  await know(page, 1, { u: 0.1, v: 0.1 }, '0, 0')
  await know(page, 2, { u: 0.9, v: 0.1 }, '0, 40')
  await page.getByRole('button', { name: 'Lay it so' }).click()
  await page.getByText(/Two points always fit/).waitFor()
  const [topLeft, topRight] = await cornersOf(page)
  expect(Math.abs(topRight!.x - topLeft!.x)).toBeLessThan(4)
  expect(topLeft!.y).toBeGreaterThan(topRight!.y + 20)
  await page.getByRole('button', { name: 'East by 1 m' }).focus()
  for (let i = 0; i < 8; i += 1) await page.keyboard.press('ArrowRight')
  const moved = await cornersOf(page)
  expect(moved[0]!.x).toBeGreaterThan(topLeft!.x + 2)
  await page.getByRole('button', { name: /^Undo: move picture garden/ }).click()
  await expect.poll(async () => Math.abs((await cornersOf(page))[0]!.x - topLeft!.x), soon).toBeLessThan(1)
  await page.getByText(/^Saved/).waitFor()
  await page.reload()
  await page.locator('.map-picture').waitFor({ state: 'attached' })
  const again = await cornersOf(page)
  // The map fits the same plan again; the sheet lies in the same direction.
  expect(Math.abs(again[1]!.x - again[0]!.x)).toBeLessThan(4)
})

test('on a phone a sketch is laid under the map and a row is traced over it', async () => {
  const { page } = await browser.open({ width: 390, height: 844, hasTouch: true })
  await startPlan(page, 'Phone')
  await lay(page)
  await page.getByRole('button', { name: 'Small panel, large map' }).click()
  await takeTool(page, 'Row')
  const box = await page.locator('.map-picture').boundingBox()
  const spot = (u: number, v: number) => ({ x: box!.x + u * box!.width, y: box!.y + v * box!.height })
  for (const { x, y } of [spot(0.2, 0.5), spot(0.8, 0.5)]) {
    await page.touchscreen.tap(x, y)
    await page.waitForTimeout(450)
  }
  await page.getByRole('button', { name: 'Finish' }).click()
  await expect.poll(() => page.getByRole('region', { name: /^Selected: Row/ }).count(), soon).toBe(1)
})
