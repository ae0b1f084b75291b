import { explain } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { ProblemsView } from '../problems-view'
import { SettingsView } from '../settings/settings-view'
import { useShell } from '../shell'
import { WorkingView } from '../working/working-view'
import { BringArea, usePasting } from './bring-area'
import { Side } from './side'

/** The side view beside the map (on a phone over it): the working of a figure, the problems or the settings; below it what is being brought in. */
export function SideArea() {
  const working = usePlanner(state => state.view.working)
  const planId = usePlanner(state => state.document.planId)
  const { side, bringing } = useShell()
  usePasting()
  const isCovered = working !== null || side !== null
  return (
    <>
      {bringing === null ? null : <BringArea key={planId} bringing={bringing} isCovered={isCovered} />}
      <SideView />
    </>
  )
}

function SideView() {
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
