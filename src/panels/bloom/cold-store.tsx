import { bees } from '#geo/data/bees'
import { type BeeId, beeIds } from '#geo/data/own'
import { coldDays } from '#geo/data/season-work'
import { sourceText } from '#geo/data/thresholds'
import { setColdStore } from '#geo/plan/edits-timing'
import { type Plan, type Season, seasonOf } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { daysBetween, type IsoDate, isIsoDate } from '#geo/time/day'
import { Caution } from '../../parts/caution'
import { DateField } from '../../parts/date-field'
import { counted } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'

/** Since when the season's cocoons have been cold, and whether that is long enough by the day they are set out. */
export function ColdStoreFields() {
  const plan = usePlan()
  const year = useYear()
  const cold = useSeason()?.coldStore ?? null
  const edit = useEdit()
  return (
    <section className="stack" aria-labelledby="cold">
      <h3 id="cold">Cocoons in the cold</h3>
      <DateField
        label="Cold since"
        value={cold?.from ?? null}
        year={year}
        onCommit={from => edit(setColdStore(year, from === null ? null : { ...cold, from }))}
        note={
          cold === null ? 'When the cocoons set out this season went into a fridge or the winter’s cold.' : undefined
        }
      />
      <Caution about="fridge" />
      {coldTexts(plan, year).map(({ bee, text, isFine }) => (
        <p key={bee} className={isFine ? 'aside-note' : 'call'}>
          {text}
        </p>
      ))}
    </section>
  )
}

type ColdText = { readonly bee: BeeId; readonly text: string; readonly isFine: boolean }

/** For each bee set out: days in the cold by its first batch, held against what the species wants. */
export function coldTexts(plan: Plan, year: number): readonly ColdText[] {
  const season = seasonOf(plan, year)
  const from = season?.coldStore?.from
  if (season === undefined || from === undefined || !isIsoDate(from)) return []
  return beeIds.flatMap(bee => {
    const first = firstRelease(plan, season, bee)
    if (first === null) return []
    const days = daysBetween(from, first)
    const { low, high } = coldDays[bee]
    const isFine = days >= low && days <= high
    const found = `${bees[bee].name}: ${counted(days, 'day')} cold by the first batch on ${dateText(first)}`
    const held = `${low} to ${high} days suit (${sourceText(coldDays[bee])})`
    const advice = isFine
      ? ''
      : days < low
        ? ' That is too short: fewer come out, and over more days. Set them out later if bloom allows.'
        : ' That is too long: they use up what they live on. Set them out earlier, or begin the cold later next time.'
    return [{ bee, isFine, text: `${found}; ${held}.${advice}` }]
  })
}

function firstRelease(plan: Plan, season: Season, bee: BeeId): IsoDate | null {
  const dates = Object.values(season.stations ?? {})
    .filter(use => (use.bee ?? plan.bee) === bee)
    .flatMap(({ releases = [] }) => releases.filter(({ females }) => females > 0).map(({ date }) => date))
    .filter(isIsoDate)
    .sort()
  return dates[0] ?? null
}
