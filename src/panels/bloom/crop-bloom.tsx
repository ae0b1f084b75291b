import { setBloom } from '#geo/plan/edits-seasons'
import { plantingsIn } from '../../state/selectors'
import { counted, listed } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { cropTitle, titleOf } from '../titles'
import { defaultForCrop, defaultText, isSameBloom } from './bloom-defaults'
import { BloomFields } from './bloom-fields'

/** Bloom dates of one crop in use, with the default beside them. */
export function CropBloom({ crop }: { readonly crop: string }) {
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const bloom = season?.bloom?.[crop] ?? null
  const byDefault = defaultForCrop(plan, year, crop)
  const isDefault = isSameBloom(bloom ?? undefined, byDefault?.bloom)
  const plantings = plantingsIn(plan, year).filter(({ properties }) => properties.crop === crop)
  const own = plantings.filter(({ id }) => season?.bloom?.[id] !== undefined)
  return (
    <section className="crop-bloom" aria-label={cropTitle(plan, crop)}>
      <h3>{cropTitle(plan, crop)}</h3>
      <p className="aside-note">
        {counted(plantings.length, 'planting')}
        {own.length > 0 ? `, ${own.length === 1 ? 'one with' : `${own.length} with`} dates of its own: ` : ''}
        {listed(own.slice(0, 4).map(titleOf))}
        {own.length > 4 ? ' and others' : ''}
      </p>
      {bloom === null ? <p className="call">No bloom dates for {year}: its coverage cannot be counted.</p> : null}
      <BloomFields bloom={bloom} year={year} onCommit={next => edit(setBloom(year, crop, next))} />
      {byDefault === null ? (
        <p className="aside-note">There is no default for this crop; it stands on none of the tables.</p>
      ) : (
        <p className="aside-note">
          {isDefault ? 'These are the default dates: ' : 'Default: '}
          {defaultText(byDefault)}.{' '}
          {isDefault ? null : (
            <button type="button" className="link" onClick={() => edit(setBloom(year, crop, byDefault.bloom))}>
              Use the default dates
            </button>
          )}
        </p>
      )}
    </section>
  )
}
