import { useId, useState } from 'react'
import { placePicture } from '#geo/plan/edits-pictures'
import { cornersOf, placingOf } from '#geo/plan/pictures'
import type { Picture } from '#geo/plan/plan'
import {
  type KnownPoint,
  type Placing,
  type Spot,
  sidePlacing,
  similarPlacing,
  slantedPlacing,
} from '#geo/space/placing'
import type { LngLat, Plane } from '#geo/space/plane'
import { NumberField } from '../../parts/number-field'
import { usePlannerStore } from '../../state/use-planner'
import { useEdit, useHome, usePlan } from '../hooks'
import { fitWords } from './fit-words'
import { PicturePreview } from './picture-preview'
import { PlaceSource } from './place-source'
import { showLaid } from './show-laid'

type Point = { readonly spot: Spot | null; readonly at: LngLat | null }
const emptyPoint: Point = { spot: null, at: null }
const mostPoints = 4
/** No point is chosen to be marked. */
const none = -1

type Way = 'points' | 'side'

/** Places a picture: by two to four points that are known on the ground, or by one side that was measured. */
export function PicturePlacing({ picture, url }: { readonly picture: Picture; readonly url: string }) {
  const edit = useEdit()
  const store = usePlannerStore()
  const home = useHome()
  const { units } = usePlan()
  const name = useId()
  const [way, setWay] = useState<Way>('points')
  const [points, setPoints] = useState<readonly Point[]>([emptyPoint, emptyPoint])
  const [chosen, setChosen] = useState(0)
  const [isSlanted, setSlanted] = useState(false)
  const [length, setLength] = useState<number | null>(null)
  const [bearing, setBearing] = useState<number | null>(null)
  const [done, setDone] = useState('')
  const shown = way === 'side' ? points.slice(0, 2) : points
  const set = (index: number, patch: Partial<Point>) => {
    setDone('')
    setPoints(points.map((point, i) => (i === index ? { ...point, ...patch } : point)))
  }
  const known = knownOf(shown, home)
  const placing =
    way === 'points'
      ? (isSlanted && known.length > 2 ? slantedPlacing : similarPlacing)(known)
      : bySide(picture, home, { spots: shown.map(({ spot }) => spot), length, bearing })
  const lay = () => {
    if (placing === null) return
    edit(placePicture(picture.id, cornersOf(placing, picture, home), 'Place'))
    // The placing is done: no point is looked for any more, and what was laid is looked at.
    setChosen(none)
    showLaid(store)
    setDone(way === 'points' ? fitWords(placing, known, units) : 'The side is as long as you measured it.')
  }
  const chooseWay = (next: Way) => {
    setWay(next)
    setChosen(Math.min(Math.max(chosen, 0), 1))
    setDone('')
  }
  return (
    <fieldset className="stack">
      <legend>Place it</legend>
      <div className="options">
        <label className="option">
          <input type="radio" name={name} checked={way === 'points'} onChange={() => chooseWay('points')} />
          by known points
        </label>
        <label className="option">
          <input type="radio" name={name} checked={way === 'side'} onChange={() => chooseWay('side')} />
          by one measured side
        </label>
      </div>
      <PicturePreview
        picture={picture}
        url={url}
        spots={shown.map(({ spot }) => spot)}
        chosen={chosen}
        onMark={spot => {
          if (chosen === none) return
          set(chosen, { spot })
          // Both ends of a side are marked one after the other.
          if (way === 'side' && chosen === 0 && shown[0]?.spot === null) setChosen(1)
        }}
      />
      {shown.map((point, index) => (
        <PointFields
          // biome-ignore lint/suspicious/noArrayIndexKey: points are known by their number
          key={index}
          number={index + 1}
          point={point}
          picture={picture}
          isChosen={chosen === index}
          isPlaced={way === 'points'}
          onChoose={() => setChosen(index)}
          onChange={patch => set(index, patch)}
        />
      ))}
      {way === 'points' ? (
        <>
          <div className="actions">
            {points.length < mostPoints ? (
              <button
                type="button"
                className="quiet"
                onClick={() => {
                  setPoints([...points, emptyPoint])
                  setChosen(points.length)
                }}
              >
                One more point
              </button>
            ) : null}
            {points.length > 2 ? (
              <button
                type="button"
                className="quiet"
                onClick={() => {
                  setPoints(points.slice(0, -1))
                  setChosen(Math.min(chosen, points.length - 2))
                }}
              >
                Without point {points.length}
              </button>
            ) : null}
          </div>
          {known.length > 2 ? (
            <label className="option">
              <input type="checkbox" checked={isSlanted} onChange={event => setSlanted(event.target.checked)} />
              Let it stretch and slant: for photographs taken at an angle, and paper that warped
            </label>
          ) : null}
        </>
      ) : (
        <div className="fields">
          <NumberField
            label="Length from 1 to 2"
            quantity="length"
            value={length}
            limit={{ low: 0, high: 20_000, isAbove: true }}
            onCommit={setLength}
          />
          <NumberField
            label="Bearing from 1 to 2"
            quantity="degrees"
            value={bearing}
            limit={{ low: -360, high: 360 }}
            onCommit={setBearing}
            note="Left empty, it is not turned."
          />
        </div>
      )}
      <div>
        <button type="button" className="first" disabled={placing === null} onClick={lay}>
          Lay it so
        </button>
      </div>
      <p className="field-note" role="status">
        {done || wanting({ way, placing, known: known.length, points: points.length })}
      </p>
    </fieldset>
  )
}

function wanting({
  way,
  placing,
  known,
  points,
}: {
  way: Way
  placing: Placing | null
  known: number
  points: number
}) {
  if (way === 'side') return placing === null ? 'Mark both ends on the picture and give the length.' : ''
  if (known < 2) return 'Each point wants its spot on the picture and its position on the ground.'
  if (placing === null) return 'These points lie too near to one line, or turn the picture over. Choose others.'
  return known < points ? `${known} of ${points} points are whole; the others are left out.` : ''
}

function knownOf(points: readonly Point[], home: Plane): KnownPoint[] {
  return points.flatMap(({ spot, at }) => (spot === null || at === null ? [] : [{ spot, at: home.toMetres(at) }]))
}

function bySide(
  picture: Picture,
  home: Plane,
  { spots, length, bearing }: { spots: readonly (Spot | null)[]; length: number | null; bearing: number | null },
): Placing | null {
  const [from, to] = spots
  const now = placingOf(picture, home)
  if (!from || !to || length === null || now === null) return null
  return sidePlacing(now, { from, to, length, bearing: bearing ?? undefined })
}

type PointFieldsProps = {
  readonly number: number
  readonly point: Point
  readonly picture: Picture
  readonly isChosen: boolean
  /** It has a position on the ground too. */
  readonly isPlaced: boolean
  readonly onChoose: () => void
  readonly onChange: (patch: Partial<Point>) => void
}

function PointFields({ number, point, picture, isChosen, isPlaced, onChoose, onChange }: PointFieldsProps) {
  const { spot, at } = point
  const setSpot = (patch: Partial<Spot>) => onChange({ spot: { u: spot?.u ?? 0, v: spot?.v ?? 0, ...patch } })
  return (
    <fieldset className="stack picture-point">
      <legend>
        <label className="option">
          <input type="radio" checked={isChosen} onChange={onChoose} />
          Point {number}: {spot === null ? 'tap it on the picture' : 'marked on the picture'}
        </label>
      </legend>
      {isChosen ? (
        <div className="fields">
          <NumberField
            label="Pixels from the left"
            value={spot?.u ?? null}
            limit={{ low: 0, high: picture.width }}
            onCommit={u => u !== null && setSpot({ u })}
          />
          <NumberField
            label="Pixels from the top"
            value={spot?.v ?? null}
            limit={{ low: 0, high: picture.height }}
            onCommit={v => v !== null && setSpot({ v })}
          />
        </div>
      ) : null}
      {isPlaced && (isChosen || at !== null) ? (
        <PlaceSource
          label={`Ground position of point ${number}`}
          value={at}
          isOpen={isChosen}
          onTake={next => onChange({ at: next })}
        />
      ) : null}
    </fieldset>
  )
}
