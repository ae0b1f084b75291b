import { canHave, type SharedName, type SharedPatch, setManyProperties } from '#geo/plan/edits-many'
import { featureLimits } from '#geo/plan/limits'
import { type Feature, isStation } from '#geo/plan/plan'
import { ChoiceField } from '../../parts/choice-field'
import { cropChoices } from '../../parts/crop-field'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import type { Quantity } from '../../text/units'
import { counted } from '../../text/words'
import { useEdit, usePlan } from '../hooks'
import { fieldLimit, type Support, supports } from './feature-fields'
import { ManyStations } from './many-stations'

type FigureName = Exclude<SharedName, 'crop' | 'cultivar' | 'support'>

const figures: readonly { readonly name: FigureName; readonly label: string; readonly quantity: Quantity }[] = [
  { name: 'spacing', label: 'Spacing in the row', quantity: 'length' },
  { name: 'rowSpacing', label: 'Between rows', quantity: 'length' },
  { name: 'vigour', label: 'Vigour', quantity: 'share' },
  { name: 'planted', label: 'Planted in', quantity: 'year' },
  { name: 'removed', label: 'Removed in', quantity: 'year' },
  { name: 'height', label: 'Height above ground', quantity: 'length' },
  { name: 'facing', label: 'Facing', quantity: 'degrees' },
  { name: 'overhang', label: 'Roof overhang', quantity: 'bore' },
]

/** What several things have in common, to be changed for all of them; each takes what its kind has. */
export function ManyFields({ features }: { readonly features: readonly Feature[] }) {
  const plan = usePlan()
  const edit = useEdit()
  const ids = features.map(({ id }) => id)
  const set = (patch: SharedPatch) => edit(setManyProperties(ids, patch))
  const growing = features.filter(feature => canHave(feature, 'crop'))
  const crop = common(growing, 'crop')
  const cultivar = common(growing, 'cultivar')
  const stations = features.filter(isStation)
  const support = common(stations, 'support')
  return (
    <div className="stack">
      {growing.length === 0 ? null : (
        <>
          <ChoiceField
            label="Crop"
            value={typeof crop.value === 'string' ? crop.value : ''}
            choices={[...(crop.isSame ? [] : [{ value: '', name: 'several' }]), ...cropChoices(plan)]}
            onCommit={next => next !== '' && set({ crop: next })}
            {...noteOf(features, growing)}
          />
          <TextField
            label="Cultivar"
            value={typeof cultivar.value === 'string' ? cultivar.value : ''}
            {...(cultivar.isSame ? {} : { placeholder: 'several' })}
            onCommit={next => set({ cultivar: next || null })}
            {...noteOf(features, growing)}
          />
        </>
      )}
      <div className="fields">
        {figures.map(({ name, label, quantity }) => {
          const having = features.filter(feature => canHave(feature, name))
          const [first] = having
          if (first === undefined) return null
          const { value, isSame } = common(having, name)
          const limit = featureLimits[first.properties.kind][name]
          return (
            <NumberField
              key={name}
              label={label}
              quantity={quantity}
              value={typeof value === 'number' ? value : null}
              {...(limit ? { limit: fieldLimit(limit) } : {})}
              note={[isSame ? '' : 'Several values now; one typed here is for all.', partWords(features, having)]
                .filter(Boolean)
                .join(' ')}
              onCommit={next => set({ [name]: next })}
            />
          )
        })}
        {stations.length === 0 ? null : (
          <ChoiceField
            label="Fixed to"
            value={support.isSame ? ((support.value ?? 'unknown') as Support) : 'several'}
            choices={[...(support.isSame ? [] : [{ value: 'several' as const, name: 'several' }]), ...supports]}
            onCommit={next => next !== 'several' && set({ support: next === 'unknown' ? null : next })}
            {...noteOf(features, stations)}
          />
        )}
      </div>
      {stations.length === 0 ? null : <ManyStations stations={stations} />}
    </div>
  )
}

/** The value that all of them have; without one, `isSame` says whether none of them has any. */
function common(features: readonly Feature[], name: SharedName): { readonly value: unknown; readonly isSame: boolean } {
  const values = new Set(features.map(({ properties }) => (properties as Readonly<Record<string, unknown>>)[name]))
  return values.size === 1 ? { value: [...values][0], isSame: true } : { value: undefined, isSame: false }
}

function partWords(all: readonly Feature[], having: readonly Feature[]): string {
  return having.length === all.length ? '' : `For ${counted(having.length, 'of them', 'of them')}.`
}

function noteOf(all: readonly Feature[], having: readonly Feature[]): { note?: string } {
  const words = partWords(all, having)
  return words ? { note: words } : {}
}
