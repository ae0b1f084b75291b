import { useState } from 'react'
import type { Plan } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { counted } from '../../text/words'
import { usePlan, useSelect } from '../hooks'
import { PositionField } from './position-field'
import { TypingChoice } from './typing-choice'

/** Selects everything inside a box by its two corners: what the tool for it does on the map. */
export function SelectBox() {
  const plan = usePlan()
  const select = useSelect()
  const [from, setFrom] = useState<LngLat | null>(null)
  const [to, setTo] = useState<LngLat | null>(null)
  const [done, setDone] = useState('')
  const choose = () => {
    if (from === null || to === null) return
    const inside = idsInBox(plan, from, to)
    select(inside)
    setDone(inside.length === 0 ? 'Nothing lies wholly inside it.' : `${counted(inside.length, 'thing')} selected.`)
  }
  return (
    <div className="stack add-form">
      <TypingChoice />
      <div className="fields">
        <PositionField label="One corner" value={from} onCommit={setFrom} />
        <PositionField label="The corner across" value={to} onCommit={setTo} />
      </div>
      <div>
        <button type="button" disabled={from === null || to === null} onClick={choose}>
          Select what lies inside
        </button>
      </div>
      <p className="field-note" role="status">
        {done || 'On the map: take “Select by box” in hand, or hold Shift and pull a box over bare ground.'}
      </p>
    </div>
  )
}

/** Ids of the things that lie wholly between two corners of an upright box. */
function idsInBox(plan: Plan, [lngA, latA]: LngLat, [lngB, latB]: LngLat): readonly string[] {
  const [west, east] = [Math.min(lngA, lngB), Math.max(lngA, lngB)]
  const [south, north] = [Math.min(latA, latB), Math.max(latA, latB)]
  const isIn = (coordinates: unknown): boolean => {
    if (!Array.isArray(coordinates)) return false
    const [lng, lat] = coordinates
    if (typeof lng !== 'number' || typeof lat !== 'number') return coordinates.every(isIn)
    return lng >= west && lng <= east && lat >= south && lat <= north
  }
  return plan.features.filter(({ geometry }) => isIn(geometry.coordinates)).map(({ id }) => id)
}
