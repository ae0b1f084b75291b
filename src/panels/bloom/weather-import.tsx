import { useState } from 'react'
import { Dialog } from '../../parts/dialog'
import { TableSource } from '../../parts/table-source'
import { useYear } from '../hooks'
import { reasonOf } from '../use-loaded'
import { WeatherMatching } from './weather-matching'
import './weather-import.css'

/** Largest table that is taken, characters: a hundred years of days are under four million. */
const mostCharacters = 10_000_000

/** Daily weather from a file or from what is pasted: columns matched, looked through row by row, then kept in the season. */
export function WeatherImport({ onClose }: { readonly onClose: () => void }) {
  const year = useYear()
  const [text, setText] = useState<string | null>(null)
  return (
    <Dialog title={`Weather for ${year}`} onClose={onClose}>
      {text === null ? (
        <SourceChoice onText={setText} />
      ) : (
        <WeatherMatching text={text} onBack={() => setText(null)} onClose={onClose} />
      )}
    </Dialog>
  )
}

/** A file, or a table pasted from elsewhere. Nothing leaves the device. */
function SourceChoice({ onText }: { readonly onText: (text: string) => void }) {
  const [fault, setFault] = useState<string | null>(null)
  const take = (text: string) => {
    if (text.trim() === '') setFault('There is nothing in it.')
    else if (text.length > mostCharacters) setFault('That is far more than daily weather takes. Cut it to a few years.')
    else onText(text)
  }
  const read = async (file: File) => {
    try {
      if (file.size > 4 * mostCharacters) setFault(`${file.name} is too large for a table of daily weather.`)
      else take(await file.text())
    } catch (error) {
      setFault(`${file.name} could not be read: ${reasonOf(error)}`)
    }
  }
  return (
    <TableSource
      accept=".csv,.tsv,.txt,text/csv,text/plain"
      pasteLabel="Or paste the table here"
      placeholder={'date,min,max,rain\n2026-03-01,2.4,11.0,0.0'}
      fault={fault}
      onFile={file => void read(file)}
      onText={take}
    >
      A table of days, one line a day, from a weather station or service: the date with the lowest and highest
      temperature, and rain and wind if it has them. It stays on this device.
    </TableSource>
  )
}
