import { lazy, Suspense } from 'react'
import { type CautionKey, cautions } from '#geo/wording/cautions'
import { Dialog } from '../../parts/dialog'
import { ErrorBoundary } from '../../parts/error-boundary'
import { useUnits } from '../../parts/units-context'
import { cautionIn } from '../../text/cautions'
import { WorkDialog } from '../calendar/work-dialog'
import { PlansDialog, RestoreDialog } from '../first/plans-dialogs'
import { useShell } from '../shell'
import { SeasonSheet } from '../strip/season-sheet'
import { About } from '../texts/about'
import { GroundDialog } from './ground-dialog'
import { PlanDialog } from './plan-dialog'
import { SeasonDialog } from './season-dialog'

// Read when it is asked for: its writers are wanted seldom.
const SaveOther = lazy(async () => ({ default: (await import('../elsewhere/save-other')).SaveOther }))

/** The dialog that is asked for, if any. */
export function Dialogs() {
  const { dialog, showDialog } = useShell()
  const close = () => showDialog(null)
  switch (dialog) {
    case null:
      return null
    case 'plans':
      return <PlansDialog onClose={close} />
    case 'restore':
      return <RestoreDialog onClose={close} />
    case 'season':
      return <SeasonDialog onClose={close} />
    case 'ground':
      return <GroundDialog onClose={close} />
    case 'days':
      return <SeasonSheet onClose={close} />
    case 'details':
      return <PlanDialog onClose={close} />
    case 'work':
      return <WorkDialog onClose={close} />
    case 'save-other':
      return (
        <ErrorBoundary what="Saving for other programs">
          <Suspense fallback={null}>
            <SaveOther onClose={close} />
          </Suspense>
        </ErrorBoundary>
      )
    case 'about':
      return (
        <Dialog title="How it works" onClose={close}>
          <About />
        </Dialog>
      )
    case 'cautions':
      return (
        <Dialog title="Cautions" onClose={close}>
          <AllCautions />
        </Dialog>
      )
    default:
      return dialog satisfies never
  }
}

function AllCautions() {
  const units = useUnits()
  return (Object.keys(cautions) as CautionKey[]).map(key => {
    const { title, short, long } = cautionIn(key, units)
    return (
      <section className="stack prose" key={key}>
        <h3>{title}</h3>
        <p>{short}</p>
        <p>{long}</p>
      </section>
    )
  })
}
