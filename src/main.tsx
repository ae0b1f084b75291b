import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app'
import { hereServices } from './here-services'
import { DrawBar } from './map/draw-bar'
import { createMapLink } from './map/map-link'
import { MapView } from './map/map-view'
import { ServicesProvider } from './panels/services'
import { createPlannerStore } from './state/store'
import { PlannerProvider } from './state/use-planner'
import { startAutosave } from './storage/autosave'
import { keepForOffline } from './storage/offline'
import { keepPreferences } from './storage/preferences'
import { keepPrices } from './storage/prices'
import { reopenLastPlan } from './storage/reopen'
import { createEngine } from './worker/engine'
import { startFound } from './worker/found-engine'
import { makeWorker } from './worker/make-worker'
import { dragStation, endDrag, startSchedule } from './worker/schedule'
import { createSitingEngine } from './worker/siting-engine'
import { startSiting } from './worker/siting-schedule'
import { createTimingEngine } from './worker/timing-engine'
import { startTiming } from './worker/timing-schedule'
import { createYearsEngine } from './worker/years-engine'
import { startYears } from './worker/years-schedule'
import './app.css'
import './parts/parts.css'
import './panels/frame/frame.css'

const store = createPlannerStore()
keepPreferences(store)
keepPrices(store)
startSchedule(store, createEngine(store, makeWorker))
startSiting(store, createSitingEngine(store, makeWorker))
startFound(store, makeWorker)
startTiming(store, createTimingEngine(store, makeWorker))
startYears(store, createYearsEngine(store, makeWorker))

const link = createMapLink(store, {
  onStationDrag: (id, at) => dragStation(store, id, at),
  onStationDragEnd: () => endDrag(store),
})

const root = document.getElementById('root')
if (root === null) throw new TypeError('the page has no element with the id root')

// The plan of the last visit before the first paint of the frame, so that the first screen does not flash by.
await reopenLastPlan(store)
startAutosave(store)

createRoot(root).render(
  <StrictMode>
    <PlannerProvider store={store}>
      <ServicesProvider value={hereServices()}>
        <App map={<MapView link={link} />} drawBar={<DrawBar hand={link.hand} />} />
      </ServicesProvider>
    </PlannerProvider>
  </StrictMode>,
)

void keepForOffline()
