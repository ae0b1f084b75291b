import { useState } from 'react'
import { setPlanMembers } from '#geo/plan/edits-settings'
import { useEdit, usePlan } from '../hooks'
import { MainMenu } from './main-menu'
import { SavedState } from './saved-state'
import { SeasonChooser } from './season-chooser'
import { UndoButtons } from './undo-buttons'

/** One row: the plan's name, its season, the way back, what is saved, and everything else in one menu. */
export function Header() {
  return (
    <header className="header">
      <PlanName />
      <SeasonChooser />
      <UndoButtons />
      <SavedState />
      <MainMenu />
    </header>
  )
}

function PlanName() {
  const { name } = usePlan()
  const edit = useEdit()
  const [draft, setDraft] = useState<string | null>(null)
  const commit = () => {
    const text = draft?.trim() ?? ''
    if (text !== '' && text !== name) edit(setPlanMembers({ name: text }))
    setDraft(null)
  }
  return (
    <h1 className="plan-name">
      <input
        type="text"
        aria-label="Name of the plan"
        value={draft ?? name}
        onChange={event => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={event => {
          if (event.key === 'Enter') event.currentTarget.blur()
          if (event.key === 'Escape') setDraft(null)
        }}
      />
    </h1>
  )
}
