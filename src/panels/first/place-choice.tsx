import { useId, useState } from 'react'
import type { LngLat } from '#geo/space/plane'
import { useUnits } from '../../parts/units-context'
import { placeText, readPlace } from '../../text/read-place'
import { lengthText } from '../../text/units'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'

type Way = 'grid' | 'typed' | 'device'

/** Where the plan lies: nowhere yet, at typed coordinates, or where this device is. */
export function PlaceChoice({ onPlace }: { readonly onPlace: (place: LngLat | null) => void }) {
  const [way, setWay] = useState<Way>('grid')
  const choose = (next: Way) => {
    setWay(next)
    onPlace(null)
  }
  const name = useId()
  const option = (value: Way, words: string) => (
    <label className="option">
      <input type="radio" name={name} checked={way === value} onChange={() => choose(value)} />
      {words}
    </label>
  )
  return (
    <fieldset>
      <legend>Where is it?</legend>
      {option('grid', 'No place yet: use a bare metre grid')}
      {option('typed', 'At coordinates that I type')}
      {way === 'typed' ? <TypedPlace onPlace={onPlace} /> : null}
      {option('device', 'Where this device is')}
      {way === 'device' ? <DevicePlace onPlace={onPlace} /> : null}
    </fieldset>
  )
}

function TypedPlace({ onPlace }: { readonly onPlace: (place: LngLat | null) => void }) {
  const [text, setText] = useState('')
  const id = useId()
  const read = text.trim() === '' ? null : readPlace(text)
  const change = (typed: string) => {
    setText(typed)
    const place = readPlace(typed)
    onPlace(place.ok ? place.at : null)
  }
  const fault = read !== null && !read.ok ? read.why : ''
  return (
    <div className="field inset">
      <label htmlFor={id}>Latitude, longitude</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        placeholder="52.59, 0.16"
        required
        value={text}
        ref={input => input?.setCustomValidity(fault)}
        onChange={event => change(event.target.value)}
        aria-describedby={`${id}-read`}
      />
      <p className="field-note" id={`${id}-read`} aria-live="polite">
        {read === null ? 'As a map or a phone gives them.' : read.ok ? `Read as ${placeText(read.at)}.` : read.why}
      </p>
    </div>
  )
}

type Found =
  | { readonly status: 'none' | 'asking' }
  | { readonly status: 'found'; readonly at: LngLat; readonly accuracy: number }
  | { readonly status: 'failed'; readonly reason: string }

function DevicePlace({ onPlace }: { readonly onPlace: (place: LngLat | null) => void }) {
  const { locate } = useServices()
  const units = useUnits()
  const [found, setFound] = useState<Found>({ status: 'none' })
  const ask = async () => {
    setFound({ status: 'asking' })
    try {
      const { at, accuracy } = await locate()
      setFound({ status: 'found', at, accuracy })
      onPlace(at)
    } catch (error) {
      setFound({ status: 'failed', reason: reasonOf(error) })
    }
  }
  return (
    <div className="inset stack">
      <button type="button" onClick={ask} disabled={found.status === 'asking'}>
        {found.status === 'asking' ? 'Looking for the position' : 'Take the position of this device'}
      </button>
      <p className="field-note" aria-live="polite">
        {found.status === 'found'
          ? `${placeText(found.at)}, good to about ${lengthText(found.accuracy, units)}. It stays in the plan and is sent nowhere.`
          : found.status === 'failed'
            ? found.reason
            : 'The browser asks whether it may. The position stays in the plan and is sent nowhere.'}
      </p>
    </div>
  )
}
