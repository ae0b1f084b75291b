import { thresholds } from '#geo/data/thresholds'
import { type PropertiesPatch, setProperties } from '#geo/plan/edits-features'
import { featureLimits, type Limit } from '#geo/plan/limits'
import { type Feature, isForage, isPlanting, isStation, type Planting } from '#geo/plan/plan'
import { Caution } from '../../parts/caution'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { type FieldLimit, NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { settingsOf } from '../../state/selectors'
import type { Quantity } from '../../text/units'
import { directionText } from '../../text/words'
import { CropChoice } from '../ground/crop-choice'
import { useEdit, usePlan } from '../hooks'

/** What is known of a thing, to be changed: name first, then what its kind has. */
export function FeatureFields({ feature }: { readonly feature: Feature }) {
  const edit = useEdit()
  const set = (patch: PropertiesPatch) => edit(setProperties(feature.id, patch))
  const { properties } = feature
  return (
    <div className="stack">
      <TextField
        label="Name"
        value={properties.name ?? ''}
        onCommit={name => set({ name: name === '' ? undefined : name })}
      />
      {isPlanting(feature) ? <PlantingFields planting={feature} /> : null}
      {isStation(feature) ? <StationFields feature={feature} /> : null}
      {isForage(feature) ? <ForageFields feature={feature} /> : null}
      {properties.kind === 'keepout' ? (
        <>
          <TextField
            label="Why no station here"
            value={properties.reason ?? ''}
            placeholder="spray drift, road, play area"
            onCommit={reason => set({ reason: reason === '' ? undefined : reason })}
          />
          <Caution about="sprays" />
          <Caution about="public" />
        </>
      ) : null}
      {properties.kind === 'mud' ? <Caution about="water" /> : null}
    </div>
  )
}

type FigureProps = {
  readonly feature: Feature
  readonly name: keyof PropertiesPatch & string
  readonly label: string
  readonly quantity?: Quantity
  readonly fallback?: number
  readonly note?: string
}

/** One figure among a thing's properties; empty takes it away, so that the default counts. */
function Figure({ feature, name, label, quantity, fallback, note }: FigureProps) {
  const edit = useEdit()
  const value = (feature.properties as Readonly<Record<string, unknown>>)[name]
  const limit = featureLimits[feature.properties.kind][name]
  return (
    <NumberField
      label={label}
      value={typeof value === 'number' ? value : null}
      {...(quantity ? { quantity } : {})}
      {...(limit ? { limit: fieldLimit(limit) } : {})}
      {...(fallback === undefined ? {} : { fallback })}
      {...(note ? { note } : {})}
      onCommit={next => edit(setProperties(feature.id, { [name]: next ?? undefined } as PropertiesPatch))}
    />
  )
}

export function fieldLimit({ low, high, isAbove, isWhole }: Limit): FieldLimit {
  return { low, high, ...(isAbove ? { isAbove } : {}), ...(isWhole ? { isWhole } : {}) }
}

function PlantingFields({ planting }: { readonly planting: Planting }) {
  const plan = usePlan()
  const edit = useEdit()
  const { properties } = planting
  const crop = settingsOf(plan).crops[properties.crop]
  const isInRows = properties.kind === 'row' || properties.kind === 'block'
  const byDefault = (name: 'spacing' | 'rowSpacing') => (crop ? { fallback: crop[name] } : {})
  return (
    <>
      <CropChoice value={properties.crop} onCommit={next => edit(setProperties(planting.id, { crop: next }))} />
      <TextField
        label="Cultivar"
        value={properties.cultivar ?? ''}
        onCommit={cultivar => edit(setProperties(planting.id, { cultivar: cultivar === '' ? undefined : cultivar }))}
      />
      {isInRows || properties.kind === 'plant' ? (
        <div className="fields">
          {isInRows ? (
            <>
              <Figure
                feature={planting}
                name="spacing"
                label="Spacing in the row"
                quantity="length"
                {...byDefault('spacing')}
              />
              <Figure
                feature={planting}
                name="rowSpacing"
                label="Between rows"
                quantity="length"
                {...byDefault('rowSpacing')}
              />
            </>
          ) : null}
          {properties.kind === 'row' ? (
            <Figure
              feature={planting}
              name="count"
              label="Number of plants"
              note="Left empty, it follows from length and spacing."
            />
          ) : null}
          {properties.kind === 'block' ? (
            <Figure
              feature={planting}
              name="bearing"
              label="Rows run towards"
              quantity="degrees"
              fallback={0}
              note={directionText(properties.bearing ?? 0)}
            />
          ) : null}
          {properties.kind === 'plant' ? (
            <Figure
              feature={planting}
              name="spread"
              label="Crown across"
              quantity="length"
              note="Left empty, the crop’s usual ground counts."
            />
          ) : null}
        </div>
      ) : null}
      <Disclosure summary="Vigour, females wanted and years">
        <div className="fields">
          <Figure
            feature={planting}
            name="vigour"
            label="Vigour"
            quantity="share"
            fallback={1}
            note="Blossom against a full-grown planting of the kind."
          />
          {properties.kind === 'bed' ? null : (
            <Figure
              feature={planting}
              name="femalesPerPlant"
              label="Nesting females per plant"
              note="Left empty, the crop’s rate by area counts."
            />
          )}
          <Figure feature={planting} name="planted" label="Planted in" quantity="year" note="First season it counts." />
          <Figure
            feature={planting}
            name="removed"
            label="Removed in"
            quantity="year"
            note="First season it is gone."
          />
        </div>
      </Disclosure>
    </>
  )
}

export const supports = [
  { value: 'unknown', name: 'not said' },
  { value: 'post', name: 'post' },
  { value: 'wall', name: 'wall' },
  { value: 'fence', name: 'fence' },
  { value: 'branch', name: 'branch' },
] as const
export type Support = (typeof supports)[number]['value']

function StationFields({ feature }: { readonly feature: Extract<Feature, { properties: { kind: 'station' } }> }) {
  const edit = useEdit()
  const { height, facing, support } = feature.properties
  const set = (patch: PropertiesPatch) => edit(setProperties(feature.id, patch))
  return (
    <>
      <div className="fields">
        <Figure feature={feature} name="height" label="Height above ground" quantity="length" />
        <Figure
          feature={feature}
          name="facing"
          label="Facing"
          quantity="degrees"
          note={facing === undefined ? 'Clockwise from north: 135 is south-east.' : directionText(facing)}
        />
        <Figure feature={feature} name="overhang" label="Roof overhang" quantity="bore" />
        <ChoiceField
          label="Fixed to"
          value={(support ?? 'unknown') as Support}
          choices={supports}
          onCommit={next => set({ support: next === 'unknown' ? undefined : next })}
        />
        <Figure feature={feature} name="since" label="Standing since" quantity="year" />
        <Figure feature={feature} name="until" label="Standing until" quantity="year" />
      </div>
      {height !== undefined && height > thresholds.heightMost.value ? <Caution about="ladder" /> : null}
    </>
  )
}

function ForageFields({ feature }: { readonly feature: Extract<Feature, { properties: { kind: 'forage' } }> }) {
  return (
    <div className="fields">
      <Figure
        feature={feature}
        name="blossomDensity"
        label="Flowers at full bloom"
        quantity="perSquare"
        note="Left empty, it counts as none."
      />
      <Figure
        feature={feature}
        name="appeal"
        label="Appeal"
        fallback={1}
        note="1 is as drawing as an average flower."
      />
      <Figure feature={feature} name="planted" label="Sown or planted in" quantity="year" />
      <Figure feature={feature} name="removed" label="Removed in" quantity="year" />
    </div>
  )
}
