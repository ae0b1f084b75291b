import type { Coverage } from '../coverage/coverage'
import type { StationSeason } from '../plan/plan'
import type { DatedShare } from './advice'
import type { Asked } from './allowed-days'
import { coverageBy, suppliesWith, type TimingGround } from './timing-ground'

/** Dates of each station in question. */
export type Dates = ReadonlyMap<Asked, readonly DatedShare[]>

/** Coverage of the plantings in question if stations had other dates. */
export class Measure {
  readonly #ground: TimingGround
  readonly #asked: readonly Asked[]
  readonly #isCounted: readonly boolean[]

  /** `within` holds the stations whose range bounds what counts; null = the whole orchard. */
  constructor(ground: TimingGround, asked: readonly Asked[], within: Coverage | null) {
    this.#ground = ground
    this.#asked = asked
    this.#isCounted = ground.demand.grounds.map(
      ({ group }, g) =>
        !group.isForage &&
        group.bloom !== null &&
        (within === null || asked.some(({ index }) => within.decaysOf(index, g) > 0)),
    )
  }

  of(dates: Dates): number | null {
    const { season } = this.#ground
    const uses: Record<string, StationSeason> = { ...season.stations }
    for (const asked of this.#asked) {
      const { supply } = asked
      const females = supply.season.releases!.reduce((sum, release) => sum + release.females, 0)
      const releases = dates.get(asked)!
      uses[supply.id] = {
        ...supply.season,
        releases: releases.map(({ date, share }) => ({ date, females: females * share })),
      }
    }
    const supplies = suppliesWith(this.#ground, uses)
    const coverage = coverageBy(
      this.#ground,
      supplies.map(({ input }) => input),
    )
    let served = 0
    let wanted = 0
    this.#isCounted.forEach((isCounted, g) => {
      if (!isCounted) return
      const totals = coverage.totalsOf(g)
      served += totals.served
      wanted += totals.wanted
    })
    return wanted > 0 ? served / wanted : null
  }
}
