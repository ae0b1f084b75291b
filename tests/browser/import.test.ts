import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { withBrowser } from '../support/browser'
import { openSample, panel } from '../support/browser-app'

const browser = withBrowser()

/** 20 rows of 25 trees, 5 m by 3 m, by longitude and latitude with decimal commas. */
function treeList(): string {
  const lines = Array.from({ length: 500 }, (_, i) => {
    const [row, tree] = [Math.floor(i / 25) + 1, (i % 25) + 1]
    const number = (value: number) => value.toFixed(7).replace('.', ',')
    return `${row};${tree};${number(-1.7 + row * 7.3e-5)};${number(52.2 + tree * 2.7e-5)};<b>Ambrel</b>`
  })
  return ['row;tree;longitude;latitude;cultivar', ...lines].join('\r\n')
}

const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="x">
<wpt lat="52.2" lon="-1.7"><name>Gate nest</name></wpt><wpt lat="52.2001" lon="-1.7"><name>Barn nest</name></wpt></gpx>`

async function bringing(page: Page, name: string, text: string) {
  await page.getByRole('button', { name: 'Menu' }).click()
  await page.getByRole('button', { name: 'Bring in from another program' }).click()
  const dialog = page.getByRole('region', { name: 'Bring in', exact: true })
  await dialog
    .getByLabel('Choose a file')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) })
  return dialog
}

test('a list of 500 trees and a GPX are brought in, and each is taken back by one undo', async () => {
  const { page, elsewhere } = await browser.open()
  await openSample(page, /^Sample B/)
  const trees = await bringing(page, 'trees.csv', treeList())
  await trees
    .getByRole('region', { name: /^500 points/ })
    .getByLabel('Crop')
    .selectOption('apple')
  await trees.getByRole('button', { name: 'Bring in 500 things' }).click()
  await page.getByText('500 things brought in. Undo takes all of it back.').waitFor()
  const points = await bringing(page, 'nests.gpx', gpx)
  await points.getByRole('button', { name: 'Bring in 2 things' }).click()
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
