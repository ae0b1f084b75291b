import { useMemo, useState } from 'react'
import { compose } from '#geo/plan/edits'
import { setReleases, setStationSeason } from '#geo/plan/edits-seasons'
import { releaseLimits, stationLimits } from '#geo/plan/limits'
import type { Station, StationSeason } from '#geo/plan/plan'
import type { IsoDate } from '#geo/time/day'
import { DateField } from '../../parts/date-field'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { notify } from '../../state/actions'
import { stationSeasonOf } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { springDay } from '../../text/home'
import { counted } from '../../text/words'
import { bestReleaseAt } from '../bloom/best-release'
import { useEdit, usePlan, useYear } from '../hooks'
import { fieldLimit } from './feature-fields'

const figures = [
  { name: 'tubes', label: 'Tubes, each', quantity: 'plain' },
  { name: 'bore', label: 'Bore', quantity: 'bore' },
  { name: 'depth', label: 'Depth', quantity: 'bore' },
] as const

type Use = { readonly id: string; readonly use: StationSeason }

/** Tubes and batches of a season at several stations, set up together: only what is typed changes, each in one step. */
export function ManyStations({ stations }: { readonly stations: readonly Station[] }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const used = stations.flatMap(({ id }): readonly Use[] => {
    const use = stationSeasonOf(plan, year, id)
    return use === undefined ? [] : [{ id, use }]
  })
  const others = stations.filter(({ id }) => stationSeasonOf(plan, year, id) === undefined)
  const take = () =>
    edit(
      compose(
        `Take ${counted(others.length, 'station')} into use`,
        others.map(({ id }) => setStationSeason(year, id, {})),
      ),
    )
  return (
    <section className="stack" aria-label={`Stations in ${year}`}>
      <h3>In {year}</h3>
      {others.length === 0 ? null : (
        <div className="stack">
          <p className="field-note">
            {used.length === 0
              ? 'None of them is in use.'
              : `${counted(others.length, 'of them is', 'of them are')} not in use.`}
          </p>
          <div>
            <button type="button" onClick={take}>
              Take {others.length === 1 ? 'it' : `all ${others.length}`} into use
            </button>
          </div>
        </div>
      )}
      {used.length === 0 ? null : (
        <>
          <UseOfAll used={used} />
          <Disclosure summary="Set cocoons out at each">
            <BatchForAll stations={stations.filter(({ id }) => used.some(each => each.id === id))} />
          </Disclosure>
        </>
      )}
    </section>
  )
}

function UseOfAll({ used }: { readonly used: readonly Use[] }) {
  const year = useYear()
  const edit = useEdit()
  const set = (words: string, patch: { readonly [K in keyof StationSeason]?: StationSeason[K] | undefined }) =>
    edit(
      compose(
        `Change ${words} of ${counted(used.length, 'station')}`,
        used.map(({ id }) => setStationSeason(year, id, patch)),
      ),
    )
  const material = sameOf(used, 'material')
  return (
    <div className="fields">
      {figures.map(({ name, label, quantity }) => {
        const { value, isSame } = sameOf(used, name)
        return (
          <NumberField
            key={name}
            label={label}
            quantity={quantity}
            value={typeof value === 'number' ? value : null}
            limit={fieldLimit(stationLimits[name])}
            note={isSame ? '' : 'Several values now; one typed here is for all.'}
            onCommit={next => set(name, { [name]: next ?? undefined })}
          />
        )
      })}
      <TextField
        label="Tubes of"
        value={typeof material.value === 'string' ? material.value : ''}
        placeholder={material.isSame ? 'paper, reed, wood tray' : 'several'}
        onCommit={next => set('tube material', { material: next === '' ? undefined : next })}
      />
    </div>
  )
}

function sameOf(used: readonly Use[], name: 'tubes' | 'bore' | 'depth' | 'material') {
  const values = new Set(used.map(({ use }) => use[name]))
  return { value: values.size === 1 ? [...values][0] : undefined, isSame: values.size === 1 }
}

/** One batch, typed once and set out at every station, beside the batches there or instead of them. */
function BatchForAll({ stations }: { readonly stations: readonly Station[] }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const [date, setDate] = useState<IsoDate | null>(null)
  const [females, setFemales] = useState<number | null>(null)
  const [males, setMales] = useState<number | null>(null)
  const first = stations[0]!
  // It looks at every planting: not again for each figure that is typed.
  const best = useMemo(() => bestReleaseAt(plan, year, first), [plan, year, first])
  const day = date ?? best?.date ?? springDay(plan, year)
  const before = (id: string) => stationSeasonOf(plan, year, id)?.releases ?? []
  const hasBatches = stations.some(({ id }) => before(id).length > 0)
  const put = (isInstead: boolean) => {
    if (females === null) return
    const batch = { date: day, females, ...(males === null ? {} : { males }) }
    const where = counted(stations.length, 'station')
    edit(
      compose(
        `${isInstead ? 'Replace batches' : 'Add a batch'} at ${where}`,
        stations.map(({ id }) => setReleases(year, id, isInstead ? [batch] : [...before(id), batch])),
      ),
    )
    setFemales(null)
    setMales(null)
    notify(store, `${counted(females, 'female cocoon')} set out at each of ${where}. One press of Undo takes it back.`)
  }
  return (
    <div className="stack">
      <div className="fields">
        <DateField label="Set out on" value={day} year={year} onCommit={setDate} />
        <NumberField
          label="Female cocoons, each"
          value={females}
          limit={fieldLimit(releaseLimits.females)}
          isLive
          onCommit={setFemales}
        />
        <NumberField
          label="Male cocoons, each"
          value={males}
          limit={fieldLimit(releaseLimits.males)}
          note="Left empty, the usual number for each female."
          onCommit={setMales}
        />
      </div>
      <div className="actions">
        <button type="button" disabled={females === null} onClick={() => put(false)}>
          {hasBatches ? 'Add this batch at each' : 'Set it out at each'}
        </button>
        {hasBatches ? (
          <button type="button" disabled={females === null} onClick={() => put(true)}>
            Instead of their batches
          </button>
        ) : null}
      </div>
    </div>
  )
}
