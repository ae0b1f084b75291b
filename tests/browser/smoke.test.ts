import { expect, test } from 'vitest'
import { soon, withBrowser } from '../support/browser'

const browser = withBrowser()

test('the page loads, says what it is, and asks nothing of other servers', async () => {
  const { page, elsewhere } = await browser.open()
  await page.getByRole('heading', { level: 1 }).waitFor()
  expect(await page.title()).toContain('Nestreach')
  await page.waitForLoadState('networkidle')
  expect(elsewhere).toEqual([])
})

test('pages believe to be in the spring of 2026', async () => {
  const { page } = await browser.open()
  expect(await page.evaluate(() => [new Date().getFullYear(), new Date(Date.now()).getMonth()])).toEqual([2026, 3])
  expect(await page.evaluate(() => new Date(2020, 0, 1).getFullYear())).toBe(2020)
})

test('the catch for faults catches', async () => {
  const visit = await browser.open()
  await visit.page.evaluate(async () => {
    console.error('planted')
    await fetch('./not-there.json')
    await fetch('https://tiles.example.org/1/1/1.png').catch(() => undefined)
    setTimeout(() => {
      throw new Error('thrown')
    })
  })
  await expect.poll(() => visit.faults, soon).toContain('uncaught: thrown')
  const faults = visit.faults.splice(0)
  expect(faults).toContain('console: planted')
  expect(faults.some(fault => fault.startsWith('404: ') && fault.endsWith('/not-there.json'))).toBe(true)
  expect(visit.elsewhere.splice(0)).toEqual(['https://tiles.example.org/1/1/1.png'])
})
