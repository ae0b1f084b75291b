import { bees } from '#geo/data/bees'
import { type BeeId, beeIds } from '#geo/data/own'
import { Caution } from '../../parts/caution'
import { ChoiceField } from '../../parts/choice-field'

/** "Blue orchard bee (Osmia lignaria)". */
export function beeTitle(id: BeeId): string {
  return `${bees[id].name} (${bees[id].latin})`
}

type Props = {
  readonly value: BeeId
  readonly onCommit: (bee: BeeId) => void
  readonly label?: string
  /** The page tells the caution on species already. */
  readonly isCautioned?: true
}

/** Which bee, with where it is at home and what to weigh before letting it go. */
export function BeeChoice({ value, onCommit, label = 'Bee', isCautioned }: Props) {
  const { native, goodFor, caution } = bees[value]
  return (
    <div className="stack">
      <ChoiceField
        label={label}
        value={value}
        choices={beeIds.map(id => ({ value: id, name: beeTitle(id) }))}
        onCommit={onCommit}
      />
      <p className="aside-note">
        {native} {goodFor}
      </p>
      <p className="aside-note">{caution}</p>
      {isCautioned ? null : <Caution about="species" />}
    </div>
  )
}
