import { expect, it } from 'vitest'
import { type CsvTable, planTable } from '#geo/file/csv-tables'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { plantFeature, rowFeature, smallPlan, stationFeature, step } from '../../support/builders'
import { planOf, sampleFile } from './sample-file'

/** Rows as groups of cells by the name of their column; no cell of these plans holds a comma. */
function rows(plan: Plan, table: CsvTable): readonly Readonly<Record<string, string>>[] {
  const [head = [], ...lines] = planTable(plan, table)
    .trimEnd()
    .split('\r\n')
    .map(line => line.split(','))
  return lines.map(line => Object.fromEntries(head.map((name, i) => [name, line[i] ?? ''])))
}

const sample = () => planOf(readPlan(JSON.stringify(sampleFile())))

it('has a line for each planting, with what it measures and holds', () => {
  const plan = sample()
  const report = evaluate(plan, 2026)
  if (!report.ok) throw new Error('no report')
  const table = rows(plan, 'plantings')
  expect(table.map(({ id }) => id)).toEqual(report.value.plantings.map(({ id }) => id))
  for (const { id, kind, plants } of table) {
    // The report breaks beds into cells; a bed has no plants that could be counted.
    const { points } = report.value.plantings.find(planting => planting.id === id)!
    expect(plants).toBe(kind === 'bed' ? '' : String(points))
  }
  const row = table.find(({ id }) => id === 'row-3')!
  // 0.0009 degrees of latitude are 100.1 m at 52.2 N (Snyder 1987: 111 259 m a degree there).
  expect(Number(row['length (m)'])).toBeCloseTo(0.0009 * 111_259, 0)
  expect(row).toMatchObject({ crop: 'apple-late', 'crop name': 'Late apple' })
  expect(Number(row.longitude)).toBe(-1.7)
})

it('has every plant at its place', () => {
  const plan = smallPlan({
    features: [
      rowFeature('row-1', { count: 3 }, [0, 0], [10, 0]),
      plantFeature('pear', { crop: 'pear-european' }, [2, 5]),
    ],
  })
  const table = rows(plan, 'plants')
  expect(table.map(({ planting, plant }) => [planting, plant])).toEqual([
    ['row-1', '1'],
    ['row-1', '2'],
    ['row-1', '3'],
    ['pear', '1'],
  ])
  const at = table.map(({ longitude, latitude }) => [Number(longitude), Number(latitude)])
  const wanted = [step([0, 0]), step([5, 0]), step([10, 0]), step([2, 5])]
  // A tenth of a millimetre, and what the arc of a row of 70 m bends from its chord.
  for (const [i, place] of wanted.entries())
    for (const axis of [0, 1]) expect(at[i]![axis]).toBeCloseTo(place[axis]!, 8)
})

it('has stations with their use in the latest season; what is not known is empty, not 0', () => {
  const table = rows(smallPlan(), 'stations')
  expect(table[0]).toMatchObject({
    id: 'station-1',
    name: 'North gate',
    season: '2026',
    tubes: '120',
    'female cocoons': '60',
  })
  expect(table[1]).toMatchObject({
    id: 'station-2',
    name: '',
    season: '',
    tubes: '',
    'female cocoons': '',
    'height (m)': '',
  })
})

it('keeps names from being taken for formulas', () => {
  const features = [stationFeature('s', { name: '=HYPERLINK("http://x")' }), stationFeature('t', { name: '-2' })]
  const text = planTable(smallPlan({ features }), 'stations')
  expect(text).toContain(`s,"'=HYPERLINK(""http://x"")",-1.69`)
  expect(text).toContain("t,'-2,-1.69")
})

it('lays out nothing in a plan with errors, and says nothing of it that could not be trusted', () => {
  const features = [rowFeature('row-1', { spacing: -1 }), plantFeature('pear')]
  const plan = smallPlan({ features })
  expect(rows(plan, 'plants').map(({ planting }) => planting)).toEqual(['pear'])
  expect(rows(plan, 'plantings')[0]).toMatchObject({ plants: '', 'length (m)': '', 'spacing (m)': '-1' })
})
