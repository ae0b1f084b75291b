import { type ReactNode, useLayoutEffect, useMemo, useState } from 'react'
import { usePaneKeys } from './map/use-pane-keys'
import { FirstScreen } from './panels/first/first-screen'
import { Dialogs } from './panels/frame/dialogs'
import { Header } from './panels/frame/header'
import { Notice } from './panels/frame/notice'
import { SideArea } from './panels/frame/side-area'
import { WorkPanel } from './panels/frame/work-panel'
import { TypingProvider } from './panels/ground/typing-choice'
import { type Bringing, type DialogName, type Shell, ShellProvider, type SideView } from './panels/shell'
import { SeasonStrip } from './panels/strip/season-strip'
import { ErrorBoundary } from './parts/error-boundary'
import { UnitsProvider } from './parts/units-context'
import { explain } from './state/actions'
import { usePlanner, usePlannerStore } from './state/use-planner'

type Props = {
  /** The map, and the drawing tools at its edge; made outside, so that the frame stands without a map library. */
  readonly map: ReactNode
  readonly drawBar: ReactNode
}

/** The frame of the page: the first screen, or header, panel, map and season strip of the open plan. */
export function App({ map, drawBar }: Props) {
  const isOpen = usePlanner(state => state.document.plan !== null)
  useTheme()
  return (
    <>
      {isOpen ? <Planner map={map} drawBar={drawBar} /> : <FirstScreen />}
      <Notice />
    </>
  )
}

function Planner({ map, drawBar }: Props) {
  usePaneKeys()
  const units = usePlanner(state => state.document.plan?.units ?? 'metric')
  return (
    <UnitsProvider value={units}>
      <TypingProvider>
        <ShellProvider value={useShellState()}>
          <div className="frame">
            <ErrorBoundary what="The header">
              <Header />
            </ErrorBoundary>
            <ErrorBoundary what="The work panel">
              <WorkPanel />
            </ErrorBoundary>
            <main className="map-area" aria-label="Map">
              <div className="map-host">{map}</div>
            </main>
            <section className="draw-area" aria-label="Drawing">
              {drawBar}
            </section>
            <ErrorBoundary what="The season strip">
              <SeasonStrip />
            </ErrorBoundary>
            <ErrorBoundary what="The side view">
              <SideArea />
            </ErrorBoundary>
          </div>
          <Dialogs />
        </ShellProvider>
      </TypingProvider>
    </UnitsProvider>
  )
}

/** Which side view and dialog are open: no part of the plan, and gone with it. */
function useShellState(): Shell {
  const store = usePlannerStore()
  const [side, setSide] = useState<SideView | null>(null)
  const [dialog, setDialog] = useState<DialogName | null>(null)
  const [bringing, setBringing] = useState<Bringing | null>(null)
  return useMemo(
    () => ({
      side,
      dialog,
      bringing,
      showSide(next) {
        explain(store, null)
        setSide(next)
      },
      showDialog: setDialog,
      bringIn(next) {
        explain(store, null)
        setSide(null)
        setBringing(next)
      },
    }),
    [store, side, dialog, bringing],
  )
}

function useTheme(): void {
  const theme = usePlanner(state => state.view.theme)
  // Before the effects of what is inside: the map reads its colours from the page when it is made.
  useLayoutEffect(() => {
    document.documentElement.dataset.theme = theme
  }, [theme])
}
