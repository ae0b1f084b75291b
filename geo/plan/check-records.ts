import { type Threshold, thresholds } from '../data/thresholds'
import { checkDate, type Dated } from './check-dates'
import { checkFigure, checkFigures, type Owner } from './check-figures'
import { counted, type Limit } from './limits'
import { pathText, shortened } from './place'
import type { NestCounts, Opening, Season } from './plan'
import { accountedCells, openingFaults, type RecordFault, tubesOf, visitFaults } from './record-faults'
import type { ReportProblem } from './report-problem'

const openingLimits = {
  tubesOpened: counted('number of tubes opened'),
  cells: counted('number of cells'),
  females: counted('number of females'),
  males: counted('number of males'),
}
const fruitLimits = { flowers: counted('number of flowers'), fruit: counted('number of fruit') }
const capped = { capped: counted('number of capped tubes') }
const shareLimits = {
  measure: { label: 'measure of the share', unit: '', low: 0, high: 1e9, isMinor: true } as const satisfies Limit,
  cocoons: counted('number of cocoons'),
}

type Places = {
  /** Index of the season in the plan, its year, and the year to measure dates by. */
  readonly index: number
  readonly year: number
  readonly dateYear: number | null
  /** Name of a drawn thing; null where the id is not drawn. */
  nameOf(id: string): string | null
}

/**
 * Counts of a season's visits, nest openings and fruit, and what was given away. The season's coverage does not hang on
 * them, so nothing is an error: counts that cannot be are warnings, and nothing is worked out from them.
 */
export function checkRecords(season: Season, { index, year, dateYear, nameOf }: Places, report: ReportProblem): void {
  const owner = (group: string, id: string): Owner | null => {
    const path = pathText(['plan', 'seasons', index, group, id])
    const name = nameOf(id)
    if (name !== null) return { name, at: id, path }
    report('note', 'record-unused', path, { id, year, path })
    return null
  }
  for (const [id, record] of Object.entries(season.records ?? {})) {
    const station = owner('records', id)
    if (station === null) continue
    const tubes = tubesOf(season, id)
    const dated = { name: station.name, at: id, year: dateYear, severity: 'warning' } as const satisfies Partial<Dated>
    const visits = record.visits ?? []
    for (const [number, visit] of visits.entries()) {
      const path = `${station.path}.visits[${number}]`
      checkDate(visit.date, { ...dated, label: 'visit', path: `${path}.date` }, report)
      checkFigures(visit, capped, { ...station, path }, report)
    }
    if (record.takenIn !== undefined) {
      checkDate(record.takenIn, { ...dated, label: 'taking in', path: `${station.path}.takenIn` }, report)
    }
    for (const fault of visitFaults(visits, tubes)) {
      tellFault(fault, { ...station, path: `${station.path}.visits` }, year, report)
    }
    const { opening } = record
    if (opening === undefined) continue
    const path = `${station.path}.opening`
    checkDate(opening.date, { ...dated, label: 'nest opening', path: `${path}.date` }, report)
    checkOpening(opening, { ...station, path }, year, tubes, report)
  }
  for (const [id, count] of Object.entries(season.fruitSet ?? {})) {
    const planting = owner('fruitSet', id)
    if (planting === null) continue
    checkFigures(count, fruitLimits, planting, report)
    const { flowers, fruit } = count
    if (typeof fruit === 'number' && fruit > flowers)
      report('warning', 'fruit-set-high', id, { name: planting.name, flowers, fruit, year })
  }
  for (const [number, share] of (season.shareOut?.shares ?? []).entries()) {
    const path = `plan.seasons[${index}].shareOut.shares[${number}]`
    checkFigures(share, shareLimits, { name: shortened(share.to) || 'A share', at: path, path }, report)
  }
}

function checkOpening(
  opening: Opening,
  owner: Owner,
  year: number,
  tubes: number | undefined,
  report: ReportProblem,
): void {
  checkCounts(opening, owner, report)
  for (const [number, tube] of (opening.tubes ?? []).entries()) {
    checkCounts(tube, { ...owner, path: `${owner.path}.tubes[${number}]` }, report)
  }
  const faults = openingFaults(opening, tubes)
  for (const fault of faults) tellFault(fault, owner, year, report)
  if (faults.length > 0) return
  const { name, at } = owner
  const { cells, tubesOpened, tubes: list } = opening
  if (list && typeof tubesOpened === 'number' && list.length > tubesOpened) {
    report('warning', 'tubes-listed', at, { name, year, listed: list.length, opened: tubesOpened })
  }
  const isWhole = [opening.females, opening.males, cells].every(count => typeof count === 'number')
  const found = accountedCells(opening)
  if (isWhole && opening.losses && found < cells!) {
    report('note', 'cells-missing', at, { name, year, found, cells: cells! })
  }
  checkFemaleShare(opening, owner, year, report)
}

function checkCounts(counts: NestCounts, owner: Owner, report: ReportProblem): void {
  checkFigures(counts, openingLimits, owner, report)
  for (const [cause, lost] of Object.entries(counts.losses ?? {})) {
    const path = `${owner.path}${pathText(['', 'losses', cause])}`
    if (lost !== null) checkFigure(lost, counted('number of cells lost'), { ...owner, path }, report)
  }
}

/** Of fewer cocoons such a share comes about by chance: of 20 with 37 % daughters, 1 time in 30. */
const leastSexed = 20

function checkFemaleShare(opening: Opening, { name, at }: Owner, year: number, report: ReportProblem): void {
  const { females, males } = opening
  if (typeof females !== 'number' || typeof males !== 'number' || !(females + males >= leastSexed)) return
  doubtShare(females / (females + males), { name, at, year }, report)
}

/** A share of daughters that is seldom found. */
export function doubtShare(
  share: number,
  { name, at, year }: { readonly name: string; readonly at: string; readonly year: number | null },
  report: ReportProblem,
): void {
  const { femaleShareLow, femaleShareHigh } = thresholds
  const isLow = share < femaleShareLow.value
  if (!isLow && !(share > femaleShareHigh.value)) return
  const limit: Threshold = isLow ? femaleShareLow : femaleShareHigh
  const percent = (value: number) => Math.round(value * 100)
  report('warning', 'female-share-odd', at, { name, year, share: percent(share), limit: percent(limit.value), isLow })
}

function tellFault(fault: RecordFault, { name, at, path }: Owner, year: number, report: ReportProblem): void {
  switch (fault.code) {
    case 'capped-over-tubes': {
      const { visit, capped, tubes } = fault
      report('warning', fault.code, at, { name, year, capped, tubes, path: `${path}[${visit}]` })
      return
    }
    case 'capped-falls': {
      const { visit, capped, before } = fault
      report('warning', fault.code, at, { name, year, capped, before, path: `${path}[${visit}]` })
      return
    }
    case 'opened-over-tubes': {
      const { opened, tubes } = fault
      report('warning', fault.code, at, { name, year, opened, tubes, path })
      return
    }
    case 'cells-overfull': {
      const { tube, found, cells } = fault
      const place = tube === null ? path : `${path}.tubes[${tube}]`
      report('warning', fault.code, at, {
        name,
        year,
        tube: tube === null ? null : tube + 1,
        found,
        cells,
        path: place,
      })
      return
    }
    default:
      fault satisfies never
  }
}
