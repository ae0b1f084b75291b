import type { Projection } from './project'

/** From when on a stock carries the orchard by itself, in a sentence; `percent` words a share. */
export function carriesText({ carries, target, seasons }: Projection, percent: (share: number) => string): string {
  const { low, mid, high } = carries
  const last = seasons.at(-1)!.year
  const goal = `${percent(target)} of what is wanted`
  if (high === null) return `Until ${last} these bees alone do not come to ${goal}, not even on the high way.`
  const [middle, lower] = [mid, low].map(year => (year === null ? `not until ${last}` : `from ${year}`))
  return `These bees alone give ${goal} from ${high} on the high way, ${middle} on the middle one, ${lower} on the low one.`
}
