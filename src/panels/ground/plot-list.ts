import type { Plan } from '#geo/plan/plan'
import { cropChoices } from '../../parts/crop-field'
import { readNumber } from '../../text/read-number'
import type { Read } from './typed-geometry'

/** What grows on a plot: so many plants of a crop; null = the whole plot is a bed of it. */
export type PlotPlants = { readonly plot: string; readonly crop: string; readonly count: number | null }

/** More plants of one kind than fit on a plot; a slip of the finger must not draw a million. */
const mostPlants = 500

/** One line for each crop of a plot: `12A; apple; 2`, or without a number where it fills the plot. Commas and tabs serve too. */
export function readPlotList(text: string, plan: Plan, names: ReadonlySet<string>): Read<readonly PlotPlants[]> {
  const crops = new Map(
    cropChoices(plan).flatMap(({ value, name }) => [[value, value] as const, [plain(name), value] as const]),
  )
  const found: PlotPlants[] = []
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue
    const [plot = '', word = '', amount = '', ...more] = line.split(/[;,\t]/).map(cell => cell.trim())
    const wrong = (why: string): Read<never> => ({ ok: false, why: `Line ${index + 1}: ${why}` })
    const name = plot.replace(/^plot\s+/i, '').toUpperCase()
    if (!names.has(name)) return wrong(`“${plot}” is no plot of this grid.`)
    const crop = crops.get(plain(word))
    if (crop === undefined) return wrong(`“${word}” is no crop of this plan or of the tables.`)
    if (more.some(cell => cell !== '')) return wrong('there should be a plot, a crop and a number.')
    if (amount === '') {
      found.push({ plot: name, crop, count: null })
      continue
    }
    const count = readNumber(amount)
    if (!count.ok) return wrong(count.why)
    if (!Number.isInteger(count.value) || count.value < 1 || count.value > mostPlants) {
      return wrong(`“${amount}” should be a whole number from 1 to ${mostPlants}.`)
    }
    found.push({ plot: name, crop, count: count.value })
  }
  return { ok: true, value: found }
}

function plain(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ')
}
