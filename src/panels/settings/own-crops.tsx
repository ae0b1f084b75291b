import { type FormEvent, useState } from 'react'
import { crops } from '#geo/data/crops'
import type { OwnCrop } from '#geo/data/own'
import { setOwnCrop } from '#geo/plan/edits-settings'
import { cropLimits } from '#geo/plan/limits'
import type { Plan } from '#geo/plan/plan'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { plantings, settingsOf } from '../../state/selectors'
import type { Quantity } from '../../text/units'
import { capitalised, counted } from '../../text/words'
import { useEdit, usePlan } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'
import { cropTitle } from '../titles'

const figures = ['stockingRate', 'blossomDensity', 'appeal', 'spacing', 'rowSpacing'] as const
const quantities: Readonly<Record<(typeof figures)[number], Quantity>> = {
  stockingRate: 'perArea',
  blossomDensity: 'perSquare',
  appeal: 'plain',
  spacing: 'length',
  rowSpacing: 'length',
}

/** Crops of the grower's own, standing on a built-in one until their figures are changed. */
export function OwnCrops() {
  const plan = usePlan()
  const own = Object.keys(plan.crops).filter(id => !Object.hasOwn(crops, id))
  return (
    <section className="stack" aria-labelledby="own-crops">
      <h3 id="own-crops">Your own crops</h3>
      {own.length === 0 ? (
        <p className="aside-note">None. Add one where early and late kinds of a crop bloom or want bees differently.</p>
      ) : null}
      {own.map(id => (
        <Disclosure key={id} summary={cropTitle(plan, id)}>
          <OwnCropFields id={id} />
        </Disclosure>
      ))}
      <AddCrop />
    </section>
  )
}

function OwnCropFields({ id }: { readonly id: string }) {
  const plan = usePlan()
  const edit = useEdit()
  const crop = plan.crops[id] ?? {}
  const base = crop.basedOn === undefined ? undefined : settingsOf(plan).crops[crop.basedOn]
  const uses = plantings(plan).filter(({ properties }) => properties.crop === id).length
  const set = (patch: { readonly [K in keyof OwnCrop]: OwnCrop[K] | undefined }) => {
    const after = { ...crop, ...patch }
    const kept = Object.entries(after).filter(([, value]) => value !== undefined)
    edit(setOwnCrop(id, Object.fromEntries(kept) as OwnCrop))
  }
  return (
    <>
      <TextField label="Name" value={crop.name ?? ''} isRequired onCommit={name => set({ name })} />
      {base ? <p className="aside-note">Stands on {base.name}; an empty field takes its figure.</p> : null}
      <div className="fields">
        {figures.map(name => (
          <NumberField
            key={name}
            label={capitalised(cropLimits[name].label)}
            quantity={quantities[name]}
            value={crop[name] ?? null}
            limit={fieldLimit(cropLimits[name])}
            {...(base ? { fallback: base[name] } : {})}
            onCommit={value => set({ [name]: value ?? undefined })}
          />
        ))}
      </div>
      {uses > 0 ? (
        <p className="aside-note">
          {counted(uses, 'planting')} {uses === 1 ? 'grows' : 'grow'} it. Give {uses === 1 ? 'it' : 'them'} another crop
          before deleting this one.
        </p>
      ) : (
        <div>
          <button type="button" onClick={() => edit(setOwnCrop(id, null))}>
            Delete this crop
          </button>
        </div>
      )}
    </>
  )
}

function AddCrop() {
  const plan = usePlan()
  const edit = useEdit()
  const [basedOn, setBasedOn] = useState('apple')
  const [name, setName] = useState('')
  const add = (event: FormEvent) => {
    event.preventDefault()
    const title = name.trim() || `${cropTitle(plan, basedOn)}, own`
    edit(setOwnCrop(ownCropId(plan, title), { basedOn, name: title }))
    setName('')
  }
  return (
    <form className="stack" onSubmit={add}>
      <div className="fields">
        <TextField label="Name of a new crop" value={name} placeholder="Late apple" onCommit={setName} />
        <ChoiceField
          label="Stands on"
          value={basedOn}
          choices={Object.values(crops).map(crop => ({ value: crop.id, name: cropTitle(plan, crop.id) }))}
          onCommit={setBasedOn}
        />
      </div>
      <div>
        <button type="submit">Add the crop</button>
      </div>
    </form>
  )
}

/** An id made of the name, as a person would write it in the file; a number behind it where it is taken. */
function ownCropId(plan: Pick<Plan, 'crops' | 'features'>, name: string): string {
  const plain = name
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
  const stem = plain || 'crop'
  const isTaken = (id: string) =>
    Object.hasOwn(plan.crops, id) || Object.hasOwn(crops, id) || plan.features.some(feature => feature.id === id)
  for (let number = 1; ; number += 1) {
    const id = number === 1 ? stem : `${stem}-${number}`
    if (!isTaken(id) && !(id in {})) return id
  }
}
