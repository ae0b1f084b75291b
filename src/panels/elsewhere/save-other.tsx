import { planTable } from '#geo/file/csv-tables'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import type { Plan } from '#geo/plan/plan'
import { Dialog } from '../../parts/dialog'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { usePlan } from '../hooks'
import { type Services, useServices } from '../services'
import { reasonOf } from '../use-loaded'
import './save-other.css'

type Way = {
  readonly name: string
  readonly what: string
  save(services: Services, plan: Plan): Promise<string | null>
}

const ways: readonly Way[] = [
  {
    name: 'GPX',
    what: 'For a handheld device or phone: stations as waypoints that it can find.',
    save: ({ saveOther }, plan) => saveOther(plan.name, 'gpx', gpxText(plan)),
  },
  {
    name: 'KML',
    what: 'For globe and map viewers: everything drawn, by kind.',
    save: ({ saveOther }, plan) => saveOther(plan.name, 'kml', kmlText(plan)),
  },
  {
    name: 'GeoJSON',
    what: 'For mapping programs: everything drawn, with its properties. To go on planning, save the plan as a file.',
    save: ({ saveOther }, plan) => saveOther(plan.name, 'geojson', plainGeoJson(plan)),
  },
  {
    name: 'Table of plantings',
    what: 'CSV, one line for each row, block, plant and bed, with its plants and size, in metres.',
    save: ({ saveTable }, plan) => saveTable(`${plan.name} plantings`, planTable(plan, 'plantings')),
  },
  {
    name: 'Table of stations',
    what: 'CSV, one line for each station, with its tubes and cocoons in the latest season.',
    save: ({ saveTable }, plan) => saveTable(`${plan.name} stations`, planTable(plan, 'stations')),
  },
  {
    name: 'Table of plants',
    what: 'CSV, one line for each plant, with its place.',
    save: ({ saveTable }, plan) => saveTable(`${plan.name} plants`, planTable(plan, 'plants')),
  },
  {
    name: 'Picture of the map',
    what: 'PNG of the part in sight, on the metre grid; without map tiles and without images laid beneath.',
    save: ({ saveMapPicture }, plan) => saveMapPicture(`${plan.name} map`),
  },
]

/** The plan, or a part of it, in forms that other programs read. */
export function SaveOther({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const services = useServices()
  const save = async ({ name, save }: Way) => {
    try {
      const words = await save(services, plan)
      if (words === null) return
      notify(store, words)
    } catch (error) {
      notify(store, `${name}: nothing was saved, ${reasonOf(error)}`)
    }
    onClose()
  }
  return (
    <Dialog title="Save for other programs" onClose={onClose}>
      <div className="stack">
        <p>
          These say what stands where. Bloom, releases and what was counted stay in the plan’s own file. Any of them may
          show where people live and grow things: share with care.
        </p>
        <ul className="plain-list other-ways">
          {ways.map(way => (
            <li key={way.name}>
              <button type="button" onClick={() => save(way)}>
                {way.name}
              </button>
              <p>{way.what}</p>
            </li>
          ))}
        </ul>
      </div>
    </Dialog>
  )
}
