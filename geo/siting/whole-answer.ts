import { fewestFemales, mostServed, wholeUnits } from '../stocking/fewest'
import { openingCost, type TargetProblem } from './target-problem'

export type TargetAnswer = {
  /** Stations that are opened, and the whole units at each. */
  readonly stations: readonly number[]
  readonly units: readonly number[]
  readonly cost: number
}

/** Whole units at given stations, at least cost; null where they cannot hold enough. */
export function wholeAnswer(problem: TargetProblem, stations: readonly number[]): TargetAnswer | null {
  const stock = fewestFemales(problem, { columns: stations })
  if (stock === null) return null
  const most = problem.most.map((limit, s) => (stations.includes(s) ? limit : 0))
  const females = new Float64Array(most.length)
  stations.forEach((s, i) => {
    females[s] = stock.females[i]!
  })
  const units = wholeUnits({ ...problem, most }, females, problem.unit)
  if (units === null) return null
  const open = stations.filter(s => units[s]! > 0)
  const stocked = open.reduce((sum, s) => sum + units[s]! * problem.unit[s]! * problem.cost[s]!, 0)
  const cost = openingCost(problem, open) + stocked
  return { stations: open, units: open.map(s => units[s]!), cost }
}

/** Whether a station is far enough from some others. */
export function isClear({ clashes }: TargetProblem, stations: readonly number[], s: number): boolean {
  const near = clashes?.[s]
  return near === undefined || !Array.from(near).some(other => stations.includes(other))
}

/** How many of those that make up most are tried. */
const newcomers = 12

/** So many stations are put beside those that are full before it is given up. */
const mostAdded = 20

/** Whole units where given stations cannot hold enough: with more beside them, those that make up most; null where none does. */
export function withMore(problem: TargetProblem, stations: readonly number[]): TargetAnswer | null {
  const { most, services, wanted, group, need } = problem
  let open = [...stations]
  for (let round = 0; round < mostAdded; round += 1) {
    const received = problem.base.slice()
    for (const s of open) {
      for (let entry = services.start[s]!; entry < services.start[s + 1]!; entry += 1) {
        received[services.point[entry]!]! += Math.min(most[s]!, 1e6) * services.service[entry]!
      }
    }
    const served = mostServed({ ...problem, most: most.map((limit, s) => (open.includes(s) ? limit : 0)) })
    // Whole units leave a group short that is barely served in full.
    const isShort = Array.from(need, (least, g) => served[g]! < least * 1.02)
    const gain = (s: number) => {
      let sum = 0
      for (let entry = services.start[s]!; entry < services.start[s + 1]!; entry += 1) {
        const i = services.point[entry]!
        const room = isShort[group[i]!] ? Math.max(0, wanted[i]! - received[i]!) : 0
        sum += Math.min(room, Math.min(most[s]!, 1e6) * services.service[entry]!)
      }
      return sum
    }
    const ranked = most
      .flatMap((limit, s) => (limit > 0 && !open.includes(s) && isClear(problem, open, s) ? [{ s, by: gain(s) }] : []))
      .filter(({ by }) => by > 0)
      .sort((a, b) => b.by - a.by || a.s - b.s)
    let best: TargetAnswer | null = null
    for (const { s } of ranked.slice(0, newcomers)) {
      const answer = wholeAnswer(problem, [...open, s])
      if (answer !== null && (best === null || answer.cost < best.cost)) best = answer
    }
    if (best !== null || ranked.length === 0) return best
    open = [...open, ranked[0]!.s]
  }
  return null
}
