import { useEffect, useRef } from 'react'
import type { Encoding } from '#geo/file/encoding'
import type { ImportForm } from '#geo/file/import'
import { counted, listed } from '../../text/words'

const encodings: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
}

/** `GPX 1.1 with 3 tracks and 12 waypoints`. */
export function formWords({ format, version, holds, encoding }: ImportForm): string {
  const parts = Object.entries(holds).flatMap(([word, count]) => (count === 0 ? [] : [counted(count, word)]))
  const held = parts.length === 0 ? '' : ` with ${listed(parts)}`
  const written = encoding === '' || encoding === 'utf-8' ? '' : `, written in ${encodings[encoding]}`
  return `${[format, version].filter(text => text !== '').join(' ')}${held}${written}`
}

/** What a file was taken for. Whoever chose it is led here, since the button that was pressed is gone. */
export function Recognised({ name, words }: { readonly name: string; readonly words: string }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  return (
    <div>
      <h3 ref={heading} tabIndex={-1}>
        {name}
      </h3>
      <p>Read as {words}.</p>
    </div>
  )
}
