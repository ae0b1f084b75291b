import { useEffect } from 'react'
import { notify } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'

/** Milliseconds that a notice stays; what it tells can be seen in the plan as well. */
const stay = 8000

/** One line that says what just happened. It goes by itself, later than anybody needs to read it, or when put away. */
export function Notice() {
  const store = usePlannerStore()
  const notice = usePlanner(state => state.view.notice)
  useEffect(() => {
    if (notice === null) return
    const timer = setTimeout(() => notify(store, null), stay)
    return () => clearTimeout(timer)
  }, [store, notice])
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
