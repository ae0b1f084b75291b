import { bees } from '#geo/data/bees'
import { nameOf, type Plan, seasonOf } from '#geo/plan/plan'
import { pointsText } from '#geo/seasons/cause-text'
import { dateText } from '#geo/time/date-text'
import type { Advice, AdvisedBatch, DatedShare } from '#geo/timing/advice'
import { oneLine } from '#geo/wording/plain'
import { type Column, pairs, table } from './table'
import { counted, grouped, notKnown, percent } from './words'

/** Advice on release dates for reading; `plan` has them already. */
export function releaseText(plan: Plan, advice: Advice): string {
  const { year, bees: asked, coverage } = advice
  return [
    `${oneLine(plan.name) || 'Plan without a name'}, season ${year}`,
    firstLine(advice),
    '',
    ...(coverage === null ? [] : [pairs(gains(advice)), '']),
    ...asked.flatMap(({ bee, stations, batches }) => [
      `${bees[bee].name}, ${counted(stations.length, 'station')}`,
      table(
        [left('Date'), right('Share'), left('The first females live on')],
        batches.map(batch => [dateText(batch.date), percent(batch.share), leaning(batch)]),
      ),
      '',
    ]),
    'Stations',
    table(
      [left('Station'), left('Date'), right('Share'), right('Female cocoons'), right('Male cocoons')],
      advice.stations.flatMap(({ id, batches }) => batches.map(batch => stationRow(plan, year, id, batch))),
    ),
    '',
  ].join('\n')
}

function firstLine({ coverage, isOwn, scope }: Advice): string {
  if (coverage === null) {
    return 'No cocoons are set out yet, so no coverage can be told: the date is the best for the first bees.'
  }
  const what = scope === 'orchard' ? '' : ' of what is in range of this station'
  if (isOwn)
    return `The plan's own dates are as good as any that was found: they cover about ${percent(coverage)}${what}.`
  return `These dates cover about ${percent(coverage)}${what}.`
}

/** What the dates gain; an unfair measure is named as such. */
function gains({ bees: asked, coverage, atFirstCrop, own, isOwn, isOwnUnfed }: Advice): [string, string][] {
  const over = (other: number) => `${percent(other)}, so ${pointsText(coverage! - other)}`
  const firsts = asked.flatMap(({ firstCrop }) => (firstCrop === null ? [] : [oneLine(firstCrop.name)]))
  const unfed = isOwnUnfed ? '; some come before blossom near the nests, so no fair measure' : ''
  return [
    ...(atFirstCrop === null
      ? []
      : [
          [`All at once as bloom begins, with ${[...new Set(firsts)].join(', ')}`, over(atFirstCrop)] as [
            string,
            string,
          ],
        ]),
    ...(isOwn || own === null ? [] : [['The plan as it is', `${over(own)}${unfed}`] as [string, string]]),
  ]
}

function leaning({ leansOn }: AdvisedBatch): string {
  if (leansOn === null) return 'nothing that is drawn'
  return `${oneLine(leansOn.name)}${leansOn.isForage ? ' (forage)' : ''}`
}

function stationRow(plan: Plan, year: number, id: string, { date, share }: DatedShare): readonly string[] {
  const feature = plan.features.find(each => each.id === id)
  const releases = (seasonOf(plan, year)?.stations?.[id]?.releases ?? []).filter(each => each.date === date)
  const sum = (counts: readonly (number | undefined)[]) =>
    counts.length === 0 || counts.includes(undefined)
      ? notKnown
      : grouped(counts.reduce<number>((total, count) => total + count!, 0))
  return [
    feature === undefined ? id : oneLine(nameOf(feature)) || id,
    dateText(date),
    percent(share),
    sum(releases.map(({ females }) => females)),
    sum(releases.map(({ males }) => males)),
  ]
}

const left = (head: string): Column => ({ head, align: 'left' })
const right = (head: string): Column => ({ head, align: 'right' })
