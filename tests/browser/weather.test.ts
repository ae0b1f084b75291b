import { expect, test } from 'vitest'
import { withBrowser } from '../support/browser'
import { goTo, openSample, panel } from '../support/browser-app'

const browser = withBrowser()

/** Ninety mild days with a frost on 5 April, as an American station writes them. */
function table(): string {
  const days = Array.from({ length: 90 }, (_, i) => {
    const date = new Date(Date.UTC(2024, 2, 1 + i))
    const [month, day] = [date.getUTCMonth() + 1, date.getUTCDate()]
    return `${month}/${day}/2024,${month === 4 && day === 5 ? 22 : 41},63,${day % 7 === 0 ? 0.2 : 0}`
  })
  return ['Date,TMIN (F),TMAX (F),Rain in', ...days].join('\r\n')
}

test('weather from a file changes the coverage and tells of frost; release dates are advised and taken', async () => {
  const { page, elsewhere } = await browser.open()
  await openSample(page, /^Sample B/)
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2024')
  await goTo(page, 'Bloom and flight')
  await panel(page).getByRole('button', { name: 'Bring in a weather table' }).click()
  const dialog = page.getByRole('dialog', { name: 'Weather for 2024' })
  await dialog
    .getByLabel('Choose a file')
    .setInputFiles({ name: 'station.csv', mimeType: 'text/csv', buffer: Buffer.from(table()) })
  await dialog.getByRole('button', { name: 'Take in 90 days' }).click()
  await panel(page)
    .getByText(/^90 days, 1 March to 29 May 2024/)
    .waitFor()
  await panel(page)
    .getByText(/Coverage with this weather is about \d+%, on typical days it would be/)
    .waitFor()
  await panel(page)
    .getByText(/^5 April 2024, 22 °F: /)
    .first()
    .waitFor()
  const advice = panel(page).getByRole('region', { name: 'When to set cocoons out' })
  await advice.getByRole('button', { name: 'Look for the best dates' }).click()
  await advice.getByRole('button', { name: 'Use these dates' }).click({ timeout: 60_000 })
  await page.getByText('The release dates are set. One press of Undo takes all of them back.').waitFor()
  await page.getByRole('button', { name: /^Undo: accept advice on release dates/ }).click()
  await page.getByRole('button', { name: /^Undo: change weather of 2024/ }).waitFor()
  expect(elsewhere).toEqual([])
})
