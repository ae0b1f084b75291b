import { thresholds } from '../data/thresholds'
import type { Plan } from '../plan/plan'
import { type StationYear, stationYears } from './record'

/** What speaks against a station as it stands: shares, in a season, against what they were held to. */
export type Evidence = {
  readonly code: 'losses-high' | 'losses-risen' | 'few-capped'
  readonly year: number
  readonly share: number
  readonly against: number
}

export type Advice = 'keep' | 'move' | 'clean' | 'rest'

/** A station over the years, and what its counts speak for. */
export type StationStory = {
  readonly id: string
  readonly name: string
  /** Seasons that use it or have a record of it, oldest first. */
  readonly years: readonly { readonly year: number; readonly found: StationYear }[]
  /** null where nothing was counted: no count is no praise and no blame. */
  readonly advice: Advice | null
  readonly evidence: readonly Evidence[]
}

/**
 * Every station's seasons up to `until`, and what to do with it. *Move* what filled far fewer tubes for its bees than the
 * orchard's stations did, twice running; *rest* what lost many cells, and clearly more than the season before; *clean*
 * what lost many; *keep* the others.
 */
export function stationStories(plan: Plan, until = Number.POSITIVE_INFINITY): readonly StationStory[] {
  const seasons = plan.seasons
    .filter(({ year }) => year <= until)
    .toSorted((a, b) => a.year - b.year)
    .map(({ year }) => ({ year, stations: stationYears(plan, year) }))
  const ids = [...new Map(seasons.flatMap(({ stations }) => stations.map(({ id, name }) => [id, name] as const)))]
  return ids.map(([id, name]) => {
    const years = seasons.flatMap(({ year, stations }) => {
      const found = stations.find(each => each.id === id)
      return found ? [{ year, found, cappedRatio: ratioTo(found, stations) }] : []
    })
    const evidence = [...lossEvidence(years), ...cappedEvidence(years)]
    const isCounted = years.some(({ found }) => found.capped !== null || found.lossShare !== null)
    const plain = years.map(({ year, found }) => ({ year, found }))
    return { id, name, years: plain, advice: isCounted ? adviceOf(evidence) : null, evidence }
  })
}

type Year = { readonly year: number; readonly found: StationYear; readonly cappedRatio: number | null }

function adviceOf(evidence: readonly Evidence[]): Advice {
  const has = (code: Evidence['code']) => evidence.some(each => each.code === code)
  if (has('few-capped')) return 'move'
  if (!has('losses-high')) return 'keep'
  return has('losses-risen') ? 'rest' : 'clean'
}

function lossEvidence(years: readonly Year[]): readonly Evidence[] {
  const known = years.flatMap(({ year, found }) => (found.lossShare ? [{ year, share: found.lossShare.share }] : []))
  const [last, before] = [known.at(-1), known.at(-2)]
  if (last === undefined) return []
  const { lossHigh, lossRise } = thresholds
  const isHigh = last.share > lossHigh.value
  const hasRisen = before !== undefined && last.share - before.share > lossRise.value
  return [
    ...(isHigh ? [{ code: 'losses-high' as const, ...last, against: lossHigh.value }] : []),
    ...(hasRisen ? [{ code: 'losses-risen' as const, ...last, against: before.share }] : []),
  ]
}

function cappedEvidence(years: readonly Year[]): readonly Evidence[] {
  const known = years.filter(({ cappedRatio }) => cappedRatio !== null).slice(-2)
  const { cappedPoor } = thresholds
  if (known.length < 2 || known.some(({ cappedRatio }) => cappedRatio! >= cappedPoor.value)) return []
  return known.map(({ year, cappedRatio }) => ({
    code: 'few-capped',
    year,
    share: cappedRatio!,
    against: cappedPoor.value,
  }))
}

/** Capped tubes per female set out, as a share of what the season's counted stations had together; null where not known. */
function ratioTo(station: StationYear, stations: readonly StationYear[]): number | null {
  const counted = stations.filter(({ capped, released }) => capped !== null && released.females > 0)
  if (counted.length < 2 || !counted.includes(station)) return null
  const sum = (of: (each: StationYear) => number) => counted.reduce((total, each) => total + of(each), 0)
  const all = sum(({ capped }) => capped!) / sum(({ released }) => released.females)
  return all > 0 ? station.capped! / station.released.females / all : null
}

/** "move: 30% of the orchard's capped tubes for its bees in 2024". */
export function adviceText({ advice, evidence }: StationStory): string {
  if (advice === null) return 'not counted'
  return evidence.length === 0 ? advice : `${advice}: ${evidence.map(evidenceText).join('; ')}`
}

function evidenceText({ code, year, share, against }: Evidence): string {
  const percent = (value: number) => `${Math.round(value * 100)}%`
  switch (code) {
    case 'losses-high':
      return `${percent(share)} of cells lost in ${year}, over ${percent(against)}`
    case 'losses-risen':
      return `up from ${percent(against)}`
    case 'few-capped':
      return `for its bees ${percent(share)} of the tubes that the others filled in ${year}`
    default:
      return code satisfies never
  }
}
