import type { Locator, Page } from 'playwright-core'

/** Steps through the app that several browser tests take, by role and text as a person would. */

export type PageName = 'Ground' | 'Bloom and flight' | 'Coverage'

/** Opens a sample from the first screen. */
export async function openSample(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('button', { name }).click()
  await panel(page).waitFor()
}

/** Starts a plan on the bare metre grid, everything else as the form has it. */
export async function startPlan(page: Page, name: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Name of the plan' }).fill(name)
  await page.getByRole('button', { name: 'Start the plan' }).click()
  await panel(page).waitFor()
}

export function panel(page: Page): Locator {
  return page.getByRole('region', { name: 'Work panel' })
}

export function map(page: Page): Locator {
  return page.getByRole('main', { name: 'Map' })
}

export async function goTo(page: Page, name: PageName): Promise<void> {
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name, exact: true }).click()
}
