import { act, cleanup, render } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import type { ReactNode } from 'react'
import { afterEach, beforeEach } from 'vitest'
import { importSession } from '#geo/file/open-import'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { reportRanges } from '#geo/report/ranges'
import { App } from '../../../src/app'
import { type Services, ServicesProvider } from '../../../src/panels/services'
import { openPlan } from '../../../src/state/actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { PlannerProvider } from '../../../src/state/use-planner'

/** What jsdom lacks of dialogs: enough to show and close one. */
beforeEach(() => {
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
  HTMLDialogElement.prototype.close ??= function (this: HTMLDialogElement) {
    this.open = false
  }
})

afterEach(cleanup)

/** A disk and device that hold nothing; each test says what it wants of them. */
export function fakeServices(patch: Partial<Services> = {}): Services {
  return {
    timeZone: 'Europe/London',
    listPlans: async () => [],
    readKeptPlan: async () => ({ ok: false, problems: [] }),
    deletePlan: async () => {},
    listRestorePoints: async () => [],
    readRestorePoint: async () => ({ ok: false, problems: [] }),
    keepRestorePoint: async () => {},
    openFile: async () => null,
    saveFile: async () => null,
    saveTable: async () => null,
    saveCalendar: async () => null,
    saveOther: async () => null,
    saveMapPicture: async () => null,
    takePicture: async () => ({ id: 'picture-1', width: 2048, height: 1024, from: { width: 4096, height: 2048 } }),
    pictureUrl: async () => 'blob:picture',
    importReader: () => {
      const session = importSession()
      return {
        open: async (...input) => session.open(...input),
        rewrite: async (...input) => session.rewrite(...input),
        readTable: async (...input) => session.readTable(...input),
        shapes: async (...input) => session.shapes(...input),
        things: async (...input) => session.things(...input),
        stop: () => {},
      }
    },
    copyText: async () => {},
    listSamples: async () => [],
    today: () => '2026-05-20',
    watchPosition: () => () => {},
    locate: async () => ({ at: [-1.7, 52.2], accuracy: 12 }),
    ...patch,
  }
}

type Options = {
  readonly plan?: Plan
  readonly year?: number
  readonly services?: Partial<Services>
  /** What stands where the map is. */
  readonly map?: ReactNode
}

/** The whole page without a map: with a plan open, or at its first screen. */
export function renderApp({ plan, year = 2026, services, map = null }: Options = {}) {
  const store = createPlannerStore(year)
  if (plan) openPlan(store, plan, 'plan-1', year)
  const view = render(
    <PlannerProvider store={store}>
      <ServicesProvider value={fakeServices(services)}>
        <App map={map} drawBar={null} />
      </ServicesProvider>
    </PlannerProvider>,
  )
  return { store, user: userEvent.setup(), container: view.container, compute: () => compute(store) }
}

export function planOf(store: PlannerStore): Plan {
  const { plan } = store.getState().document
  if (plan === null) throw new TypeError('no plan is open')
  return plan
}

/** What the engine would answer, put into the store at once. */
function compute(store: PlannerStore): void {
  const { plan, revision } = store.getState().document
  if (plan === null) return
  const { year } = store.getState().view
  const outcome = evaluate(plan, year)
  if (!outcome.ok) throw new RangeError(`the plan cannot be computed: ${JSON.stringify(outcome.problems)}`)
  const value = { report: outcome.value, coverage: new Float32Array() }
  const ranges = reportRanges(plan, year)
  act(() =>
    store.setState(({ results }) => ({
      results: {
        ...results,
        report: { status: 'ready', value, revision },
        ranges: ranges === null ? { status: 'idle' } : { status: 'ready', value: ranges, revision },
      },
    })),
  )
}
