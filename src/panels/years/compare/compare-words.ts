import { pointsText } from '#geo/seasons/cause-text'
import type { Comparison } from '#geo/seasons/compare'
import type { Spread } from '#geo/seasons/spread'
import { listed } from '#geo/wording/plain'
import { enough } from '../../../text/verdict'
import { percent } from '../../../text/words'

/** A change of a share in points: "+18 points", "−1 point", "no change". */
export function changeText(change: number): string {
  return pointsText(change).replace('-', '−')
}

/** "13%", or that it cannot be said. */
export function shareText(share: number | null): string {
  return share === null ? 'cannot be said' : percent(share)
}

/** "7% to 33%", or that nothing was counted. */
export function foundText(found: Spread | null): string {
  return found === null ? 'not counted' : `${percent(found.low)} to ${percent(found.high)}`
}

/** Parts under half a point are no story. */
const leastPart = 0.005

/** What became of coverage, and what most of it came from: "Coverage rose from 13% to 47%; most of it from two new stations." */
export function compareSentence({ years, orchard, reasons }: Comparison): string {
  const [from, to] = years
  const { coverage } = orchard
  if (coverage.from === null || coverage.to === null || coverage.change === null) {
    const unknown = [coverage.from === null ? from : null, coverage.to === null ? to : null].filter(
      year => year !== null,
    )
    return `Coverage cannot be said for ${listed(unknown.map(String))}, so the two seasons cannot be held against each other.`
  }
  const [then, now] = [percent(coverage.from), percent(coverage.to)]
  if (Math.abs(coverage.change) < leastPart) {
    const large = reasons.filter(({ change }) => Math.abs(change) >= 2 * leastPart)
    const against = large.length > 1 ? ', though not everything did: what gained and what lost nearly cancel out' : ''
    return `Coverage as planned stayed at ${now === then ? now : `about ${now}`} from ${from} to ${to}${against}.`
  }
  const isRise = coverage.change > 0
  const told = reasons.filter(({ change }) => Math.abs(change) >= leastPart)
  const first = told.find(({ change }) => change > 0 === isRise)
  const against = told.find(({ change }) => change > 0 !== isRise)
  const head = `Coverage as planned ${isRise ? 'rose' : 'fell'} from ${then} in ${from} to ${now} in ${to}`
  if (first === undefined) return `${head}.`
  if (against !== undefined) {
    const [gave, took] = isRise ? [first, against] : [against, first]
    return `${head}: ${changeText(gave.change)} from ${gave.text}, and ${changeText(took.change)} from ${took.text}.`
  }
  const isMost = Math.abs(first.change) > Math.abs(coverage.change) / 2
  return `${head}; ${isMost ? 'most of it' : 'the largest part'} from ${first.text}.`
}

/** Coverage as found in both seasons, in a sentence; null where neither was counted. */
export function foundSentence({ years: [from, to], orchard: { found } }: Comparison): string | null {
  if (found.from === null && found.to === null) return null
  return `As found, by the females that really nested: ${foundText(found.from)} in ${from}, ${foundText(found.to)} in ${to}.`
}

/** Whether the plan hardly moved, so that what was found is the news. */
export function isFoundNews({ orchard: { coverage, found } }: Comparison): boolean {
  return found.from !== null && found.to !== null && Math.abs(coverage.change ?? 1) < newsFrom
}

const newsFrom = 0.05

/** How far nests have come into reach, and whether places or bees are what is short now. */
export function reachSentence({ years, orchard }: Comparison): string | null {
  const [from, to] = years
  const { reach, coverage } = orchard
  if (reach.from === null || reach.to === null || reach.change === null) return null
  const isSame = Math.abs(reach.change) < leastPart
  const moved = isSame
    ? `${percent(reach.to)} of what is wanted lay in reach of a station in both seasons: distance is not what changed.`
    : `What lies in reach of a station ${reach.change > 0 ? 'rose' : 'fell'} from ${percent(reach.from)} in ${from} to ${percent(reach.to)} in ${to}.`
  if (coverage.to === null || reach.to < enough || coverage.to >= enough) return moved
  return `${moved} The bees bring ${percent(coverage.to)} of what is wanted there in ${to}: ${isSame ? 'what is short' : 'what is short now'} is bees, their days, or their share of other blossom, rather than places.`
}

/** A better timing match than this is worth telling, share. */
const toldMatch = 0.02

/**
 * Where stock and bloom both changed, which plantings the bees met better, and which worse: the two parts are about
 * one thing, and no figure of their own is made for it.
 */
export function jointSentence(
  { facts, reasons, plantings }: Comparison,
  cropName: (crop: string) => string,
): string | null {
  const has = (cause: string) => reasons.some(each => each.cause === cause)
  if (!has('stock') || !has('bloom')) return null
  const met = plantings.filter(({ timingMatch }) => (timingMatch.change ?? 0) > toldMatch)
  if (met.length === 0) return null
  const missed = plantings.filter(({ timingMatch }) => (timingMatch.change ?? 0) < -toldMatch)
  const [better, worse] = told(met, missed, cropName)
  if (better.length === 0) return null
  const days = facts.bloomDays === null ? 0 : Math.round(facts.bloomDays)
  const bloom = days === 0 ? 'Bloom on other days' : days > 0 ? 'Later bloom' : 'Earlier bloom'
  const [before, after] = facts.stock.batches
  const batches = before === after ? 'cocoons set out on other days' : after > before ? 'more batches' : 'fewer batches'
  const less = worse.length === 0 ? '' : `, and less well at ${listed(worse)}`
  return `${bloom} and ${batches} belong together: bees flew more in time at ${listed(better)}${less}. Read the two parts as one.`
}

/** More names than this are told by crop. */
const mostNames = 5

type Planting = Comparison['plantings'][number]

/** Names of a few plantings; of many their crops, where all of a crop go the same way. */
function told(
  up: readonly Planting[],
  down: readonly Planting[],
  cropName: (crop: string) => string,
): readonly [readonly string[], readonly string[]] {
  if (Math.max(up.length, down.length) <= mostNames) return [up.map(({ name }) => name), down.map(({ name }) => name)]
  const crops = (lines: readonly Planting[], others: readonly Planting[]) =>
    [...new Set(lines.map(({ crop }) => crop))]
      .filter(
        crop => lines.filter(each => each.crop === crop).length >= others.filter(each => each.crop === crop).length,
      )
      .map(cropName)
  return [crops(up, down), crops(down, up)]
}
