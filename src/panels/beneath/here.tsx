import { useEffect, useState } from 'react'
import type { LngLat } from '#geo/space/plane'
import { type Fix, standingOf } from '#geo/space/standing'
import { setView } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { placeText } from '../../text/read-place'
import { lengthText } from '../../text/units'
import { counted } from '../../text/words'
import { usePlan } from '../hooks'
import { useServices } from '../services'

/** Two minutes of readings, one a second. */
const mostFixes = 120

/** The device's own position, as the mean of its readings while it is held still; the map shows it with its ring. */
export function Here({ onTake }: { readonly onTake: (at: LngLat) => void }) {
  const store = usePlannerStore()
  const { units } = usePlan()
  const { watchPosition } = useServices()
  const [isOn, setOn] = useState(false)
  const [fixes, setFixes] = useState<readonly Fix[]>([])
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    if (!isOn) return
    const onFault = (reason: string) => {
      setFault(reason)
      setOn(false)
    }
    const stop = watchPosition(fix => setFixes(before => [...before, fix].slice(-mostFixes)), onFault)
    return () => {
      stop()
      setFixes([])
      setView(store, { device: null })
    }
  }, [isOn, watchPosition, store])
  const standing = standingOf(fixes)
  useEffect(() => {
    const now = standingOf(fixes)
    if (now !== null) setView(store, { device: { at: now.at, radius: now.radius } })
  }, [fixes, store])
  if (!isOn) {
    return (
      <div className="stack">
        <div>
          <button
            type="button"
            className="quiet"
            onClick={() => {
              setFault(null)
              setOn(true)
            }}
          >
            Where this device is
          </button>
        </div>
        {fault === null ? null : (
          <p className="field-fault" role="alert">
            {fault}
          </p>
        )}
      </div>
    )
  }
  return (
    <div className="stack">
      <p className="field-note" role="status">
        {standing === null
          ? 'Looking for the position…'
          : `${placeText(standing.at)}, good to about ${lengthText(standing.radius, units)} by ${counted(standing.readings, 'reading')}. Stand still, and it settles; what all readings are off by alike does not show.`}
      </p>
      <div className="actions">
        <button
          type="button"
          disabled={standing === null}
          onClick={() => {
            if (standing === null) return
            onTake(standing.at)
            setOn(false)
          }}
        >
          Use this place
        </button>
        <button type="button" className="quiet" onClick={() => setOn(false)}>
          Stop looking
        </button>
      </div>
    </div>
  )
}
