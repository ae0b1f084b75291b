import { createContext, useContext } from 'react'
import type { Units } from '#geo/plan/plan'

const UnitsContext = createContext<Units>('metric')

/** Sets the units that fields and figures below are shown in. */
export const UnitsProvider = UnitsContext.Provider

export function useUnits(): Units {
  return useContext(UnitsContext)
}
