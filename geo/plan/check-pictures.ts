import { checkFigures } from './check-figures'
import type { Limit } from './limits'
import { imageFault, isPlaced, largestImage } from './pictures'
import { shortened } from './place'
import type { Plan } from './plan'
import type { ReportProblem } from './report-problem'

const side: Limit = { label: 'size in pixels', unit: '', low: 1, high: 100_000, isMinor: true }
const limits = {
  width: side,
  height: side,
  opacity: { label: 'opacity', unit: '', low: 0, high: 1, isMinor: true },
} as const satisfies Readonly<Record<string, Limit>>

/** Pictures under the map: nothing hangs on them, so that all they can have is warnings. */
export function checkPictures({ pictures = [] }: Plan, report: ReportProblem): void {
  const seen = new Set<string>()
  for (const [index, picture] of pictures.entries()) {
    const at = `plan.pictures[${index}]`
    const name = `Picture ${shortened(picture.name || picture.id)}`
    checkFigures(picture, limits, { name, at, path: at }, report)
    if (seen.has(picture.id)) report('warning', 'picture-repeated', at, { name })
    seen.add(picture.id)
    if (!isPlaced(picture)) report('warning', 'picture-unplaced', at, { name })
    const fault = picture.image === undefined ? null : imageFault(picture.image)
    if (fault !== null) report('warning', 'picture-not-shown', at, { name, fault, megabytes: largestImage / 1e6 })
  }
}
