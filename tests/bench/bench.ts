import { Coverage } from '#geo/coverage/coverage'
import { fieldOf } from '#geo/coverage/field'
import { Reach } from '#geo/coverage/reach'
import { runsInDisc } from '#geo/coverage/runs'
import { seededRandom } from '#geo/random'
import { type Instance, instanceOf, sizes } from './instance'
import { planBench } from './plan-bench'
import { carefulIndex, onEarth, plainSum, turfDistances, turfReach } from './rivals'
import { sitingBench } from './siting-bench'

/*
 * Time as ratios within one run: own code and rival take turns in one process, the least of many repeats counts, and
 * the checksum of every timed run is held against the first. `--huge` adds a million plants and ten thousand stations, `--siting` the
 * search for places against optima that a general solver proves (some minutes).
 */

type Line = { what: string; size: string; goal: string; measured: string; isMet: boolean }
const lines: Line[] = []

function least(runs: readonly (() => number)[], repeats: number): number[] {
  const checks = runs.map(run => run())
  const best = runs.map(() => Number.POSITIVE_INFINITY)
  for (let repeat = 0; repeat < repeats; repeat += 1) {
    runs.forEach((run, i) => {
      const start = performance.now()
      const check = run()
      best[i] = Math.min(best[i]!, performance.now() - start)
      same(check, checks[i]!, 1e-9, `run ${i} repeated`)
    })
  }
  return best
}

function same(a: number, b: number, tolerance: number, what: string): void {
  const scale = Math.max(Math.abs(a), Math.abs(b))
  if (!(Math.abs(a - b) <= tolerance * scale)) throw new Error(`${what}: ${a} is not ${b}`)
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0)
const number = (value: number): string =>
  value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2)

function atMost(what: string, size: string, ratio: number, goal: number): void {
  lines.push({
    what,
    size,
    goal: `<= ${goal < 1 ? `1/${1 / goal}` : goal}`,
    measured: ratio < 0.1 ? `1/${number(1 / ratio)}` : number(ratio),
    isMet: ratio <= goal,
  })
}

function atLeast(what: string, size: string, ratio: number, goal: number): void {
  lines.push({ what, size, goal: `>= ${goal.toLocaleString('en')}`, measured: number(ratio), isMet: ratio >= goal })
}

function ready(instance: Instance, field = instance.field): Coverage {
  const coverage = new Coverage(field, instance.groups, instance.blooms, 0.85)
  coverage.setStations(instance.stations)
  return coverage
}

/** All stations afresh, and every group's totals. */
function recomputeOf({ stations }: Instance, coverage: Coverage): () => number {
  return () => {
    coverage.setStations(stations)
    return coverage.totals().reduce((total, { served }) => total + served, 0)
  }
}

/** Pairs of a plant and a station that lie in range of one another, counted one by one. */
function pairsOf({ field, stations }: Instance): number {
  const runs = new Uint32Array(3 * field.tileStart.length)
  const marks = new Uint8Array(field.tileStart.length)
  let pairs = 0
  for (const { x, y, kernel } of stations) {
    const limit = kernel.range * kernel.range
    let end = 0
    for (let group = 0; group + 1 < field.groupStart.length; group += 1) {
      end = runsInDisc(field, group, { x, y, radius: kernel.range }, end, runs, marks)
    }
    for (let run = 0; run < end; run += 1) {
      for (let i = runs[3 * run]!; i < runs[3 * run + 1]!; i += 1) {
        const dx = field.x[i]! - x
        const dy = field.y[i]! - y
        if (dx * dx + dy * dy <= limit) pairs += 1
      }
    }
  }
  return pairs
}

/** Full recompute against the plain sum; memory; returns time and pairs for the scaling. */
function full(instance: Instance, repeats: number): { milliseconds: number; pairs: number; coverage: Coverage } {
  const { size } = instance
  const coverage = ready(instance)
  const still = coverage.supplied.slice()
  const [own, plain] = least([recomputeOf(instance, coverage), () => plainSum(instance, still)], repeats) as [
    number,
    number,
  ]
  atMost('full recompute / one plain sum over the same runs', size.name, own / plain, 4)
  if (size.plants >= 20_000) atMost('bytes a plant', size.name, coverage.bytes / size.plants, 48)
  return { milliseconds: own, pairs: pairsOf(instance), coverage }
}

/** One station put to 60 places in turn, totals read after each, against a full recompute. */
function move(instance: Instance, coverage: Coverage, repeats: number): void {
  const random = seededRandom(7)
  const start = instance.stations[0]!
  const places = Array.from({ length: 60 }, () => ({ x: random() * instance.side, y: random() * instance.side }))
  const moves = () => {
    let served = 0
    for (const { x, y } of places) {
      coverage.moveStation(0, x, y)
      served += coverage.totals().reduce((total, group) => total + group.served, 0)
    }
    return served
  }
  const [full, all] = least([recomputeOf(instance, coverage), moves], repeats) as [number, number]
  coverage.moveStation(0, start.x, start.y)
  same(sum(coverage.supplied), sum(ready(instance).supplied), 0, 'moved back')
  atMost('one move (mean of 60) / full recompute', instance.size.name, all / places.length / full, 1 / 40)
}

function rivals(instance: Instance): void {
  const { size, field, stations, groups } = instance
  const coverage = ready(instance)
  const careful = carefulIndex(instance)
  same(sum(careful), sum(coverage.supplied), 1e-9, 'service by the careful index')
  const fresh = () => sum(ready(instance, fieldOf(instance.strips)).supplied)
  const [own, theirs] = least([fresh, () => sum(carefulIndex(instance))], size.plants > 50_000 ? 2 : 7) as [
    number,
    number,
  ]
  atLeast('careful kdbush + typed arrays / full recompute with its index', size.name, theirs / own, 8)
  if (size.plants > 20_000) return
  const earth = onEarth(instance)
  const [full, turf] = least([recomputeOf(instance, coverage), () => turfDistances(earth, 300)], 9) as [number, number]
  atLeast('turf distance over all pairs / full recompute', size.name, turf / full, 100)
  const radius = 67
  // The field is there already, as it is for whoever computes coverage.
  const reach = () => {
    const reached = new Reach(field)
    for (const { x, y } of stations) reached.add({ x, y, radius })
    return groups.reduce((total, _, group) => total + reached.reachedOf(group), 0)
  }
  // The discs of turf are polygons on a sphere, so the two counts differ by the few plants near an edge.
  same(reach(), turfReach(earth, radius), 0.01, 'plants in reach')
  const [near, discs] = least([reach, () => turfReach(earth, radius)], 9) as [number, number]
  atLeast('turf buffer + union + point in polygon / reach alone', size.name, discs / near, 2000)
}

const isHuge = process.argv.includes('--huge')
const scaling: { recompute: () => number; pairs: number }[] = []
for (const size of [sizes.small, sizes.medium, sizes.large, ...(isHuge ? [sizes.huge] : [])]) {
  const instance = instanceOf(size)
  const repeats = size.plants > 200_000 ? 4 : Math.max(12, Math.round(4e6 / size.plants / Math.sqrt(size.stations)))
  const { milliseconds, pairs, coverage } = full(instance, repeats)
  scaling.push({ recompute: recomputeOf(instance, coverage), pairs })
  process.stdout.write(
    `${size.name}: ${pairs.toLocaleString('en')} pairs in ${number(milliseconds)} ms, ${number((milliseconds * 1e6) / pairs)} ns a pair\n`,
  )
  if (size.stations >= 100) move(instance, coverage, size.plants > 200_000 ? 5 : 30)
  if (size === sizes.medium || size === sizes.large) rivals(instance)
}
const medium = scaling[1]!
const last = scaling.at(-1)!
const [few, many] = least([medium.recompute, last.recompute], isHuge ? 5 : 15) as [number, number]
const exponent = Math.log(many / few) / Math.log(last.pairs / medium.pairs)
atMost('scaling exponent of a full recompute in pairs', isHuge ? 'medium to huge' : 'medium to large', exponent, 1.05)

const telling = planBench()
const [change, whole] = least([telling.change, telling.whole], 15) as [number, number]
atMost("telling a worker an edit's change / cloning it the whole plan", '3,000 rows', change / whole, 1 / 20)

if (process.argv.includes('--siting')) lines.push(...(await sitingBench()))

const widths = (['what', 'size', 'goal', 'measured'] as const).map(key =>
  Math.max(key.length, ...lines.map(line => line[key].length)),
)
const row = (cells: readonly string[]) =>
  cells.map((cell, i) => (i < 2 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  ')
process.stdout.write(`\n${row(['what', 'size', 'goal', 'measured'])}  met\n`)
for (const line of lines) {
  process.stdout.write(`${row([line.what, line.size, line.goal, line.measured])}  ${line.isMet ? 'yes' : 'NO'}\n`)
}
