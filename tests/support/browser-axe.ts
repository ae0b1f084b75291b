import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds wrong with the page as it stands: rule, what it asks, and the elements. */
export async function violations(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(source)
  const results = await page.evaluate<AxeResults>('axe.run(document, { resultTypes: ["violations"] })')
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} (${help}) at ${target.join(' ')}: ${failureSummary ?? ''}`),
  )
}
