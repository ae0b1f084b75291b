import { type ReactNode, useState } from 'react'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'

export type Pattern = { readonly every: number; readonly first: number; readonly cultivar: string }

type Props = {
  /** What is counted: plants of a row, or rows. */
  readonly of: 'plant' | 'row'
  readonly start: Pick<Pattern, 'every' | 'first'>
  /** As many as there are to count. */
  readonly most: number
  readonly least: number
  readonly firstNote?: string
  readonly note?: ReactNode
  /** What the button says, and whether there is anything to set. */
  readonly words: (pattern: Pattern) => string
  readonly onSet: (pattern: Pattern) => void
}

/** Another cultivar for one in so many, of plants or of rows. */
export function CultivarPattern({ of, start, most, least, firstNote = '', note, words, onSet }: Props) {
  const [every, setEvery] = useState(start.every)
  const [first, setFirst] = useState(start.first)
  const [cultivar, setCultivar] = useState('')
  const pattern = { every, first, cultivar }
  return (
    <>
      <div className="fields">
        <NumberField
          label={`One ${of} in every`}
          value={every}
          limit={{ low: least, high: 1000, isWhole: true }}
          isRequired
          onCommit={n => setEvery(n ?? start.every)}
        />
        <NumberField
          label={`First of them: ${of}`}
          value={first}
          limit={{ low: 1, high: most, isWhole: true }}
          isRequired
          onCommit={n => setFirst(n ?? start.first)}
          note={firstNote}
        />
      </div>
      <TextField label="Their cultivar" value={cultivar} onCommit={setCultivar} />
      {note ? <p className="field-note">{note}</p> : null}
      <div>
        <button type="button" disabled={cultivar === '' || first > most} onClick={() => onSet(pattern)}>
          {words(pattern)}
        </button>
      </div>
    </>
  )
}
