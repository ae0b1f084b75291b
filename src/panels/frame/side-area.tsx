import { type ReactNode, useEffect, useId, useRef } from 'react'
import { ErrorBoundary } from '../../parts/error-boundary'
import { explain } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { ProblemsView } from '../problems-view'
import { SettingsView } from '../settings/settings-view'
import { useShell } from '../shell'
import { WorkingView } from '../working/working-view'

/** The side view beside the map (on a phone over it): the working of a figure, the problems or the settings. */
export function SideArea() {
  const store = usePlannerStore()
  const working = usePlanner(state => state.view.working)
  const { side, showSide } = useShell()
  if (working !== null) {
    return (
      <Side
        title="How was this worked out?"
        key={`${working.figure} ${working.id}`}
        onClose={() => explain(store, null)}
      >
        <WorkingView topic={working} />
      </Side>
    )
  }
  switch (side) {
    case null:
      return null
    case 'problems':
      return (
        <Side title="Problems" key="problems" onClose={() => showSide(null)}>
          <ProblemsView />
        </Side>
      )
    case 'settings':
      return (
        <Side title="Figures and own crops" key="settings" onClose={() => showSide(null)}>
          <SettingsView />
        </Side>
      )
    default:
      return side satisfies never
  }
}

function Side(props: { readonly title: string; readonly onClose: () => void; readonly children: ReactNode }) {
  const { title, onClose, children } = props
  const id = useId()
  const heading = useRef<HTMLHeadingElement>(null)
  // Whoever asked for it is led there, and back to where they were when it goes.
  useEffect(() => {
    const before = document.activeElement
    heading.current?.focus()
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    <section
      className="aside"
      aria-labelledby={id}
      onKeyDown={event => {
        if (event.key === 'Escape') onClose()
      }}
    >
      <div className="aside-head">
        <h2 id={id} ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <button type="button" className="quiet" onClick={onClose}>
          Close
        </button>
      </div>
      <div className="aside-body">
        <ErrorBoundary what={title}>{children}</ErrorBoundary>
      </div>
    </section>
  )
}
