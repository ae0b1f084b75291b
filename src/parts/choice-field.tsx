import { type ReactNode, useId } from 'react'
import { describedBy, FieldFrame } from './field-frame'

export type Choice<T extends string> = { readonly value: T; readonly name: string; readonly group?: string }

type Props<T extends string> = {
  readonly label: string
  readonly value: T
  readonly choices: readonly Choice<T>[]
  readonly onCommit: (value: T) => void
  readonly note?: ReactNode
}

/** One of a few named things; choices with the same group stand together under its name. */
export function ChoiceField<T extends string>({ label, value, choices, onCommit, note }: Props<T>) {
  const id = useId()
  const groups = [...new Set(choices.map(choice => choice.group))]
  const options = (group: string | undefined) =>
    choices
      .filter(choice => choice.group === group)
      .map(choice => (
        <option key={choice.value} value={choice.value}>
          {choice.name}
        </option>
      ))
  return (
    <FieldFrame id={id} label={label} note={note}>
      <select
        id={id}
        value={value}
        aria-describedby={describedBy(id, { note })}
        onChange={event => onCommit(event.target.value as T)}
      >
        {groups.map(group =>
          group === undefined ? (
            options(group)
          ) : (
            <optgroup key={group} label={group}>
              {options(group)}
            </optgroup>
          ),
        )}
      </select>
    </FieldFrame>
  )
}
