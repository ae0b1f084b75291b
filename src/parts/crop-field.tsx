import { crops } from '#geo/data/crops'
import { cropName } from '#geo/data/settings'
import type { Plan } from '#geo/plan/plan'
import { type Choice, ChoiceField } from './choice-field'

/** Crops by name: the grower's own first, then those in the plan's ground, then the tables. */
export function cropChoices(plan: Plan): readonly Choice<string>[] {
  const named = (id: string) => ({ value: id, name: cropName(id, plan.crops) })
  const own = Object.keys(plan.crops).filter(id => !Object.hasOwn(crops, id))
  const choices: Choice<string>[] = [
    ...own.map(id => ({ ...named(id), group: 'Your own crops' })),
    ...Object.keys(crops).map(id => ({ ...named(id), group: 'Crops with built-in figures' })),
  ]
  const known = new Set(choices.map(choice => choice.value))
  const strange = new Set(plan.features.flatMap(({ properties }) => ('crop' in properties ? [properties.crop] : [])))
  for (const id of strange) {
    if (!known.has(id)) choices.push({ value: id, name: `${id} (no figures)`, group: 'Named in the plan only' })
  }
  return choices
}

type Props = { readonly plan: Plan; readonly value: string; readonly onCommit: (crop: string) => void }

export function CropField({ plan, value, onCommit }: Props) {
  return <ChoiceField label="Crop" value={value} choices={cropChoices(plan)} onCommit={onCommit} />
}
