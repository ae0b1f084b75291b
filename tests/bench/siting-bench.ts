import loadHighs from 'highs'
import { upperBound } from '#geo/siting/bound'
import { greedy } from '#geo/siting/greedy'
import { leastCost } from '#geo/siting/least-cost'
import { worthOf } from '#geo/siting/objective'
import { prove } from '#geo/siting/programme'
import type { SuggestOptions } from '#geo/siting/question'
import { search } from '#geo/siting/search'
import { suggest } from '#geo/siting/suggest'
import { leastCostBound } from '#geo/siting/target-bound'
import { targetProgramme } from '#geo/siting/target-programme'
import { highsSolver } from '#geo/stocking/highs-solver'
import type { Solver } from '#geo/stocking/solver'
import { block, marks, planOf, station } from '../support/orchard'
import { type KernelName, randomInstance, randomTarget } from '../support/siting-instances'

/** A goal of the bench and what was measured. */
export type GoalLine = { what: string; size: string; goal: string; measured: string; isMet: boolean }

const sizes = [
  { points: 200, sites: 40 },
  { points: 200, sites: 100 },
  { points: 1000, sites: 40 },
]
const kernels: readonly KernelName[] = ['near', 'typical', 'far']
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const percent = (share: number) => `${(100 * share).toFixed(3)} %`

function timed<T>(run: () => T): readonly [T, number] {
  const start = performance.now()
  const value = run()
  return [value, performance.now() - start]
}

/** Search, bound and target against optima that HiGHS proves on seeded instances; the time of a large plan. */
export async function sitingBench(): Promise<GoalLine[]> {
  const solver = highsSolver(await loadHighs())
  return [...(await places(solver)), ...(await targets(solver)), await largePlan()]
}

async function places(solver: Solver): Promise<GoalLine[]> {
  const gaps: number[] = []
  const first: number[] = []
  const excess: number[] = []
  const [own, theirs] = [[] as number[], [] as number[]]
  // Code that has not run yet is slow: a first search does not count.
  search(randomInstance({ points: 200, sites: 40, kernel: 'typical', seed: 99 }))
  for (const size of sizes) {
    for (const kernel of kernels) {
      for (const seed of [1, 2, 3]) {
        const problem = randomInstance({ ...size, kernel, seed })
        const [found, time] = timed(() => search(problem))
        const bound = upperBound(problem, { best: found.value, chosen: found.chosen })
        const start = performance.now()
        const proof = await prove(problem, solver, { timeLimit: 120 })
        theirs.push(performance.now() - start)
        if (!proof.isProven || proof.chosen === null) throw new Error(`no proof of ${size.points} x ${size.sites}`)
        const optimum = worthOf(problem, proof.chosen)
        if (bound < optimum * (1 - 1e-7)) throw new Error(`the bound ${bound} is under the optimum ${optimum}`)
        own.push(time)
        gaps.push(Math.max(0, 1 - found.value / optimum))
        first.push(1 - worthOf(problem, greedy(problem)) / optimum)
        excess.push(bound / optimum - 1)
      }
    }
  }
  const size = `${gaps.length} instances`
  const ratio = mean(theirs) / mean(own)
  process.stdout.write(
    `siting: greedy alone ${percent(mean(first))} short, search ${mean(own).toFixed(1)} ms, HiGHS ${mean(theirs).toFixed(0)} ms in the mean\n`,
  )
  return [
    line('search short of the proven optimum, mean', size, 0.001, mean(gaps)),
    line('search short of the proven optimum, worst', size, 0.005, Math.max(...gaps)),
    line('bound over the proven optimum, mean', size, 0.01, mean(excess)),
    { what: 'HiGHS to proof / search', size, goal: '>= 100', measured: ratio.toFixed(0), isMet: ratio >= 100 },
  ]
}

async function targets(solver: Solver): Promise<GoalLine[]> {
  const gaps: number[] = []
  const below: number[] = []
  const times: number[] = []
  let unproven = 0
  for (const kernel of kernels) {
    for (const seed of [1, 2, 3]) {
      const problem = randomTarget({ points: 200, sites: 40, kernel, seed })
      const [found, time] = timed(() => leastCost(problem))
      if (found === null) throw new Error('no stock found where one is sufficient')
      times.push(time)
      const proof = await solver(targetProgramme(problem), { timeLimit: 60, gap: 0.99 })
      // Where time ran out, what lies under every solution stands for the optimum.
      if (proof.status !== 'proven') unproven += 1
      const optimum = proof.status === 'proven' ? proof.objective! : Math.max(proof.bound!, leastCostBound(problem))
      gaps.push(Math.max(0, found.cost / optimum - 1))
      below.push(1 - leastCostBound(problem) / optimum)
    }
  }
  process.stdout.write(
    `target: worst ${percent(Math.max(...gaps))} over, bound ${percent(mean(below))} under in the mean, ${unproven} not proven in time\n`,
  )
  const size = `${gaps.length} of 200 x 40`
  const longest = Math.max(...times)
  return [
    line('target: cost over the proven optimum, mean', size, 0.005, mean(gaps)),
    { what: 'target: longest, s', size, goal: '<= 2', measured: (longest / 1000).toFixed(2), isMet: longest <= 2000 },
  ]
}

/** Five stations more on 20,000 plants that 100 stations serve already, from up to 400 places. */
async function largePlan(): Promise<GoalLine> {
  const blocks = Array.from({ length: 8 }, (_, i) =>
    block(`block-${i}`, [-275 + 69 * i, -230, -220 + 69 * i, 230], { spacing: 2.5, rowSpacing: 4, crop: 'apple' }),
  )
  const stations = Array.from({ length: 100 }, (_, i) =>
    station(`s${i}`, -260 + 58 * (i % 10), -225 + 50 * Math.floor(i / 10)),
  )
  const stock = Object.fromEntries(stations.map(({ id }) => [id, [{ date: '2026-04-06', females: 20 }]]))
  const plan = planOf({ features: [...marks, ...blocks, ...stations], stock })
  const options = { question: { kind: 'stations', count: 5 }, places: { most: 400 } } as const
  let shortest = Number.POSITIVE_INFINITY
  let size = ''
  for (let run = 0; run < 5; run += 1) {
    const start = performance.now()
    // Until the answer is told: what thinning of places costs is measured afterwards.
    let told = Number.POSITIVE_INFINITY
    const onProgress: SuggestOptions['onProgress'] = ({ stage }) => {
      if (stage === 'report') told = performance.now() - start
    }
    const outcome = await suggest(plan, 2026, { ...options, onProgress })
    shortest = Math.min(shortest, told)
    if (!outcome.ok) throw new Error('no suggestion')
    size = `20,000 x 100, ${outcome.value.places.count} places`
  }
  const seconds = shortest / 1000
  return { what: '5 more stations, s', size, goal: '<= 1', measured: seconds.toFixed(2), isMet: seconds <= 1 }
}

function line(what: string, size: string, goal: number, measured: number): GoalLine {
  return { what, size, goal: `<= ${100 * goal} %`, measured: percent(measured), isMet: measured <= goal }
}
