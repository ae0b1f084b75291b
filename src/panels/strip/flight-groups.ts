import { type DailyCurve, endOf, valueOn } from '#geo/time/curve'
import { counted } from '../../text/words'
import type { FlightBand, SeasonBands } from '../season-bands'

/** Curves nearer than this are the same to the eye, as shares of the peak. */
const sameShape = 1e-6

/** Stations whose bees fly on the same days, in the same shares, in one band: it would be drawn twice. */
export function groupedFlights<Bands extends SeasonBands>(bands: Bands): Bands {
  const groups: FlightBand[][] = []
  for (const flight of bands.flights) {
    const group = groups.find(([first]) => isSameShape(first!.curve, flight.curve))
    if (group) group.push(flight)
    else groups.push([flight])
  }
  return { ...bands, flights: groups.map(group => gathered(group, groups.length === 1)) }
}

/** All stations' flights added up into one band, where there is no room for each. */
export function mergedFlights<Bands extends SeasonBands>(bands: Bands): Bands {
  const { flights } = bands
  return flights.length < 2 ? bands : { ...bands, flights: [gathered(flights, true)] }
}

function isSameShape(a: DailyCurve, b: DailyCurve): boolean {
  if (a.start !== b.start || a.values.length !== b.values.length) return false
  return a.values.every((value, i) => Math.abs(value - b.values[i]!) < sameShape)
}

/** Flights of several stations as one band; `isAll` where these are all there are. */
function gathered(flights: readonly FlightBand[], isAll: boolean): FlightBand {
  const [first] = flights
  if (flights.length === 1) return first!
  const start = Math.min(...flights.map(({ curve }) => curve.start))
  const end = Math.max(...flights.map(({ curve }) => endOf(curve)))
  const sums = Float64Array.from({ length: end - start }, (_, i) => femalesOn(flights, start + i))
  const females = Math.max(...sums)
  const stations = flights.reduce((sum, each) => sum + each.stations, 0)
  return {
    ...first!,
    label: isAll ? counted(stations, 'station') : `${first!.label} + ${stations - 1}`,
    females,
    stations,
    releases: flights.reduce((sum, { releases }) => sum + releases, 0),
    curve: { start, values: sums.map(value => value / females) },
  }
}

/** Females at work on a day, each in her own species. */
export function femalesOn(flights: readonly FlightBand[], day: number): number {
  return flights.reduce((sum, { females, curve }) => sum + females * valueOn(curve, day), 0)
}
