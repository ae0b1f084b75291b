import { useEffect, useId, useState } from 'react'
import { moveFeatures, setGeometry } from '#geo/plan/edits-features'
import type { Feature, Geometry } from '#geo/plan/plan'
import { bearing, distance } from '#geo/space/shape'
import { NumberField } from '../../parts/number-field'
import { setTool, setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { directionText } from '../../text/words'
import { Here } from '../beneath/here'
import { AlongRow } from '../ground/along-row'
import { PositionField } from '../ground/position-field'
import { geometryText, readGeometry, withLineEnd } from '../ground/typed-geometry'
import { positionHint, TypingChoice, useFrame } from '../ground/typing-choice'
import { useEdit, useHome } from '../hooks'

const lengthLimit = { low: 0, high: 20_000, isAbove: true } as const
const stepLimit = { low: -20_000, high: 20_000 } as const

/** Place and shape of a thing by typed figures: every drag on the map has its way here too. */
export function ShapeFields({ feature }: { readonly feature: Feature }) {
  const { geometry } = feature
  const edit = useEdit()
  return (
    <div className="stack">
      <TypingChoice />
      {geometry.type === 'Point' ? (
        <>
          <PositionField
            label="Position"
            value={geometry.coordinates}
            onCommit={coordinates => edit(setGeometry(feature.id, { type: 'Point', coordinates }))}
          />
          <Here onTake={coordinates => edit(setGeometry(feature.id, { type: 'Point', coordinates }))} />
          <AlongRow
            words="Put it there"
            onTake={coordinates => edit(setGeometry(feature.id, { type: 'Point', coordinates }))}
          />
        </>
      ) : (
        <Corners id={feature.id} geometry={geometry} />
      )}
      <LineFields feature={feature} />
      {geometry.type === 'Polygon' ? <CutHole /> : null}
      <MoveFields ids={[feature.id]} />
    </div>
  )
}

/** Takes in hand what draws a hole: a pond, a shed, a turning place. */
function CutHole() {
  const store = usePlannerStore()
  const isCutting = usePlanner(state => state.view.tool === 'hole')
  return (
    <div>
      <button
        type="button"
        aria-pressed={isCutting}
        onClick={() => {
          setTool(store, isCutting ? 'select' : 'hole')
          // On a phone drawing wants the map.
          if (!isCutting) setView(store, { sheet: 'third' })
        }}
      >
        Draw a hole in it
      </button>
    </div>
  )
}

/** Length and bearing of a straight line; its start stays where it is. */
function LineFields({ feature }: { readonly feature: Feature }) {
  const { geometry } = feature
  const edit = useEdit()
  const home = useHome()
  if (geometry.type !== 'LineString') return null
  const [start, end, ...more] = geometry.coordinates.map(home.toMetres)
  if (start === undefined || end === undefined || more.length > 0) return null
  const change = (part: { length?: number; bearing?: number }) => {
    const coordinates = withLineEnd([start, end], part).map(at => home.toLngLat(at))
    edit(setGeometry(feature.id, { type: 'LineString', coordinates }))
  }
  const towards = Math.round(bearing(start, end) * 100) / 100
  return (
    <div className="fields">
      <NumberField
        label="Length"
        quantity="length"
        value={Math.round(distance(start, end) * 100) / 100}
        limit={lengthLimit}
        isRequired
        onCommit={length => length !== null && change({ length })}
      />
      <NumberField
        label="Bearing"
        quantity="degrees"
        value={towards}
        limit={{ low: -360, high: 360 }}
        isRequired
        onCommit={next => next !== null && change({ bearing: next })}
        note={directionText(towards)}
      />
    </div>
  )
}

function Corners({ id, geometry }: { readonly id: string; readonly geometry: Geometry }) {
  const edit = useEdit()
  const frame = useFrame()
  const field = useId()
  const shown = geometryText(geometry, frame)
  const [text, setText] = useState(shown)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    setText(shown)
    setFault(null)
  }, [shown])
  const apply = () => {
    const read = readGeometry(text, geometry.type, frame)
    if (!read.ok) return setFault(read.why)
    setFault(null)
    edit(setGeometry(id, read.value))
  }
  const isChanged = text !== shown
  const words = geometry.type === 'MultiPoint' ? 'Positions' : 'Corners'
  return (
    <div className="field">
      <label htmlFor={field}>
        {words}, one a line: {positionHint(frame)}
        {geometry.type === 'Polygon' ? '; an empty line before a hole' : ''}
      </label>
      <textarea
        id={field}
        rows={Math.min(8, shown.split('\n').length + 1)}
        value={text}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : `${field}-fault`}
        onChange={event => setText(event.target.value)}
      />
      {fault === null ? null : (
        <p className="field-fault" id={`${field}-fault`} role="alert">
          {fault}
        </p>
      )}
      {isChanged ? (
        <div className="actions">
          <button type="button" onClick={apply}>
            Use these {words.toLowerCase()}
          </button>
          <button type="button" className="quiet" onClick={() => setText(shown)}>
            As before
          </button>
        </div>
      ) : null}
    </div>
  )
}

/** Moves things by a step east and north. */
export function MoveFields({ ids }: { readonly ids: readonly string[] }) {
  const edit = useEdit()
  const home = useHome()
  const [east, setEast] = useState<number | null>(null)
  const [north, setNorth] = useState<number | null>(null)
  const move = () => {
    const [lng, lat] = home.toLngLat({ x: east ?? 0, y: north ?? 0 })
    edit(moveFeatures(ids, { lng: lng - home.centre[0], lat: lat - home.centre[1] }))
  }
  return (
    <fieldset className="stack">
      <legend>Move by</legend>
      <div className="fields">
        <NumberField label="East (− west)" quantity="length" value={east} limit={stepLimit} onCommit={setEast} />
        <NumberField label="North (− south)" quantity="length" value={north} limit={stepLimit} onCommit={setNorth} />
      </div>
      <div>
        <button type="button" disabled={(east ?? 0) === 0 && (north ?? 0) === 0} onClick={move}>
          Move
        </button>
      </div>
    </fieldset>
  )
}
