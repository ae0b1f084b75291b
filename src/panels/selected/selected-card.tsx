import { duplicateFeatures, removeFeatures } from '#geo/plan/edits-features'
import { type Block, type Feature, isForage, isPlanting, isStation, type Row, type Station } from '#geo/plan/plan'
import { listed } from '#geo/wording/plain'
import { Disclosure } from '../../parts/disclosure'
import { notify, select, setPage } from '../../state/actions'
import { newIds } from '../../state/new-id'
import { selectedFeatures, stationSeasonOf } from '../../state/selectors'
import type { Page } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { kindNames } from '../../text/names'
import { capitalised, counted } from '../../text/words'
import { OwnBloom } from '../bloom/own-bloom'
import { StationUse, summaryOfUse } from '../bloom/station-use'
import { PlantingResultCard } from '../coverage/planting-result'
import { StationResultCard } from '../coverage/station-result'
import { useEdit, useHome, usePlan, useYear } from '../hooks'
import { detailsOf, titleOf } from '../titles'
import { FeatureFields } from './feature-fields'
import { ManyFields } from './many-fields'
import { BlockWork, RowWork } from './row-work'
import { RowsWork } from './rows-work'
import { MoveFields, ShapeFields } from './shape-fields'
import './selected.css'

/** What is selected, at the top of every page: what it is, and what this page has to say about it. */
export function SelectedCard({ page }: { readonly page: Page }) {
  const features = usePlanner(selectedFeatures)
  const [feature, ...more] = features
  // The page Years shows what is selected in the place where it is written down.
  if (feature === undefined || page === 'years') return null
  if (more.length > 0) return <ManyCard features={features} />
  return <OneCard feature={feature} page={page} key={feature.id} />
}

type CardPage = Exclude<Page, 'years'>

function OneCard({ feature, page }: { readonly feature: Feature; readonly page: CardPage }) {
  const plan = usePlan()
  const store = usePlannerStore()
  const title = titleOf(feature)
  return (
    <section className="card" aria-label={`Selected: ${title}`}>
      <div className="card-head">
        <div>
          <h2>{title}</h2>
          <p className="aside-note">
            {[capitalised(kindNames[feature.properties.kind].one), detailsOf(plan, feature)].filter(Boolean).join(': ')}
          </p>
        </div>
        <button type="button" className="quiet" onClick={() => select(store, [])}>
          Deselect
        </button>
      </div>
      <CardBody feature={feature} page={page} />
    </section>
  )
}

function CardBody({ feature, page }: { readonly feature: Feature; readonly page: CardPage }) {
  switch (page) {
    case 'ground':
      return (
        <>
          {isPlanting(feature) ? <PlantingResultCard id={feature.id} isShort /> : null}
          <FeatureFields feature={feature} />
          {isStation(feature) ? <SeasonLine station={feature} /> : null}
          {feature.properties.kind === 'row' ? <RowWork row={feature as Row} /> : null}
          {feature.properties.kind === 'block' ? <BlockWork block={feature as Block} /> : null}
          <Disclosure summary="Place and shape">
            <ShapeFields feature={feature} />
          </Disclosure>
          <CardActions ids={[feature.id]} />
        </>
      )
    case 'bloom':
      if (isStation(feature)) return <StationUse station={feature} isOpen />
      if (isPlanting(feature) || isForage(feature)) return <OwnBloom feature={feature} />
      return <p className="aside-note">Nothing blooms or flies here.</p>
    case 'coverage':
    case 'boxes':
      if (isPlanting(feature)) return <PlantingResultCard id={feature.id} />
      if (isStation(feature)) return <StationResultCard id={feature.id} />
      return <p className="aside-note">It asks for no bees, so it has no coverage of its own.</p>
    default:
      return page satisfies never
  }
}

/** What a station holds this season, and the way to where that is changed. */
function SeasonLine({ station }: { readonly station: Station }) {
  const plan = usePlan()
  const year = useYear()
  const store = usePlannerStore()
  const use = stationSeasonOf(plan, year, station.id)
  return (
    <p>
      In {year}: {use === undefined ? 'not in use.' : `${summaryOfUse(use)}.`}{' '}
      <button type="button" className="link" onClick={() => setPage(store, 'bloom')}>
        {use === undefined ? 'Take it into use' : 'Change tubes and cocoons'} under Bloom and flight
      </button>
    </p>
  )
}

function ManyCard({ features }: { readonly features: readonly Feature[] }) {
  const store = usePlannerStore()
  const ids = features.map(({ id }) => id)
  const kinds = [...new Set(features.map(({ properties }) => properties.kind))]
  const sums = kinds.map(kind => {
    const count = features.filter(({ properties }) => properties.kind === kind).length
    return counted(count, kindNames[kind].one, kindNames[kind].many)
  })
  return (
    <section className="card" aria-label="Selected things">
      <div className="card-head">
        <div>
          <h2>{counted(features.length, 'thing')} selected</h2>
          <p className="aside-note">{capitalised(listed(sums))}</p>
        </div>
        <button type="button" className="quiet" onClick={() => select(store, [])}>
          Deselect
        </button>
      </div>
      <Disclosure summary="Change them all" isOpen>
        <ManyFields features={features} />
      </Disclosure>
      <RowsWork features={features} />
      <Disclosure summary="Move them">
        <MoveFields ids={ids} />
      </Disclosure>
      <CardActions ids={ids} />
    </section>
  )
}

/** How far a copy lies from its original, so that both can be seen; metres east and south. */
const copyStep = 5

function CardActions({ ids }: { readonly ids: readonly string[] }) {
  const store = usePlannerStore()
  const edit = useEdit()
  const plan = usePlan()
  const home = useHome()
  const year = useYear()
  const duplicate = () => {
    const { plan } = store.getState().document
    if (plan === null) return
    const before = new Set(plan.features.map(({ id }) => id))
    const [lng, lat] = home.toLngLat({ x: copyStep, y: -copyStep })
    edit(duplicateFeatures(ids, newIds(plan), { lng: lng - home.centre[0], lat: lat - home.centre[1] }, year))
    const after = store.getState().document.plan?.features ?? []
    select(
      store,
      after.map(({ id }) => id).filter(id => !before.has(id)),
    )
  }
  const picked = new Set(ids)
  const doesCarry = plan.features.some(
    each => isStation(each) && picked.has(each.id) && stationSeasonOf(plan, year, each.id) !== undefined,
  )
  const remove = () => {
    edit(removeFeatures(ids))
    notify(store, `${counted(ids.length, 'thing')} deleted. Undo brings ${ids.length === 1 ? 'it' : 'them'} back.`)
  }
  return (
    <>
      <div className="actions">
        <button type="button" onClick={duplicate}>
          Duplicate
        </button>
        <button type="button" onClick={remove}>
          Delete
        </button>
      </div>
      {doesCarry ? (
        <p className="field-note">A duplicate gets the same tubes and batches, in {year} and later seasons.</p>
      ) : null}
    </>
  )
}
