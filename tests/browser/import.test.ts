import type { Locator, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { withBrowser } from '../support/browser'
import { ground, openSample, panel } from '../support/browser-app'

const browser = withBrowser()

/** 20 rows of 25 trees, 5 m by 3 m, by longitude and latitude with decimal commas; one cultivar in two spellings. */
function treeList(separator = ';'): string {
  const lines = Array.from({ length: 500 }, (_, i) => {
    const [row, tree] = [Math.floor(i / 25) + 1, (i % 25) + 1]
    const number = (value: number) => value.toFixed(7).replace('.', ',')
    const cultivar = i % 4 === 0 ? '<b>ambrel</b>' : '<b>Ambrel</b>'
    return [row, tree, number(-1.7 + row * 7.3e-5), number(52.2 + tree * 2.7e-5), cultivar].join(separator)
  })
  return [['row', 'tree', 'longitude', 'latitude', 'cultivar'].join(separator), ...lines].join('\r\n')
}

const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="x">
<wpt lat="52.2" lon="-1.7"><name>Gate nest</name></wpt><wpt lat="52.2001" lon="-1.7"><name>Barn nest</name></wpt></gpx>`

function bringArea(page: Page): Locator {
  return page.getByRole('region', { name: 'Bring in', exact: true })
}

async function asked(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'Menu' }).click()
  await page.getByRole('button', { name: 'Bring in from another program' }).click()
  const area = bringArea(page)
  await area.getByLabel('Choose a file').waitFor()
  return area
}

async function chosen(area: Locator, name: string, text: string): Promise<void> {
  const file = { name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) }
  await area.getByLabel('Choose a file').setInputFiles(file)
}

/** Pixels of the map's layer for what is coming that are painted. */
function painted(page: Page): Promise<number> {
  return page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.leaflet-coming-pane canvas')
    const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? []
    let count = 0
    for (let i = 3; i < data.length; i += 4) if (data[i]! > 0) count += 1
    return count
  })
}

test('a list of 500 trees and a GPX are brought in by mouse, seen on the map before, and each is taken back by one undo', async () => {
  const { page, elsewhere } = await browser.open()
  await openSample(page, /^Sample B/)
  const area = await asked(page)
  await chosen(area, 'trees.csv', treeList())
  await area.getByText(/Read as a table with semicolons between its columns and decimal commas, in UTF-8/).waitFor()
  await area.getByLabel('Trees in rows').selectOption('each by itself')
  await area.getByText(/^Coming in: 500 single plants; dashed on the map/).waitFor()
  expect(await painted(page)).toBeGreaterThan(500)
  await area
    .getByRole('region', { name: /^500 points/ })
    .getByLabel('Crop')
    .selectOption('apple')
  await area.getByRole('button', { name: 'Bring in 500 things' }).click()
  await page.getByText('500 things brought in. Undo takes all of it back.').waitFor()
  expect(await painted(page)).toBe(0)
  const again = await asked(page)
  await chosen(again, 'nests.gpx', gpx)
  await again.getByText('Read as GPX 1.1 with 2 waypoints.').waitFor()
  await again.getByRole('button', { name: 'Bring in 2 things' }).click()
  await panel(page)
    .getByText(/6 nest stations/)
    .first()
    .waitFor()
  await page.getByRole('button', { name: /^Undo: bring in 2/ }).click()
  await page.getByRole('button', { name: /^Undo: bring in 500/ }).click()
  await panel(page)
    .getByText(/^6 plantings with 1,478 plants/)
    .waitFor()
  expect(elsewhere).toEqual([])
})

test('the same by keyboard alone: the file is read, the crop chosen and all brought in as rows', async () => {
  const { page } = await browser.open()
  await openSample(page, /^Sample B/)
  const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? '')
  const tabTo = async (wanted: Locator) => {
    for (let i = 0; i < 60; i += 1) {
      await page.keyboard.press('Tab')
      if (await wanted.evaluate(element => element === document.activeElement)) return
    }
    throw new Error('it cannot be reached by keyboard')
  }
  await page.getByRole('button', { name: 'Menu' }).focus()
  await page.keyboard.press('Enter')
  await tabTo(page.getByRole('button', { name: 'Bring in from another program' }))
  await page.keyboard.press('Enter')
  const area = bringArea(page)
  await area.getByLabel('Choose a file').waitFor()
  expect(await focused()).toBe('Bring in')
  // What the system's own window for files would hand over.
  await tabTo(area.getByLabel('Choose a file'))
  await chosen(area, 'trees.csv', treeList().replaceAll('ambrel', 'Ambrel'))
  const crop = area.getByRole('region', { name: /^500 points/ }).getByLabel('Crop')
  await crop.waitFor()
  // Whoever chose a file is led to what it was taken for.
  expect(await focused()).toBe('trees.csv')
  await tabTo(crop)
  await page.keyboard.type('Apple')
  await area.getByRole('button', { name: 'Bring in 20 things' }).waitFor()
  await tabTo(area.getByRole('button', { name: 'Bring in 20 things' }))
  await page.keyboard.press('Enter')
  await page.getByText('20 things brought in. Undo takes all of it back.').waitFor()
  await panel(page)
    .getByText(/^26 plantings with 1,978 plants/)
    .waitFor()
})

test('on a phone the map stays above the sheet, is moved by a finger meanwhile, and shows what comes', async () => {
  const { page } = await browser.open({ width: 390, height: 844, hasTouch: true })
  await openSample(page, /^Sample B/)
  await page.getByRole('button', { name: 'Menu' }).tap()
  await page.getByRole('button', { name: 'Bring in from another program' }).tap()
  const area = bringArea(page)
  await area.getByLabel('Choose a file').waitFor()
  await chosen(area, 'nests.gpx', gpx)
  await area.getByText(/^Coming in: 2 nest stations; dashed on the map/).waitFor()
  const [above, sheet] = [await ground(page).boundingBox(), await area.boundingBox()]
  expect(above!.height).toBeGreaterThan(200)
  expect(sheet!.y).toBeGreaterThanOrEqual(above!.y + above!.height - 1)
  expect(await painted(page)).toBeGreaterThan(50)
  const session = await page.context().newCDPSession(page)
  const at = (dx: number) => [{ x: above!.x + 200 + dx, y: above!.y + 150 }]
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) })
  for (const dx of [20, 60, 100, 140])
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(dx) })
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  await area.getByRole('button', { name: 'More map' }).tap()
  const taller = await ground(page).boundingBox()
  expect(taller!.height).toBeGreaterThan(above!.height + 100)
  await area.getByRole('button', { name: 'Bring in 2 things' }).tap()
  await page.getByText('2 things brought in. Undo takes all of it back.').waitFor()
})

test('cells copied from a spreadsheet are pasted on the map; markup and formulas in them stay words', async () => {
  const { page } = await browser.open()
  await openSample(page, /^Sample B/)
  const cells = [
    ...['name\tlongitude\tlatitude\theight', '<img src=x onerror="window.ran = 1">\t-1.7\t52.2\t2'],
    ...['=HYPERLINK("http://x")\t-1.7001\t52.2\t2', `${'x'.repeat(100_000)}\t-1.7002\t52.2\t2`],
  ].join('\r\n')
  await page.evaluate(text => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', text)
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
  }, cells)
  const area = bringArea(page)
  await area.getByText(/Read as a table with tabs between its columns/).waitFor()
  await area.getByRole('button', { name: 'Bring in 3 things' }).click()
  await panel(page)
    .getByText(/7 nest stations/)
    .first()
    .waitFor()
  expect(await page.evaluate(() => [(window as { ran?: number }).ran, document.querySelector('img[src=x]')])).toEqual([
    undefined,
    null,
  ])
})
