import type { Locator, Page } from 'playwright-core'

/** Steps through the app that several browser tests take, by role and text as a person would. */

export type PageName = 'Ground' | 'Bloom and flight' | 'Coverage' | 'More boxes' | 'Years'

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

/** The figure of the orchard's coverage on the page Coverage, which opens its working. */
export function orchardCoverage(page: Page): Locator {
  return page
    .getByRole('region', { name: 'The orchard' })
    .getByRole('button', { name: /^(yes|partly|no)\b.*%.*In number/ })
}

/** The map itself, where things are drawn. */
export function ground(page: Page): Locator {
  return map(page).getByRole('application')
}

export type Spot = { readonly x: number; readonly y: number }

/** A spot of the window, given as shares of the map's width and height from its top left. */
export async function spotOn(page: Page, x: number, y: number): Promise<Spot> {
  const box = await ground(page).boundingBox()
  if (box === null) throw new Error('the map is not shown')
  return { x: Math.round(box.x + x * box.width), y: Math.round(box.y + y * box.height) }
}

/** Takes a drawing tool in hand. */
export async function takeTool(page: Page, name: string): Promise<void> {
  await page.getByRole('toolbar', { name: 'Drawing tools' }).getByRole('button', { name, exact: true }).click()
}
