import { checkDate, type Dated } from './check-dates'
import { checkFigure, checkFigures } from './check-figures'
import { counted } from './limits'
import { pathText } from './place'
import type { Season } from './plan'
import type { ReportProblem } from './report-problem'

const openingLimits = {
  tubesOpened: counted('number of tubes opened'),
  cells: counted('number of cells'),
  females: counted('number of females'),
  males: counted('number of males'),
}
const fruitLimits = { flowers: counted('number of flowers'), fruit: counted('number of fruit') }
const capped = { capped: counted('number of capped tubes') }

type Places = {
  /** Index of the season in the plan, its year, and the year to measure dates by. */
  readonly index: number
  readonly year: number
  readonly dateYear: number | null
  /** Name of a drawn thing; null where the id is not drawn. */
  nameOf(id: string): string | null
}

/** Counts of a season's visits, nest openings and fruit. They do not enter the season's coverage: nothing is an error. */
export function checkRecords(season: Season, { index, year, dateYear, nameOf }: Places, report: ReportProblem): void {
  const owner = (group: string, id: string): { name: string; at: string; path: string } | null => {
    const path = pathText(['plan', 'seasons', index, group, id])
    const name = nameOf(id)
    if (name !== null) return { name, at: id, path }
    report('note', 'record-unused', path, { id, year, path })
    return null
  }
  for (const [id, record] of Object.entries(season.records ?? {})) {
    const station = owner('records', id)
    if (station === null) continue
    const dated = { name: station.name, at: id, year: dateYear, severity: 'warning' } as const satisfies Partial<Dated>
    for (const [number, visit] of (record.visits ?? []).entries()) {
      const path = `${station.path}.visits[${number}]`
      checkDate(visit.date, { ...dated, label: 'visit', path: `${path}.date` }, report)
      checkFigures(visit, capped, { ...station, path }, report)
    }
    const { opening } = record
    if (opening === undefined) continue
    const path = `${station.path}.opening`
    checkDate(opening.date, { ...dated, label: 'nest opening', path: `${path}.date` }, report)
    checkFigures(opening, openingLimits, { ...station, path }, report)
    for (const [cause, lost] of Object.entries(opening.losses ?? {})) {
      const place = {
        ...station,
        path: pathText(['plan', 'seasons', index, 'records', id, 'opening', 'losses', cause]),
      }
      if (lost !== null) checkFigure(lost, counted('number of cells lost'), place, report)
    }
  }
  for (const [id, count] of Object.entries(season.fruitSet ?? {})) {
    const planting = owner('fruitSet', id)
    if (planting === null) continue
    checkFigures(count, fruitLimits, planting, report)
    const { flowers, fruit } = count
    if (fruit > flowers) report('warning', 'fruit-set-high', id, { name: planting.name, flowers, fruit, year })
  }
}
