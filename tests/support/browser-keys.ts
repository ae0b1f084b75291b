import type { Locator, Page } from 'playwright-core'

/** More presses of Tab than any page has stops: going on would be going round in circles. */
const mostStops = 200

async function hasFocus(target: Locator): Promise<boolean> {
  return target.evaluate(element => element === document.activeElement)
}

/** Goes to a control by Tab alone, as far as a person would have to; throws where Tab never comes there. */
export async function tabTo(page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await target.waitFor()
  for (let stop = 0; stop < mostStops; stop += 1) {
    if (await hasFocus(target)) return
    await page.keyboard.press(key)
  }
  throw new Error(`Tab does not lead to ${target}`)
}

/** Goes to a button, summary or link and presses it. */
export async function pressByKey(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target)
  await page.keyboard.press('Enter')
}

/** Goes to a field, replaces what stands there and commits it. */
export async function typeByKey(page: Page, target: Locator, text: string): Promise<void> {
  await tabTo(page, target)
  await page.keyboard.press('ControlOrMeta+a')
  await page.keyboard.type(text)
}

/** Whether what has the focus can be seen to have it: an outline, or a shadow in its place. */
export async function hasFocusRing(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const element = document.activeElement
    if (element === null || element === document.body) return false
    const ringed = element.closest('label') ?? element
    return [element, ringed].some(each => {
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(each)
      return (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1) || boxShadow !== 'none'
    })
  })
}
