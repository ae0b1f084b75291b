import { useId, useState } from 'react'

type Props = {
  readonly fault: string | null
  readonly onFile: (file: File) => void
  readonly onText: (text: string) => void
}

/** A file, or cells copied from a spreadsheet. */
export function ImportSource({ fault, onFile, onText }: Props) {
  const id = useId()
  const [typed, setTyped] = useState('')
  return (
    <div className="stack">
      <p>
        Points, walked tracks, lines and outlines from GPX, KML, KMZ or GeoJSON; or a table (CSV, or cells copied from a
        spreadsheet) of trees, of rows or of stations. It is read on this device, and nothing is changed before you say
        so.
      </p>
      <div className="field">
        <label htmlFor={`${id}-file`}>Choose a file</label>
        <input
          id={`${id}-file`}
          type="file"
          accept=".gpx,.kml,.kmz,.geojson,.json,.csv,.tsv,.txt"
          onChange={event => {
            const file = event.target.files?.[0]
            if (file !== undefined) onFile(file)
          }}
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-text`}>Or paste cells here</label>
        <textarea
          id={`${id}-text`}
          className="paste"
          rows={5}
          spellCheck={false}
          value={typed}
          placeholder={'row\ttree\tcultivar\n1\t1\t…'}
          aria-describedby={`${id}-note`}
          onPaste={event => {
            // Straight on: a field that shows a hundred thousand lines would hold the page up.
            const text = event.clipboardData.getData('text/plain')
            if (typed !== '' || text.trim() === '') return
            event.preventDefault()
            onText(text)
          }}
          onChange={event => setTyped(event.target.value)}
        />
        <p className="field-note" id={`${id}-note`}>
          With their line of headings. Ctrl and V (on a Mac, Command and V) does the same anywhere on the map.
        </p>
      </div>
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <div className="actions">
        <button type="button" className="first" disabled={typed.trim() === ''} onClick={() => onText(typed)}>
          Look at what was pasted
        </button>
      </div>
    </div>
  )
}
