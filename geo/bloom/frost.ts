import { type FrostStage, frostDays, frostKill, frostStages, type Kill } from '../data/frost'
import { cropName, tableCropOf } from '../data/settings'
import { sourceText } from '../data/thresholds'
import { type Bloom, isPlanting, isPresent, nameOf, type Plan, seasonOf } from '../plan/plan'
import type { Problem } from '../problem'
import { dateOfDay, dayOfSeason, type IsoDate, isIsoDate } from '../time/day'
import { recordOf, type WeatherRecord } from '../weather/record'
import { bloomOf } from './bloom'

/** A night in which the minimum fell to what kills a tenth of the flowers of plantings that share a bloom. degC. */
export type FrostFlag = {
  readonly date: IsoDate
  readonly minimum: number
  readonly crop: string
  readonly plantings: readonly string[]
  readonly stage: FrostStage
  /** The stage in words. */
  readonly stageName: string
  /** Temperatures that kill 10 % and 90 %, half an hour long. */
  readonly tenth: number
  readonly most: number
  /** Whether it fell to what kills nine tenths. */
  readonly isSevere: boolean
  readonly source: string
}

/**
 * Frosts of a season by its weather and the bloom dates that it holds, in order of days. Weather at a station in a shelter
 * says little of the coldest corner of an orchard; what is flagged is a reason to look, not a count of losses.
 */
export function frostFlags(plan: Plan, year: number): readonly FrostFlag[] {
  const season = seasonOf(plan, year)
  const record = recordOf(season?.weather?.days ?? [], year)
  if (record === null) return []
  const alike = new Map<string, { bloom: Bloom; crop: string; plantings: string[] }>()
  for (const feature of plan.features) {
    if (!isPlanting(feature) || !isPresent(feature, year)) continue
    const { crop } = feature.properties
    const bloom = bloomOf(season?.bloom, feature.id, crop)
    if (bloom === undefined || ![bloom.first, bloom.full, bloom.end].every(isIsoDate)) continue
    const key = JSON.stringify([crop, bloom.first, bloom.full, bloom.end])
    const known = alike.get(key)
    if (known) known.plantings.push(feature.id)
    else alike.set(key, { bloom, crop, plantings: [feature.id] })
  }
  const flags = [...alike.values()].flatMap(group => flagsOf(plan, year, record, group))
  return flags.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
}

function flagsOf(
  plan: Plan,
  year: number,
  record: WeatherRecord,
  { bloom, crop, plantings }: { readonly bloom: Bloom; readonly crop: string; readonly plantings: readonly string[] },
): FrostFlag[] {
  const kills = frostKill[tableCropOf(crop, plan.crops)?.id ?? '']
  if (kills === undefined) return []
  const [first, full, end] = [bloom.first, bloom.full, bloom.end].map(date => dayOfSeason(date, year)) as [
    number,
    number,
    number,
  ]
  const starts: Readonly<Record<FrostStage, number>> = {
    cluster: first - frostDays.cluster.value,
    colour: first - frostDays.colour.value,
    first,
    full,
    after: end,
  }
  const flags: FrostFlag[] = []
  for (let day = starts.cluster; day < end + frostDays.after.value; day += 1) {
    const minimum = record.minimum[day - record.start]
    const stage = frostStages.findLast(each => day >= starts[each])
    const kill: Kill | undefined = stage && kills[stage]
    if (minimum === undefined || kill === undefined || stage === undefined) continue
    // NaN, a minimum that is not known, is at or below nothing.
    if (!(minimum <= kill.tenth.value)) continue
    flags.push({
      date: dateOfDay(day, year),
      minimum,
      crop,
      plantings,
      stage,
      stageName: kill.name,
      tenth: kill.tenth.value,
      most: kill.most.value,
      isSevere: minimum <= kill.most.value,
      source: sourceText(kill.tenth),
    })
  }
  return flags
}

/** The frosts of a season as problems: one for each group of plantings, of its worst night. */
export function frostProblems(plan: Plan, year: number): readonly Problem[] {
  const groups = new Map<string, FrostFlag[]>()
  for (const flag of frostFlags(plan, year)) {
    const key = JSON.stringify([flag.crop, flag.plantings])
    groups.set(key, [...(groups.get(key) ?? []), flag])
  }
  return [...groups.values()].map(flags => {
    // How far it fell between the two temperatures, as one stage is more tender than another.
    const depth = ({ minimum, tenth, most }: FrostFlag) => (tenth - minimum) / (tenth - most)
    const worst = flags.reduce((one, two) => (depth(two) > depth(one) ? two : one))
    const { date, minimum, stageName, tenth, most, source, plantings, crop } = worst
    const single = plantings.length === 1 ? plan.features.find(({ id }) => id === plantings[0]) : undefined
    return {
      code: 'frost',
      severity: worst.isSevere ? 'warning' : 'note',
      at: plantings.length === 1 ? plantings[0]! : '',
      values: {
        name: single ? nameOf(single) : `${cropName(crop, plan.crops)} (${plantings.length} plantings)`,
        nights: flags.length,
        date,
        minimum,
        stage: stageName,
        tenth,
        most,
        source,
        year,
      },
    }
  })
}
