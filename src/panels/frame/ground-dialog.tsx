import { type FormEvent, useId, useState } from 'react'
import { setTiles } from '#geo/plan/edits-settings'
import { addressFault } from '#geo/plan/tiles'
import { Dialog } from '../../parts/dialog'
import { setView } from '../../state/actions'
import type { Ground } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { useEdit, usePlan } from '../hooks'

const words: Readonly<Record<Ground['kind'], string>> = {
  grid: 'Metre grid: nothing is fetched',
  osm: 'OpenStreetMap: street map pictures from its server',
  own: 'Pictures from an address of my own',
}

/** What lies under the plan on the map. */
export function GroundDialog({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const ground = usePlanner(state => state.view.ground)
  const [kind, setKind] = useState(ground.kind)
  const plan = usePlan()
  const edit = useEdit()
  const [url, setUrl] = useState(plan.tiles?.url ?? (ground.kind === 'own' ? ground.url : ''))
  const [isKept, setKept] = useState(plan.tiles !== undefined || ground.kind !== 'own')
  const [fault, setFault] = useState<string | null>(null)
  const id = useId()
  const use = (event: FormEvent) => {
    event.preventDefault()
    const wrong = kind === 'own' ? faultWords(url.trim()) : null
    setFault(wrong)
    if (wrong !== null) return
    if (kind === 'own') edit(setTiles(isKept ? url.trim() : null))
    setView(store, { ground: kind === 'own' ? { kind, url: url.trim() } : { kind } })
    onClose()
  }
  return (
    <Dialog title="Ground of the map" onClose={onClose}>
      <form className="stack" onSubmit={use}>
        <fieldset>
          <legend>What lies under the plan</legend>
          {(['grid', 'osm', 'own'] as const).map(each => (
            <label className="option" key={each}>
              <input type="radio" name={id} checked={kind === each} onChange={() => setKind(each)} />
              {words[each]}
            </label>
          ))}
        </fieldset>
        {kind === 'own' ? (
          <div className="field">
            <label htmlFor={`${id}-url`}>Address of the pictures</label>
            <input
              id={`${id}-url`}
              type="text"
              inputMode="url"
              autoComplete="off"
              placeholder="https://example.org/{z}/{x}/{y}.png"
              value={url}
              aria-invalid={fault !== null}
              aria-describedby={`${id}-hint`}
              onChange={event => setUrl(event.target.value)}
            />
            {fault === null ? null : (
              <p className="field-fault" role="alert">
                {fault}
              </p>
            )}
            <p className="field-note" id={`${id}-hint`}>
              {
                'With {z}, {x} and {y} where zoom, column and row belong. Use only pictures that you are allowed to use.'
              }
            </p>
            <label className="option">
              <input type="checkbox" checked={isKept} onChange={event => setKept(event.target.checked)} />
              Keep the address with the plan
            </label>
            <p className="field-note">
              Whoever opens the plan finds it here. It is asked for nothing until they choose so too.
            </p>
          </div>
        ) : null}
        {kind === 'grid' ? null : (
          <p className="aside-note">
            The server that sends the pictures sees which area you look at. Your plan is not sent. Pictures can lie some
            metres off.
          </p>
        )}
        <div className="actions">
          <button type="submit" className="first">
            Use this ground
          </button>
          <button type="button" onClick={onClose}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  )
}

function faultWords(url: string): string | null {
  const fault = addressFault(url)
  if (fault === null) return null
  return fault.why === 'start' ? 'The address should begin with https://.' : `The address lacks ${fault.missing}.`
}
