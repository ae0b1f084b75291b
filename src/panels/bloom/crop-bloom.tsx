import { setBloom, setObserved } from '#geo/plan/edits-seasons'
import { type Bloom, bloomStages, isObserved, type Planting } from '#geo/plan/plan'
import { dayAndMonth } from '#geo/time/date-text'
import { isIsoDate } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { Disclosure } from '../../parts/disclosure'
import { plantingsIn } from '../../state/selectors'
import { counted } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { cropTitle, titleOf } from '../titles'
import { defaultForCrop, defaultText, isSameBloom } from './bloom-defaults'
import { BloomFields } from './bloom-fields'
import { PredictedLine } from './predicted-line'

/** Bloom dates of one crop in use, with the default beside them; folded where many stand in a row. */
export function CropBloom({ crop, isFolded }: { readonly crop: string; readonly isFolded: boolean }) {
  const plan = usePlan()
  const season = useSeason()
  const bloom = season?.bloom?.[crop] ?? null
  const title = cropTitle(plan, crop)
  return (
    <section className="crop-bloom" aria-label={title}>
      {isFolded && bloom !== null ? (
        <Disclosure summary={`${title}: ${bloomSummary(bloom)}`}>
          <CropFields crop={crop} />
        </Disclosure>
      ) : (
        <>
          <h3>{title}</h3>
          <CropFields crop={crop} />
        </>
      )}
    </section>
  )
}

/** "full 24 April, seen" or "full 24 April, estimate". */
function bloomSummary(bloom: Bloom): string {
  const full = isIsoDate(bloom.full) ? dayAndMonth(bloom.full) : bloom.full
  if (isObserved(bloom, 'full')) return `full ${full} ✓ seen`
  const seen = bloomStages.filter(stage => isObserved(bloom, stage))
  if (seen.length === 0) return `full ${full}, not seen`
  return `full ${full}, not seen; ${listed(seen.map(stage => `${stage} ✓ seen`))}`
}

function CropFields({ crop }: { readonly crop: string }) {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const bloom = season?.bloom?.[crop] ?? null
  const plantings = plantingsIn(plan, year).filter(({ properties }) => properties.crop === crop)
  return (
    <>
      <p className="aside-note">{plantingsText(plantings, season?.bloom)}</p>
      {bloom === null ? <p className="call">No bloom dates for {year}: its coverage cannot be counted.</p> : null}
      <BloomFields
        bloom={bloom}
        year={year}
        onCommit={next => edit(setBloom(year, crop, next))}
        onSeen={(stage, isSeen) => edit(setObserved(year, crop, stage, isSeen))}
      />
      <PredictedLine crop={crop} bloom={bloom} />
      <DefaultLine crop={crop} bloom={bloom} />
    </>
  )
}

function plantingsText(plantings: readonly Planting[], blooms: Readonly<Record<string, Bloom>> | undefined): string {
  const own = plantings.filter(({ id }) => blooms?.[id] !== undefined)
  const count = counted(plantings.length, 'planting')
  if (own.length === 0) return count
  const names = `${listed(own.slice(0, 4).map(titleOf))}${own.length > 4 ? ' and others' : ''}`
  return `${count}, ${own.length === 1 ? 'one with' : `${own.length} with`} dates of its own: ${names}`
}

/** The default beside the dates in use; taken over only where nothing was seen. */
function DefaultLine({ crop, bloom }: { readonly crop: string; readonly bloom: Bloom | null }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const byDefault = defaultForCrop(plan, year, crop)
  if (byDefault === null) {
    return <p className="aside-note">There is no default for this crop; it stands on none of the tables.</p>
  }
  const isDefault = isSameBloom(bloom ?? undefined, byDefault.bloom)
  const isSeen = bloom !== null && bloomStages.some(stage => isObserved(bloom, stage))
  return (
    <p className="aside-note">
      {isDefault ? 'These are the default dates: ' : 'Default: '}
      {defaultText(byDefault)}.{' '}
      {isDefault || isSeen ? null : (
        <button type="button" className="link" onClick={() => edit(setBloom(year, crop, byDefault.bloom))}>
          Use the default dates
        </button>
      )}
    </p>
  )
}
