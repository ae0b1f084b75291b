import type { Problem } from '../problem'
import { checkCrops } from './check-crops'
import { checkForage, checkProperties } from './check-figures'
import { checkGround } from './check-ground'
import { checkLots } from './check-lots'
import { checkPictures } from './check-pictures'
import { checkPlants } from './check-plants'
import { checkSeasons } from './check-seasons'
import { checkSettings } from './check-settings'
import { checkStations } from './check-stations'
import type { Plan } from './plan'
import { problemList } from './report-problem'
import { checkTiles } from './tiles'

/**
 * What the meaning of a plan has against it, beyond its shape: outlines, dates, figures, names that lead nowhere.
 * Errors allow no result, warnings make it doubtful. With `year`, only that season and what stands in the ground then.
 * Never throws: a plan straight from a file is what it is for.
 */
export function checkPlan(plan: Plan, year?: number): readonly Problem[] {
  const { report, finish } = problemList()
  checkSettings(plan, report)
  const isMeasurable = checkGround(plan, report)
  checkProperties(plan, report)
  checkForage(plan, year, report)
  checkCrops(plan, report)
  checkSeasons(plan, year, report)
  checkLots(plan, year, report)
  checkPictures(plan, report)
  checkTiles(plan, report)
  checkStations(plan, year, isMeasurable, report)
  // A row that leads to the far side of the earth by mistake is told of once.
  if (isMeasurable) checkPlants(plan, year, report)
  return finish()
}
