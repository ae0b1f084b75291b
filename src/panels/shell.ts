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

/** What is being brought in: what was pasted, or null where a file is to be chosen first. */
export type Bringing = { readonly pasted: string | File | null }

export type Shell = {
  readonly side: SideView | null
  readonly dialog: DialogName | null
  readonly bringing: Bringing | null
  showSide(side: SideView | null): void
  showDialog(dialog: DialogName | null): void
  /** Opens the way in for things of other programs; null closes it. */
  bringIn(bringing: Bringing | null): void
}

const ShellContext = createContext<Shell | null>(null)

export const ShellProvider = ShellContext.Provider

export function useShell(): Shell {
  const shell = use(ShellContext)
  if (shell === null) throw new TypeError('useShell needs a ShellProvider above it')
  return shell
}
