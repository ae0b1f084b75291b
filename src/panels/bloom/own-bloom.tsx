import { useState } from 'react'
import { cultivarBloom } from '#geo/bloom/predict'
import { forageSettings } from '#geo/data/settings'
import { compose } from '#geo/plan/edits'
import { setProperties } from '#geo/plan/edits-features'
import { setBloom, setObserved } from '#geo/plan/edits-seasons'
import { type Bloom, bloomStages, type Forage, isForage, isObserved, isPresent, type Planting } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { ChoiceField } from '../../parts/choice-field'
import { bloomOf } from '../../state/selectors'
import { counted, dateSpan } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { cropTitle, titleOf } from '../titles'
import { defaultForForage, defaultText, isSameBloom } from './bloom-defaults'
import { BloomFields } from './bloom-fields'

/** Bloom of one planting (its crop's or its own) or one forage area. */
export function OwnBloom({ feature }: { readonly feature: Planting | Forage }) {
  const year = useYear()
  if (!isPresent(feature, year)) return <p className="aside-note">It does not stand there in {year}.</p>
  return isForage(feature) ? <ForageBloom forage={feature} /> : <PlantingBloom planting={feature} />
}

function PlantingBloom({ planting }: { readonly planting: Planting }) {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const own = season?.bloom?.[planting.id] ?? null
  const ofCrop = season?.bloom?.[planting.properties.crop] ?? null
  const [isOpening, setOpening] = useState(false)
  const isOwn = own !== null || isOpening
  const crop = cropTitle(plan, planting.properties.crop)
  const name = `bloom-of-${planting.id}`
  return (
    <fieldset className="stack">
      <legend>Bloom of {titleOf(planting)}</legend>
      <label className="option">
        <input
          type="radio"
          name={name}
          checked={!isOwn}
          onChange={() => {
            setOpening(false)
            edit(setBloom(year, planting.id, null))
          }}
        />
        <span>
          Same as {crop}
          {ofCrop ? `: ${dateSpan(ofCrop.first, ofCrop.end)}` : ', which has no dates yet'}
        </span>
      </label>
      <label className="option">
        <input
          type="radio"
          name={name}
          checked={isOwn}
          onChange={() => (ofCrop ? edit(setBloom(year, planting.id, ofCrop)) : setOpening(true))}
        />
        Dates of its own
      </label>
      {ofCrop && <CultivarLine planting={planting} ofCrop={ofCrop} own={own} />}
      {isOwn ? (
        <BloomFields
          bloom={own}
          year={year}
          onCommit={next => edit(setBloom(year, planting.id, next))}
          onSeen={(stage, isSeen) => edit(setObserved(year, planting.id, stage, isSeen))}
        />
      ) : null}
    </fieldset>
  )
}

type CultivarProps = { readonly planting: Planting; readonly ofCrop: Bloom; readonly own: Bloom | null }

/** By how many days the planting's cultivar is known to differ from its crop, and those dates to take. */
function CultivarLine({ planting, ofCrop, own }: CultivarProps) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const found = cultivarBloom(plan, planting, ofCrop)
  if (found === null) return null
  const { bloom, days } = found
  const isSeen = own !== null && bloomStages.some(stage => isObserved(own, stage))
  return (
    <p className="aside-note">
      {planting.properties.cultivar} is in full bloom about {counted(Math.abs(days), 'day')}{' '}
      {days < 0 ? 'before' : 'after'} {cropTitle(plan, planting.properties.crop)}, by means of many years: about{' '}
      {dateText(bloom.full)}, an estimate.{' '}
      {isSeen || isSameBloom(own ?? undefined, bloom) ? null : (
        <button type="button" className="link" onClick={() => edit(setBloom(year, planting.id, bloom))}>
          Use these dates
        </button>
      )}
    </p>
  )
}

const noPlant = 'none'

function ForageBloom({ forage }: { readonly forage: Forage }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const bloom = bloomOf(plan, year, forage) ?? null
  const [plant, setPlant] = useState<string>(noPlant)
  const byDefault = plant === noPlant ? null : defaultForForage(plan, year, plant)
  const settings = forageSettings[plant]
  const use = () => {
    if (byDefault === null || settings === undefined) return
    const { blossomDensity, appeal, name } = settings
    edit(
      compose(`Fill ${titleOf(forage)} with ${name}`, [
        setBloom(year, forage.id, byDefault.bloom),
        setProperties(forage.id, { blossomDensity, appeal }),
      ]),
    )
  }
  return (
    <section className="crop-bloom" aria-label={titleOf(forage)}>
      <h3>{titleOf(forage)}</h3>
      {bloom === null ? <p className="call">No bloom dates for {year}: it is left out of the count.</p> : null}
      <BloomFields
        bloom={bloom}
        year={year}
        onCommit={next => edit(setBloom(year, forage.id, next))}
        onSeen={(stage, isSeen) => edit(setObserved(year, forage.id, stage, isSeen))}
      />
      <ChoiceField
        label="Fill in from a plant"
        value={plant}
        choices={[
          { value: noPlant, name: 'choose a plant' },
          ...Object.values(forageSettings).map(({ id, name, botanicalName }) => ({
            value: id,
            name: `${name} (${botanicalName})`,
          })),
        ]}
        onCommit={setPlant}
        {...(byDefault ? { note: `Default: ${defaultText(byDefault)}.` } : {})}
      />
      {byDefault ? (
        <div>
          <button type="button" onClick={use}>
            Use its dates, flowers and appeal
          </button>
        </div>
      ) : null}
    </section>
  )
}
