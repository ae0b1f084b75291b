import { Coverage } from '#geo/coverage/coverage'
import { fieldOf } from '#geo/coverage/field'
import { Reach } from '#geo/coverage/reach'
import { runsInDisc } from '#geo/coverage/runs'
import { seededRandom } from '#geo/random'
import { type Instance, instanceOf, sizes } from './instance'
import { carefulIndex, onEarth, plainSum, turfDistances, turfReach } from './rivals'

/*
 * Time as ratios within one run: own code and rival take turns in one process, the least of many repeats counts, and
 * the checksum of every timed run is held against the first. `--huge` adds a million plants and ten thousand stations.
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
  const recompute = () => {
    coverage.setStations(instance.stations)
    return coverage.totals().reduce((total, { served }) => total + served, 0)
  }
  const still = coverage.supplied.slice()
  const [own, plain] = least([recompute, () => plainSum(instance, still)], repeats) as [number, number]
  atMost('full recompute / one plain sum over the same runs', size.name, own / plain, 4)
  if (size.plants >= 20_000) atMost('bytes a plant', size.name, coverage.bytes / size.plants, 48)
  return { milliseconds: own, pairs: pairsOf(instance), coverage }
}

function move(instance: Instance, coverage: Coverage, fullTime: number, repeats: number): void {
  const random = seededRandom(7)
  const start = instance.stations[0]!
  const step = () => {
    coverage.moveStation(0, random() * instance.side, random() * instance.side)
    return coverage.totals().length
  }
  for (let i = 0; i < 500; i += 1) step()
  const times: number[] = []
  for (let i = 0; i < repeats; i += 1) {
    const from = performance.now()
    step()
    times.push(performance.now() - from)
  }
  coverage.moveStation(0, start.x, start.y)
  same(sum(coverage.supplied), sum(ready(instance).supplied), 0, 'moved back')
  times.sort((a, b) => a - b)
  atMost('one move (median) / full recompute', instance.size.name, times[times.length >> 1]! / fullTime, 1 / 40)
}

function rivals(instance: Instance, fullTime: number): void {
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
  const [turf] = least([() => turfDistances(earth, 300)], 1) as [number]
  atLeast('turf distance over all pairs / full recompute', size.name, turf / fullTime, 100)
  const radius = 67
  const reach = () => {
    const reached = new Reach(field)
    for (const { x, y } of stations) reached.add({ x, y, radius })
    return groups.reduce((total, _, group) => total + reached.reachedOf(group), 0)
  }
  // The discs of turf are polygons on a sphere, so the two counts differ by the few plants near an edge.
  same(reach(), turfReach(earth, radius), 0.01, 'plants in reach')
  const [near] = least([reach], 50) as [number]
  const [discs] = least([() => turfReach(earth, radius)], 1) as [number]
  atLeast('turf buffer + union + point in polygon / reach alone', size.name, discs / near, 2000)
}

const isHuge = process.argv.includes('--huge')
const runs: { milliseconds: number; pairs: number }[] = []
for (const size of [sizes.small, sizes.medium, sizes.large, ...(isHuge ? [sizes.huge] : [])]) {
  const instance = instanceOf(size)
  const { milliseconds, pairs, coverage } = full(
    instance,
    Math.max(3, Math.round(4e6 / size.plants / Math.sqrt(size.stations))),
  )
  runs.push({ milliseconds, pairs })
  process.stdout.write(
    `${size.name}: ${pairs.toLocaleString('en')} pairs in ${number(milliseconds)} ms, ${number((milliseconds * 1e6) / pairs)} ns a pair\n`,
  )
  if (size.stations >= 100) move(instance, coverage, milliseconds, 300)
  if (size === sizes.medium || size === sizes.large) rivals(instance, milliseconds)
}
const medium = runs[1]!
const last = runs.at(-1)!
const exponent = Math.log(last.milliseconds / medium.milliseconds) / Math.log(last.pairs / medium.pairs)
atMost('scaling exponent of a full recompute in pairs', isHuge ? 'medium to huge' : 'medium to large', exponent, 1.05)

const widths = (['what', 'size', 'goal', 'measured'] as const).map(key =>
  Math.max(key.length, ...lines.map(line => line[key].length)),
)
const row = (cells: readonly string[]) =>
  cells.map((cell, i) => (i < 2 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  ')
process.stdout.write(`\n${row(['what', 'size', 'goal', 'measured'])}  met\n`)
for (const line of lines) {
  process.stdout.write(`${row([line.what, line.size, line.goal, line.measured])}  ${line.isMet ? 'yes' : 'NO'}\n`)
}
