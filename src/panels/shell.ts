import { createContext, use } from 'react'

/** What can lie beside the map besides the working of a figure, or come before everything as a dialog. */
export type SideView = 'problems' | 'settings'
export type DialogName =
  | 'plans'
  | 'restore'
  | 'cautions'
  | 'about'
  | 'ground'
  | 'season'
  | 'days'
  | 'details'
  | 'work'
  | 'save-other'
  | 'bring-in'

export type Shell = {
  readonly side: SideView | null
  readonly dialog: DialogName | null
  showSide(side: SideView | null): void
  showDialog(dialog: DialogName | null): void
}

const ShellContext = createContext<Shell | null>(null)

export const ShellProvider = ShellContext.Provider

export function useShell(): Shell {
  const shell = use(ShellContext)
  if (shell === null) throw new TypeError('useShell needs a ShellProvider above it')
  return shell
}
