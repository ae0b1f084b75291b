import { usePlanner } from '../../state/use-planner'

/** What was saved, where and when. */
export function SavedState() {
  const { status, at, reason } = usePlanner(state => state.saving)
  if (status === 'idle') return null
  return (
    <p className={`saved-state saved-${status}`} role="status">
      {words(status, at, reason)}
    </p>
  )
}

function words(status: 'saving' | 'saved' | 'failed', at: string | null, reason: string): string {
  switch (status) {
    case 'saving':
      return 'Saving on this device'
    case 'saved':
      return at === null ? 'Saved on this device' : `Saved on this device at ${at}`
    case 'failed':
      return `Not saved on this device: ${reason} ${at === null ? '' : `Last saved at ${at}. `}Save the plan as a file.`
    default:
      return status satisfies never
  }
}
