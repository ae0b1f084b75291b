import type { Coverage, StationInput } from '../coverage/coverage'
import type { BeeId } from '../data/own'
import type { Station } from '../plan/plan'
import type { DailyCurve } from '../time/curve'
import { dateOfDay } from '../time/day'
import { suppliesWith, type TimingGround } from './timing-ground'

/**
 * Females at work day by day for one nesting female of a bee let out on each of `days`: as the season's stations would
 * have them, so that whatever the season knows of its weather is in it.
 */
export function flightsOf(ground: TimingGround, bee: BeeId, days: readonly number[]): readonly DailyCurve[] {
  const { emergence, establishment } = ground.settings.bees[bee]
  const females = 1 / (emergence * establishment)
  const features = days.map(
    (_, i): Station => ({
      type: 'Feature',
      id: `day-${i}`,
      geometry: { type: 'Point', coordinates: ground.plane.centre },
      properties: { kind: 'station' },
    }),
  )
  const uses = days.map((day, i) => [`day-${i}`, { bee, releases: [{ date: dateOfDay(day, ground.year), females }] }])
  return suppliesWith(ground, Object.fromEntries(uses), features).map(({ input }) => input.flight)
}

/**
 * Service per unit of blossom and decay that one nesting female of station `index` gives each bloom, for each flight:
 * a number per bloom and flight, blooms of one flight side by side.
 */
export function servicesOf(
  coverage: Coverage,
  index: number,
  input: StationInput,
  flights: readonly DailyCurve[],
): Float64Array {
  const pull = coverage.pullOf(index)
  const blooms = coverage.blooms.length
  const services = new Float64Array(blooms * flights.length)
  flights.forEach((flight, f) => {
    for (let bloom = 0; bloom < blooms; bloom += 1) {
      services[f * blooms + bloom] = coverage.serviceOf(input, bloom, flight, pull)
    }
  })
  return services
}
