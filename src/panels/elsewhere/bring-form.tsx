import { type ReactNode, useEffect, useRef } from 'react'
import type { Encoding } from '#geo/file/encoding'
import type { ImportForm } from '#geo/file/import'
import type { Separator } from '#geo/file/table-rows'
import type { TableGuess } from '#geo/file/tree-columns'
import { listed } from '#geo/wording/plain'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { counted } from '../../text/words'

const encodings: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'windows-1252': 'Windows-1252',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16, the other way round',
}

const separatorNames: Readonly<Record<Separator, string>> = {
  '\t': 'tabs',
  ';': 'semicolons',
  ',': 'commas',
  '|': 'bars',
}

/** `GPX 1.1 with 3 tracks and 12 waypoints`. */
export function formWords({ format, version, holds, encoding }: ImportForm): string {
  const parts = Object.entries(holds).flatMap(([word, count]) => (count === 0 ? [] : [counted(count, word)]))
  const held = parts.length === 0 ? '' : ` with ${listed(parts)}`
  const written = encoding === '' || encoding === 'utf-8' ? '' : `, written in ${encodings[encoding]}`
  return `${[format, version].filter(text => text !== '').join(' ')}${held}${written}`
}

/** `a table with semicolons between its columns and decimal commas, in Windows-1252`. */
export function tableWords({ columns, hasHead }: TableGuess, encoding: Encoding): string {
  const decimals = columns.decimal === ',' ? 'decimal commas' : 'decimal points'
  const head = hasHead ? '' : ', without a line of headings'
  return `a table with ${separatorNames[columns.separator]} between its columns and ${decimals}, in ${encodings[encoding]}${head}`
}

type RecognisedProps = {
  readonly name: string
  readonly words: string
  readonly onAgain: () => void
  readonly children?: ReactNode
}

/** What a file was taken for. Whoever chose it is led here, since the button that was pressed is gone. */
export function Recognised({ name, words, onAgain, children = null }: RecognisedProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  return (
    <div className="stack">
      <div className="bring-head">
        <h3 ref={heading} tabIndex={-1}>
          {name}
        </h3>
        <button type="button" onClick={onAgain}>
          Another file
        </button>
      </div>
      <p>Read as {words}.</p>
      {children}
    </div>
  )
}

/** How somebody says that a table is written. */
export type Written = { readonly separator: Separator; readonly encoding: Encoding; readonly hasHead: boolean }

type WrittenProps = { readonly value: Written; readonly onChange: (written: Written) => void }

/** How a table is written, to be put right where it was taken for something else. */
export function WrittenChoices({ value, onChange }: WrittenProps) {
  return (
    <Disclosure summary="It is written otherwise">
      <div className="columns">
        <ChoiceField
          label="Between columns stand"
          value={value.separator}
          choices={([';', ',', '\t', '|'] as const).map(each => ({ value: each, name: separatorNames[each] }))}
          onCommit={separator => onChange({ ...value, separator })}
        />
        <ChoiceField
          label="Letters are written in"
          value={value.encoding}
          choices={(Object.keys(encodings) as Encoding[]).map(each => ({ value: each, name: encodings[each] }))}
          onCommit={encoding => onChange({ ...value, encoding })}
        />
        <ChoiceField
          label="The first line holds"
          value={value.hasHead ? 'names' : 'things'}
          choices={[
            { value: 'names', name: 'names of the columns' },
            { value: 'things', name: 'a thing, as all others' },
          ]}
          onCommit={first => onChange({ ...value, hasHead: first === 'names' })}
        />
      </div>
    </Disclosure>
  )
}
