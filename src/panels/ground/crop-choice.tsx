import { crops } from '#geo/data/crops'
import type { Plan } from '#geo/plan/plan'
import { type Choice, ChoiceField } from '../../parts/choice-field'
import { usePlan } from '../hooks'
import { cropTitle } from '../titles'

/** Crops by name: the grower's own first, then those in the plan's ground, then the tables. */
export function cropChoices(plan: Plan): readonly Choice<string>[] {
  const own = Object.keys(plan.crops).filter(id => !Object.hasOwn(crops, id))
  const choices: Choice<string>[] = [
    ...own.map(id => ({ value: id, name: cropTitle(plan, id), group: 'Your own crops' })),
    ...Object.keys(crops).map(id => ({ value: id, name: cropTitle(plan, id), group: 'Crops with built-in figures' })),
  ]
  const known = new Set(choices.map(choice => choice.value))
  const strange = new Set(plan.features.flatMap(({ properties }) => ('crop' in properties ? [properties.crop] : [])))
  for (const id of strange) {
    if (!known.has(id)) choices.push({ value: id, name: `${id} (no figures)`, group: 'Named in the plan only' })
  }
  return choices
}

type Props = { readonly value: string; readonly onCommit: (crop: string) => void }

export function CropChoice({ value, onCommit }: Props) {
  const plan = usePlan()
  return <ChoiceField label="Crop" value={value} choices={cropChoices(plan)} onCommit={onCommit} />
}
