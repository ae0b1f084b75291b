import { useCallback, useState } from 'react'
import { compose } from '#geo/plan/edits'
import { addPicture, removePicture, setPicture } from '#geo/plan/edits-pictures'
import type { Picture } from '#geo/plan/plan'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { useEdit } from '../hooks'
import { useServices } from '../services'
import { reasonOf, useLoaded } from '../use-loaded'
import { FileButton } from './file-button'
import { PictureMoves } from './picture-moves'
import { PicturePlacing } from './picture-placing'

type Props = { readonly picture: Picture; readonly isOpen: boolean; readonly onToggle: () => void }

/** One picture under the map: shown or not, and, opened, all that can be done with it. */
export function PictureCard({ picture, isOpen, onToggle }: Props) {
  const edit = useEdit()
  const store = usePlannerStore()
  const { id } = picture
  const name = picture.name || 'Unnamed picture'
  const { pictureUrl } = useServices()
  // Bytes under an id never change, so that only another picture is loaded anew.
  // biome-ignore lint/correctness/useExhaustiveDependencies: places and opacity do not matter here
  const load = useCallback(() => pictureUrl(picture), [pictureUrl, id, picture.image])
  const [url] = useLoaded(load)
  const isMissing = url.status === 'failed' || (url.status === 'ready' && url.value === null)
  const flag = (member: 'isLocked' | 'isHidden' | 'isInFile', isOn: boolean) =>
    edit(setPicture(id, { [member]: isOn ? true : undefined }))
  const remove = () => {
    edit(removePicture(id))
    notify(store, `${name} taken away. Undo brings it back.`)
  }
  return (
    <section className="picture" aria-label={`Picture ${name}`}>
      <div className="picture-head">
        <label className="option">
          <input
            type="checkbox"
            checked={picture.isHidden !== true}
            onChange={event => flag('isHidden', !event.target.checked)}
          />
          <span>{name}</span>
        </label>
        <button type="button" className="quiet" aria-expanded={isOpen} onClick={onToggle}>
          {isOpen ? 'Close' : 'Place and change'}
        </button>
      </div>
      {isMissing ? <Missing picture={picture} reason={url.status === 'failed' ? url.reason : null} /> : null}
      {isOpen ? (
        <div className="stack">
          <div className="fields">
            <TextField
              label="Name"
              value={picture.name ?? ''}
              onCommit={next => edit(setPicture(id, { name: next || undefined }))}
            />
            <NumberField
              label="Opacity"
              quantity="share"
              value={picture.opacity ?? 1}
              limit={{ low: 0, high: 1 }}
              isRequired
              onCommit={opacity => edit(setPicture(id, { opacity: opacity ?? 1 }))}
            />
          </div>
          <label className="option">
            <input
              type="checkbox"
              checked={picture.isLocked === true}
              onChange={event => flag('isLocked', event.target.checked)}
            />
            Locked: it stays where it lies
          </label>
          <label className="option">
            <input
              type="checkbox"
              checked={picture.isInFile === true}
              onChange={event => flag('isInFile', event.target.checked)}
            />
            Save it in the plan’s file too
          </label>
          {picture.isLocked ? null : (
            <>
              {url.status === 'ready' && url.value !== null ? (
                <PicturePlacing picture={picture} url={url.value} />
              ) : null}
              <PictureMoves picture={picture} />
            </>
          )}
          <div className="actions">
            <button type="button" onClick={remove}>
              Take it away
            </button>
          </div>
        </div>
      ) : null}
    </section>
  )
}

/** The plan knows of the picture, but its image is not here: the way to bring it. */
function Missing({ picture, reason }: { readonly picture: Picture; readonly reason: string | null }) {
  const edit = useEdit()
  const { takePicture } = useServices()
  const [fault, setFault] = useState(reason)
  const bring = async (file: File) => {
    try {
      const { id, width, height } = await takePicture(file)
      const { image: _, ...rest } = picture
      const label = `Bring picture ${picture.name || picture.id}`
      edit(compose(label, [removePicture(picture.id), addPicture({ ...rest, id, width, height })]))
    } catch (error) {
      setFault(reasonOf(error))
    }
  }
  return (
    <div className="stack">
      <p className="field-note">
        This device does not have the image; its place is kept. Choose the image, and it lies where it lay.
      </p>
      {fault === null ? null : <p className="field-fault">{fault}</p>}
      <div>
        <FileButton words="Choose the image" onFile={bring} />
      </div>
    </div>
  )
}
