import { notify } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'

/** One line that says what just happened; it stays until it is read and put away, or the next one comes. */
export function Notice() {
  const store = usePlannerStore()
  const notice = usePlanner(state => state.view.notice)
  return (
    <div role="status" aria-live="polite">
      {notice === null ? null : (
        <div className="notice">
          <p>{notice}</p>
          <button type="button" onClick={() => notify(store, null)}>
            Put away
          </button>
        </div>
      )}
    </div>
  )
}
