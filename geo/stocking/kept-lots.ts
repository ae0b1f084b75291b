import type { Release } from '../plan/plan'

/** Releases by date and number, in the lots that the season has planned for these dates already as far as they reach. */
export function keptLots(next: readonly Release[], planned: readonly Release[] = []): Release[] {
  return next.flatMap(release => {
    let { females, males = 0 } = release
    const lots = planned
      .filter(({ date, lot }) => date === release.date && lot !== undefined)
      .map(({ date, lot, ...has }) => {
        const taken = {
          date,
          females: Math.min(females, has.females),
          males: Math.min(males, has.males ?? 0),
          lot: lot!,
        }
        females -= taken.females
        males -= taken.males
        return taken
      })
      .filter(taken => taken.females > 0 || taken.males > 0)
    return females > 0 || males > 0 ? [...lots, { date: release.date, females, males }] : lots
  })
}
