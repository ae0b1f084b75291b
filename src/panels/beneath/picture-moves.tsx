import { type KeyboardEvent, useId, useRef, useState } from 'react'
import { type PictureMove, placePicture } from '#geo/plan/edits-pictures'
import { cornersOf, placingOf } from '#geo/plan/pictures'
import type { Picture } from '#geo/plan/plan'
import { type Placing, shifted, turned } from '#geo/space/placing'
import { NumberField } from '../../parts/number-field'
import { gestureKey } from '../../state/history'
import { lengthText } from '../../text/units'
import { useEdit, useHome, usePlan } from '../hooks'

const steps = [0.1, 1, 10] as const
const far = { low: -20_000, high: 20_000 } as const

const arrows = [
  { key: 'ArrowUp', words: 'North', turn: 0, x: 0, y: 1 },
  { key: 'ArrowLeft', words: 'West', turn: 270, x: -1, y: 0 },
  { key: 'ArrowRight', words: 'East', turn: 90, x: 1, y: 0 },
  { key: 'ArrowDown', words: 'South', turn: 180, x: 0, y: -1 },
] as const

/** Moves, turns and scales a picture: by buttons, by arrow keys while one of them has the focus, and by typed figures. */
export function PictureMoves({ picture }: { readonly picture: Picture }) {
  const edit = useEdit()
  const home = useHome()
  const { units } = usePlan()
  const name = useId()
  const [step, setStep] = useState<(typeof steps)[number]>(1)
  const [east, setEast] = useState<number | null>(null)
  const [north, setNorth] = useState<number | null>(null)
  const [degrees, setDegrees] = useState<number | null>(null)
  const [scale, setScale] = useState<number | null>(null)
  // Presses that follow each other are one step of undo.
  const burst = useRef({ at: Number.NEGATIVE_INFINITY, key: '' })
  const middle = { u: picture.width / 2, v: picture.height / 2 }
  const change = (to: (placing: Placing) => Placing, words: PictureMove, key?: string) => {
    const placing = placingOf(picture, home)
    if (placing === null) return
    edit(placePicture(picture.id, cornersOf(to(placing), picture, home), words, key))
  }
  const nudge = ({ x, y }: { x: number; y: number }, at: number) => {
    const key = at - burst.current.at < 1000 ? burst.current.key : gestureKey()
    burst.current = { at, key }
    change(placing => shifted(placing, { x: x * step, y: y * step }), 'Move', key)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const arrow = arrows.find(({ key }) => key === event.key)
    if (arrow === undefined) return
    event.preventDefault()
    nudge(arrow, event.timeStamp)
  }
  const isIdle = (east ?? 0) === 0 && (north ?? 0) === 0 && (degrees ?? 0) === 0 && (scale ?? 1) === 1
  const move = () => {
    change(
      placing => {
        const turn = turned(placing, middle, { degrees: degrees ?? 0, scale: scale ?? 1 })
        return shifted(turn, { x: east ?? 0, y: north ?? 0 })
      },
      onlyOne({ move: (east ?? 0) !== 0 || (north ?? 0) !== 0, turn: (degrees ?? 0) !== 0, size: (scale ?? 1) !== 1 }),
    )
    setDegrees(null)
    setScale(null)
    setEast(null)
    setNorth(null)
  }
  return (
    <fieldset className="stack">
      <legend>Move it</legend>
      <div className="options">
        {steps.map(each => (
          <label className="option" key={each}>
            <input type="radio" name={name} checked={step === each} onChange={() => setStep(each)} />
            {lengthText(each, units)}
          </label>
        ))}
      </div>
      <div className="nudge-pad">
        {arrows.map(arrow => (
          <button
            type="button"
            key={arrow.key}
            className={`nudge-${arrow.words.toLowerCase()}`}
            aria-label={`${arrow.words} by ${lengthText(step, units)}`}
            onClick={event => nudge(arrow, event.timeStamp)}
            onKeyDown={onKeyDown}
          >
            <ArrowMark turn={arrow.turn} />
          </button>
        ))}
      </div>
      <p className="field-note">
        With one of these in focus, the arrow keys move the picture. On the map it can be pulled: inside to move it, at
        a corner to resize it, at the round mark before its upper edge to turn it.
      </p>
      <div className="fields">
        <NumberField label="East (− west)" quantity="length" value={east} limit={far} onCommit={setEast} />
        <NumberField label="North (− south)" quantity="length" value={north} limit={far} onCommit={setNorth} />
        <NumberField
          label="Turn clockwise by"
          quantity="degrees"
          value={degrees}
          limit={{ low: -360, high: 360 }}
          onCommit={setDegrees}
        />
        <NumberField
          label="Scale to"
          quantity="share"
          value={scale}
          fallback={1}
          limit={{ low: 0.01, high: 100 }}
          onCommit={setScale}
        />
      </div>
      <div>
        <button type="button" disabled={isIdle} onClick={move}>
          Move the picture
        </button>
      </div>
    </fieldset>
  )
}

/** Drawn and not a letter: not every device's letters have arrows. `turn` in degrees clockwise from up. */
function ArrowMark({ turn }: { readonly turn: number }) {
  return (
    <svg
      viewBox="0 0 24 24"
      width="24"
      height="24"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      aria-hidden="true"
    >
      <path
        d="M12 20V5M6 11l6-6 6 6"
        strokeLinecap="round"
        strokeLinejoin="round"
        transform={`rotate(${turn} 12 12)`}
      />
    </svg>
  )
}

/** What undo calls typed figures: by what they do, where it is one thing. */
function onlyOne({ move, turn, size }: Readonly<Record<'move' | 'turn' | 'size', boolean>>): PictureMove {
  if (turn && !move && !size) return 'Turn'
  if (size && !move && !turn) return 'Resize'
  return move && !turn && !size ? 'Move' : 'Place'
}
