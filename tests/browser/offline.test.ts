import { inject, it } from 'vitest'
import { withBrowser } from '../support/browser'
import { openSample } from '../support/browser-app'

const { open } = withBrowser()

it('opens again without a network, with the plan and its figures, once it has been visited', async () => {
  const { page } = await open()
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await openSample(page, /^Sample B/)
  await page.getByText('Saved on this device at').waitFor()
  await page.context().setOffline(true)
  await page.goto(inject('appUrl'))
  await page.getByRole('button', { name: 'Coverage', exact: true }).click()
  await page.getByRole('region', { name: 'The orchard' }).getByText(/\d+%/).first().waitFor()
})
