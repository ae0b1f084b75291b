import { useEffect, useId, useRef } from 'react'
import { bees } from '#geo/data/bees'
import { type BeeId, beeIds } from '#geo/data/own'
import { setReleases, setStationSeason } from '#geo/plan/edits-seasons'
import { stationLimits } from '#geo/plan/limits'
import type { Station, StationSeason } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { Caution } from '../../parts/caution'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { settingsOf, stationSeasonOf } from '../../state/selectors'
import { springDay } from '../../text/home'
import { boreText } from '../../text/units'
import { counted, grouped } from '../../text/words'
import { beeTitle } from '../first/bee-choice'
import { useEdit, usePlan, useYear } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'
import { titleOf } from '../titles'
import { bestReleaseAt } from './best-release'
import { OffDaysOffer } from './off-days-offer'
import { ReleaseFields } from './release-fields'

type Props = { readonly station: Station; readonly isOpen?: boolean }

/** How one station is used this season: bee, tubes and the batches of cocoons set out there. */
export function StationUse({ station, isOpen = false }: Props) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const id = useId()
  const use = stationSeasonOf(plan, year, station.id)
  return (
    <section className="station-use" aria-labelledby={id}>
      <h3 id={id} className={isOpen ? 'unseen' : undefined}>
        {titleOf(station)}
      </h3>
      <label className="option">
        <input
          type="checkbox"
          checked={use !== undefined}
          onChange={event => edit(setStationSeason(year, station.id, event.target.checked ? {} : null))}
        />
        In use in {year}
      </label>
      {use === undefined ? null : isOpen ? (
        <UseFields station={station} use={use} />
      ) : (
        <Disclosure summary={summaryOfUse(use)}>
          <UseFields station={station} use={use} />
        </Disclosure>
      )}
    </section>
  )
}

/** "160 female cocoons in 2 batches from 6 April 2026; 120 tubes". */
export function summaryOfUse({ releases = [], tubes }: StationSeason): string {
  const females = releases.reduce((sum, release) => sum + release.females, 0)
  const [first] = releases.map(({ date }) => date).sort()
  const batches = releases.length > 1 ? ` in ${releases.length} batches from` : ' on'
  const out =
    first === undefined ? 'No cocoons set out yet' : `${counted(females, 'female cocoon')}${batches} ${dateText(first)}`
  return `${out}; ${tubes === undefined ? 'tubes not said' : counted(tubes, 'tube')}`
}

function UseFields({ station, use }: { readonly station: Station; readonly use: StationSeason }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const bee = use.bee ?? plan.bee
  const { boreMin, boreMax, depthMin } = settingsOf(plan).bees[bee]
  const set = (patch: { readonly [K in keyof StationSeason]?: StationSeason[K] | undefined }) =>
    edit(setStationSeason(year, station.id, patch))
  const releases = use.releases ?? []
  const best = bestReleaseAt(plan, year, station)
  const spring = springDay(plan, year)
  const added = useFocusOnAdded(releases.length)
  const add = () => {
    const date = best?.date ?? spring
    added.expect()
    edit(setReleases(year, station.id, [...releases, { date, females: 0 }]))
  }
  const suits = `${bees[bee].name}: bore ${boreText(boreMin, plan.units)} to ${boreText(boreMax, plan.units)}, ${boreText(depthMin, plan.units)} deep or more`
  return (
    <div className="stack" ref={added.within}>
      <ChoiceField
        label="Bee"
        value={(use.bee ?? 'plan') as BeeId | 'plan'}
        choices={[
          { value: 'plan' as const, name: `The plan’s: ${beeTitle(plan.bee)}` },
          ...beeIds.map(value => ({ value, name: beeTitle(value) })),
        ]}
        onCommit={next => set({ bee: next === 'plan' ? undefined : next })}
      />
      {use.bee !== undefined && use.bee !== plan.bee ? <Caution about="species" /> : null}
      <div className="fields">
        <NumberField
          label="Tubes"
          value={use.tubes ?? null}
          limit={fieldLimit(stationLimits.tubes)}
          onCommit={tubes => set({ tubes: tubes ?? undefined })}
        />
        <NumberField
          label="Bore"
          quantity="bore"
          value={use.bore ?? null}
          limit={fieldLimit(stationLimits.bore)}
          onCommit={bore => set({ bore: bore ?? undefined })}
        />
        <NumberField
          label="Depth"
          quantity="bore"
          value={use.depth ?? null}
          limit={fieldLimit(stationLimits.depth)}
          onCommit={depth => set({ depth: depth ?? undefined })}
        />
        <TextField
          label="Tubes of"
          value={use.material ?? ''}
          placeholder="paper, reed, wood tray"
          onCommit={material => set({ material: material === '' ? undefined : material })}
        />
      </div>
      <p className="field-note">{suits}.</p>
      <Caution about="tools" />
      {releases.length === 0 ? <p className="call">No cocoons are set out here, so no bee flies from it.</p> : null}
      <OffDaysOffer of={station.id} />
      {releases.map((release, i) => (
        <ReleaseFields
          // biome-ignore lint/suspicious/noArrayIndexKey: a batch has nothing else that stays the same while it is edited
          key={i}
          number={i + 1}
          release={release}
          year={year}
          malesPerFemale={settingsOf(plan).bees[bee].malesPerFemale}
          onCommit={next =>
            edit(
              setReleases(
                year,
                station.id,
                next === null ? releases.filter((_, j) => j !== i) : releases.map((each, j) => (j === i ? next : each)),
              ),
            )
          }
        />
      ))}
      <div>
        <button type="button" onClick={add}>
          {releases.length === 0 ? 'Add a batch of cocoons' : 'Add another batch'}
        </button>
      </div>
      {best === null ? (
        <p className="field-note">
          No bloom dates are known, so a new batch starts from {dateText(spring)}, a mere guess at spring. Put in when
          things bloom, then set the date.
        </p>
      ) : (
        <p className="field-note">
          One batch for {best.name} meets its bloom best when set out on {dateText(best.date)}; new batches start from
          that date.
        </p>
      )}
      {releases.length > 0 ? <Caution about="moving" /> : null}
      <Caution about="stings" />
      <p className="field-note">
        {grouped(releases.reduce((sum, { females }) => sum + females, 0))} female cocoons in all.
      </p>
    </div>
  )
}

/** Whoever adds a batch is led to its first field. */
function useFocusOnAdded(count: number) {
  const within = useRef<HTMLDivElement>(null)
  const isExpected = useRef(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the new fields are there once the count has changed
  useEffect(() => {
    if (!isExpected.current) return
    isExpected.current = false
    const batches = within.current?.querySelectorAll('fieldset.release')
    batches?.[batches.length - 1]?.querySelector('input')?.focus()
  }, [count])
  const expect = () => {
    isExpected.current = true
  }
  return { within, expect }
}
