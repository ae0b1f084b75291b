import { describe, expect, test } from 'vitest'
import { settingsFor } from '#geo/data/settings'
import { type Season, seasonOf } from '#geo/plan/plan'
import { isFieldCheck } from '#geo/problem'
import { golden } from '../support/golden'
import { scenarios } from '../support/scenario-maker'
import { planting, scenarioDistances, scenarioPlan, scenarioReport, sum } from '../support/scenario-reports'

/** What holds for every example plan, beside the recorded results. */

const cases = scenarios.flatMap(({ name, years }) => years.map(year => [name, year] as const))

describe.each(cases)('%s in %d', (name, year) => {
  const report = scenarioReport(name, year)

  test('comes to a result, with nothing against it but field checks', () => {
    expect(report.problems.filter(problem => !isFieldCheck(problem))).toEqual([])
    expect(report.problems.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  test('comes to what was recorded', () => {
    const { found, expected } = golden(`${name}-${year}`, report)
    expect(found).toBe(expected)
  })

  test('keeps its shares between 0 and 1 and adds its plantings up', () => {
    const { orchard, plantings } = report
    for (const { coverage, reach, wanted, shortBy, id } of plantings) {
      expect(coverage, id).toBeGreaterThanOrEqual(0)
      expect(coverage, id).toBeLessThanOrEqual(1 + 1e-12)
      expect(reach, id).toBeLessThanOrEqual(1 + 1e-12)
      expect(shortBy, id).toBeCloseTo(wanted * (1 - coverage!), 9)
    }
    expect(sum(plantings.map(({ wanted }) => wanted))).toBeCloseTo(orchard.wanted, 9)
    expect(sum(plantings.map(({ supplied }) => supplied!))).toBeCloseTo(orchard.supplied!, 9)
    expect(orchard.shortBy).toBeCloseTo(orchard.wanted * (1 - orchard.coverage!), 9)
  })

  test('wants no more on its busiest day than all its plantings together, no less than any one of them', () => {
    const { orchard, plantings } = report
    const { wanted } = orchard.busiestDay!
    expect(wanted).toBeLessThanOrEqual(orchard.wanted + 1e-9)
    expect(wanted).toBeGreaterThanOrEqual(Math.max(...plantings.map(row => row.wanted)) - 1e-9)
  })

  test('reaches the plants within the radius of a station, measured on the ellipsoid', () => {
    const { bees } = settingsFor(scenarioPlan(name))
    const radii = Object.fromEntries(report.stations.map(({ id, bee }) => [id, bees[bee].typicalForagingRadius]))
    for (const [id, plants] of Object.entries(scenarioDistances(name, year))) {
      const reached = plants.filter(plant =>
        Object.entries(plant).some(([station, metres]) => metres <= radii[station]!),
      )
      expect(planting(report, id).reach, id).toBeCloseTo(reached.length / plants.length, 12)
    }
  })

  test('nests the females that its cocoons give, and asks for those cocoons', () => {
    const { bees } = settingsFor(scenarioPlan(name))
    for (const { id, bee, females, femaleCocoons } of report.stations) {
      const { emergence, establishment } = bees[bee]
      const { releases } = seasonOf(scenarioPlan(name), year)!.stations![id]!
      const out = sum(releases!.map(release => release.females))
      expect(females, id).toBeCloseTo(out * emergence * establishment, 9)
      expect(femaleCocoons, id).toBe(out)
    }
  })
})

/** Totals over a season's stations. */
function totals(season: Season) {
  const used = Object.values(season.stations ?? {})
  const records = Object.values(season.records ?? {})
  const releases = used.flatMap(station => station.releases ?? [])
  const openings = records.map(({ opening }) => opening!)
  return {
    cocoons: sum(releases.map(({ females, males = 0 }) => females + males)),
    females: sum(releases.map(({ females }) => females)),
    tubes: sum(used.map(({ tubes = 0 }) => tubes)),
    capped: sum(records.map(({ visits = [] }) => visits.at(-1)!.capped!)),
    cells: sum(openings.map(({ cells }) => cells!)),
    daughters: sum(openings.map(opening => opening.females!)),
    sons: sum(openings.map(opening => opening.males!)),
    lost: sum(openings.flatMap(({ losses = {} }) => Object.values(losses).map(count => count!))),
  }
}

describe('what was put out and counted', () => {
  // Cocoons, females among them, tubes, tubes capped, cells, healthy daughters and sons, cells lost.
  test.each([
    ['allotment', 2024, [300, 120, 240, 82, 500, 129, 211, 160]],
    ['allotment', 2025, [300, 114, 300, 144, 835, 261, 391, 183]],
    ['mixed-orchard', 2024, [2000, 800, 1000, 470, 2538, 588, 1002, 948]],
    ['mixed-orchard', 2025, [2490, 946, 1600, 1020, 6018, 1720, 2690, 1608]],
    ['farm', 2024, [8000, 3200, 3000, 1830, 10980, 2660, 4130, 4190]],
    ['farm', 2025, [10600, 4134, 5500, 3659, 20856, 5510, 8420, 6926]],
  ])('%s, %d', (name, year, expected) => {
    const season = seasonOf(scenarioPlan(name), year)!
    expect(Object.values(totals(season))).toEqual(expected)
    for (const [id, { opening, visits = [] }] of Object.entries(season.records!)) {
      const { cells, females, males, losses, tubesOpened } = opening!
      expect(cells, id).toBe(females! + males! + sum(Object.values(losses!).map(count => count!)))
      expect(tubesOpened, id).toBe(visits.at(-1)!.capped)
      expect(tubesOpened, id).toBeLessThanOrEqual(season.stations![id]!.tubes!)
      const capped = visits.flatMap(visit => visit.capped ?? [])
      expect(capped, id).toEqual([...capped].sort((a, b) => a - b))
    }
  })
})
