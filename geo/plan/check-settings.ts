import { bees } from '../data/bees'
import { type BeeId, beeIds } from '../data/own'
import { settingsFor } from '../data/settings'
import { checkFigure, checkFigures } from './check-figures'
import { beeLimits, type Limit, siteLimits } from './limits'
import { pathText, shortened } from './place'
import type { Plan } from './plan'
import type { ReportProblem } from './report-problem'

const isBee = (id: string): id is BeeId => (beeIds as readonly string[]).includes(id)

/** Time zone, coordinate system, default bee and the grower's own values. */
export function checkSettings(plan: Plan, report: ReportProblem): void {
  if (!isTimeZone(plan.timeZone)) {
    report('warning', 'time-zone-unknown', 'plan.timeZone', { zone: shortened(plan.timeZone) })
  }
  checkReferenceSystem(plan.besides.crs, report)
  checkBee(plan.bee, 'The plan', 'plan.bee', report)
  for (const [key, value] of Object.entries(plan.parameters)) {
    const at = pathText(['plan', 'parameters', key])
    const owner = { name: 'The plan', at, path: at }
    if (isBee(key) ? typeof value === 'number' : Object.hasOwn(siteLimits, key) && typeof value !== 'number') {
      report('error', 'parameter-misplaced', at, { parameter: shortened(key), isBee: isBee(key) })
    } else if (typeof value === 'number') {
      const limit = Object.hasOwn(siteLimits, key) ? (siteLimits as Record<string, Limit>)[key] : undefined
      if (limit !== undefined) checkFigure(value, limit, owner, report)
      else reportUnknown(key, at, Object.hasOwn(beeLimits, key), report)
    } else if (isBee(key)) {
      checkBeeValues(value, key, report)
      checkBeePairs(plan, key, report)
    } else {
      reportUnknown(key, at, false, report)
    }
  }
}

function reportUnknown(parameter: string, at: string, isOfBee: boolean, report: ReportProblem): void {
  report('warning', 'parameter-unknown', at, { parameter: shortened(parameter), path: at, isOfBee })
}

function checkBeeValues(values: Readonly<Record<string, number>>, bee: BeeId, report: ReportProblem): void {
  const path = ['plan', 'parameters', bee]
  const at = pathText(path)
  checkFigures(values, beeLimits, { name: bees[bee].name, at, path: at }, report)
  for (const key of Object.keys(values)) {
    if (!Object.hasOwn(beeLimits, key)) reportUnknown(key, pathText([...path, key]), false, report)
  }
}

/** Figures that must not pass each other, with the table's where the grower gave only one of a pair. */
function checkBeePairs(plan: Plan, bee: BeeId, report: ReportProblem): void {
  const values = settingsFor({ parameters: plan.parameters, crops: {} }).bees[bee]
  const at = pathText(['plan', 'parameters', bee])
  const pairs = [
    // Between the two thresholds flight rises in proportion, so they cannot be one.
    ['error', 'flightFrom', 'flightFull', values.flightFrom < values.flightFull],
    ['warning', 'boreMin', 'boreMax', values.boreMin <= values.boreMax],
    ['warning', 'typicalForagingRadius', 'maxForagingRange', values.typicalForagingRadius <= values.maxForagingRange],
  ] as const
  for (const [severity, low, high, isInOrder] of pairs) {
    if (isInOrder) continue
    const labels = { lowLabel: beeLimits[low].label, highLabel: beeLimits[high].label }
    report(severity, 'parameters-crossed', at, {
      name: bees[bee].name,
      ...labels,
      low: values[low],
      high: values[high],
    })
  }
}

/** Whether `bee` is a species with figures; the type says so, a plan put together elsewhere may not. */
export function checkBee(bee: string, name: string, at: string, report: ReportProblem): void {
  if (!isBee(bee)) report('error', 'bee-unknown', at, { name, bee: shortened(bee), known: beeIds.join(', ') })
}

const knownZones = new Map<string, boolean>()

/** IANA time zones, as the machine's own calendar knows them. Asked once for each: the calendar takes its time. */
function isTimeZone(zone: string): boolean {
  const known = knownZones.get(zone)
  if (known !== undefined) return known
  const is = hasCalendar(zone)
  knownZones.set(zone, is)
  return is
}

function hasCalendar(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== ''
  } catch {
    return false
  }
}

/** GeoJSON of 2008 could name another coordinate system; RFC 7946 has one. */
function checkReferenceSystem(crs: unknown, report: ReportProblem): void {
  if (typeof crs !== 'object' || crs === null) return
  const { properties } = crs as { properties?: unknown }
  const name = typeof properties === 'object' && properties !== null && 'name' in properties ? properties.name : ''
  if (typeof name !== 'string' || name === '' || /(CRS:?84|EPSG:+4326)$/i.test(name)) return
  report('error', 'other-coordinates', 'crs', { system: shortened(name) })
}
