import { createContext, type ReactNode, use, useId, useMemo, useState } from 'react'
import { measureOf } from '../../text/units'
import { useHome, usePlan } from '../hooks'
import type { Frame, Typing } from './typed-geometry'

type TypingState = { readonly typing: Typing; setTyping(typing: Typing): void }

const TypingContext = createContext<TypingState | null>(null)

/** Remembers how positions are typed, for all forms of the page. */
export function TypingProvider({ children }: { readonly children: ReactNode }) {
  const [typing, setTyping] = useState<Typing>('ground')
  const value = useMemo(() => ({ typing, setTyping }), [typing])
  return <TypingContext value={value}>{children}</TypingContext>
}

function useTyping(): TypingState {
  const state = use(TypingContext)
  if (state === null) throw new TypeError('positions can only be typed within a TypingProvider')
  return state
}

/** What typed positions mean at the moment. */
export function useFrame(): Frame {
  const home = useHome()
  const { units } = usePlan()
  const { typing } = useTyping()
  return useMemo(() => ({ home, typing, units }), [home, typing, units])
}

export function TypingChoice() {
  const { typing, setTyping } = useTyping()
  const { units } = usePlan()
  const name = useId()
  const { spoken } = measureOf('length', units)
  return (
    <fieldset>
      <legend>Positions in</legend>
      <div className="options">
        <label className="option">
          <input type="radio" name={name} checked={typing === 'ground'} onChange={() => setTyping('ground')} />
          {spoken} east, north
        </label>
        <label className="option">
          <input type="radio" name={name} checked={typing === 'degrees'} onChange={() => setTyping('degrees')} />
          degrees
        </label>
      </div>
      <p className="field-note">
        {typing === 'ground'
          ? `Counted from the middle of the grid: −12 is 12 ${spoken} west or south.`
          : 'Latitude, then longitude.'}
      </p>
    </fieldset>
  )
}

/** The words for what a position's two figures are. */
export function positionHint({ typing }: Frame): string {
  return typing === 'ground' ? 'east, north' : 'latitude, longitude'
}
