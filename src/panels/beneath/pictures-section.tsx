import { useEffect, useState } from 'react'
import { addPicture } from '#geo/plan/edits-pictures'
import { cornersOf } from '#geo/plan/pictures'
import type { Plan } from '#geo/plan/plan'
import type { Plane } from '#geo/space/plane'
import { extentOf } from '#geo/space/shape'
import { select, setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { useEdit, useHome, usePlan } from '../hooks'
import { type TakenPicture, useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { FileButton } from './file-button'
import { PictureCard } from './picture-card'
import { showLaid } from './show-laid'
import './beneath.css'

/** Ground that a picture is first laid over where nothing is drawn yet, m: a garden or the corner of an orchard. */
const firstWidth = 60

/** Photographs, scans and sketches that lie under the map. */
export function PicturesSection() {
  const plan = usePlan()
  const edit = useEdit()
  const home = useHome()
  const middle = usePlanner(state => state.view.mapMiddle)
  const { takePicture } = useServices()
  const [words, setWords] = useState<{ readonly text: string; readonly isFault: boolean } | null>(null)
  const store = usePlannerStore()
  const open = usePlanner(state => state.view.picture)
  /** The picture whose card is open is the one that the map can move; what is selected would get its keys. */
  const setOpen = (id: string | null) => {
    if (id !== null) select(store, [])
    setView(store, { picture: id })
  }
  useEffect(() => () => setView(store, { picture: null }), [store])
  const pictures = plan.pictures ?? []
  const take = async (file: File) => {
    setWords({ text: 'Getting the picture ready…', isFault: false })
    try {
      const taken = await takePicture(file)
      const name = file.name.replace(/\.[^.]*$/, '').slice(0, 60) || 'Picture'
      const at = home.toMetres(middle ?? home.centre)
      const { id, width, height } = taken
      const corners = firstCorners(taken, { plan, home, at })
      edit(addPicture({ id, name, width, height, corners, opacity: 0.7 }))
      setOpen(id)
      showLaid(store)
      setWords({ text: takenWords(taken), isFault: false })
    } catch (error) {
      setWords({ text: reasonOf(error), isFault: true })
    }
  }
  return (
    <div className="stack">
      <p className="aside-note">
        An aerial photograph, a scanned map or a sketch of your own, to trace over. It stays on this device; nothing is
        sent anywhere.
      </p>
      <div className="actions">
        <FileButton words="Choose a picture" onFile={take} />
        <FileButton words="Take a photograph" isCamera onFile={take} />
      </div>
      {words === null ? null : (
        <p className={words.isFault ? 'field-fault' : 'field-note'} role={words.isFault ? 'alert' : 'status'}>
          {words.text}
        </p>
      )}
      {pictures.map(picture => (
        <PictureCard
          key={picture.id}
          picture={picture}
          isOpen={open === picture.id}
          onToggle={() => setOpen(open === picture.id ? null : picture.id)}
        />
      ))}
    </div>
  )
}

/** Upright around a position, as wide as what is drawn. */
function firstCorners(
  size: { readonly width: number; readonly height: number },
  {
    plan,
    home,
    at,
  }: { readonly plan: Plan; readonly home: Plane; readonly at: { readonly x: number; readonly y: number } },
) {
  const positions = plan.features.flatMap(({ geometry }) => positionsIn(geometry.coordinates, home))
  const extent = extentOf(positions)
  const wide = positions.length > 1 ? Math.max(extent.maxX - extent.minX, extent.maxY - extent.minY) : 0
  const scale = (wide > 0 ? wide : firstWidth) / Math.max(size.width, size.height)
  const origin = { x: at.x - (scale * size.width) / 2, y: at.y + (scale * size.height) / 2 }
  return cornersOf({ origin, right: { x: scale, y: 0 }, down: { x: 0, y: -scale } }, size, home)
}

function positionsIn(coordinates: unknown, home: Plane): { x: number; y: number }[] {
  if (!Array.isArray(coordinates)) return []
  const [lng, lat] = coordinates
  if (typeof lng === 'number' && typeof lat === 'number') return [home.toMetres([lng, lat])]
  return coordinates.flatMap(part => positionsIn(part, home))
}

function takenWords({ width, height, from }: TakenPicture): string {
  const isSmaller = from.width > width
  const size = `${width} × ${height} pixels`
  const made = isSmaller ? `made smaller, from ${from.width} × ${from.height} to ${size}` : size
  return `Laid under the map (${made}). Its place is a guess: place it below.`
}
