import { memo, useMemo, useState } from 'react'
import type { Feature, FeatureKind, Plan } from '#geo/plan/plan'
import { Disclosure } from '../../parts/disclosure'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { kindNames } from '../../text/names'
import { areaText } from '../../text/units'
import { capitalised, counted } from '../../text/words'
import { usePlan, useSelect } from '../hooks'
import { measured } from '../measures'
import { cropTitle, detailsOf, titleOf } from '../titles'
import { kindOrder } from './kind-order'
import { SelectBox } from './select-box'

/** More than this many things of a kind are shown on asking. */
const most = 60

/** Everything on the map as a list, by kind: the way to find and choose a thing without the map. */
export function GroundList() {
  const plan = usePlan()
  const [wanted, setWanted] = useState('')
  const found = useMemo(
    () => (wanted.trim() === '' ? plan.features : plan.features.filter(feature => matches(plan, feature, wanted))),
    [plan, wanted],
  )
  return (
    <div className="stack">
      {plan.features.length > 8 ? (
        <div className="field">
          <label htmlFor="find">Find by name, crop or kind</label>
          <input
            id="find"
            type="text"
            autoComplete="off"
            value={wanted}
            onChange={event => setWanted(event.target.value)}
          />
        </div>
      ) : null}
      {plan.features.length > 1 ? (
        <>
          <Chosen found={found} isFiltered={wanted.trim() !== ''} />
          <Disclosure summary="Select by a box" isLazy>
            <SelectBox />
          </Disclosure>
        </>
      ) : null}
      {found.length === 0 ? <p className="aside-note">Nothing is called that.</p> : null}
      {kindOrder.map(kind => {
        const features = found.filter(feature => feature.properties.kind === kind)
        return features.length === 0 ? null : <Kind key={kind} kind={kind} features={features} plan={plan} />
      })}
    </div>
  )
}

/** Selects all that was found, so that a crop or kind can be changed at once. */
function Chosen({ found, isFiltered }: { readonly found: readonly Feature[]; readonly isFiltered: boolean }) {
  const select = useSelect()
  return (
    <div className="actions">
      <button type="button" disabled={found.length === 0} onClick={() => select(found.map(({ id }) => id))}>
        Select {isFiltered ? counted(found.length, 'thing found', 'things found') : `all ${found.length}`}
      </button>
    </div>
  )
}

type KindProps = { readonly kind: FeatureKind; readonly features: readonly Feature[]; readonly plan: Plan }

function Kind({ kind, features, plan }: KindProps) {
  const [isAll, setAll] = useState(false)
  const selection = usePlanner(state => state.view.selection)
  const selected = useMemo(() => new Set(selection), [selection])
  const shown = isAll ? features : features.slice(0, most)
  const heading = features.length === 1 ? kindNames[kind].one : kindNames[kind].many
  return (
    <section className="kind" aria-label={capitalised(heading)}>
      <h2>
        {capitalised(heading)} <span className="kind-sum">{sumOf(plan, features)}</span>
      </h2>
      <ul className="plain-list">
        {shown.map(feature => (
          <Entry
            key={feature.id}
            feature={feature}
            details={detailsOf(plan, feature)}
            isSelected={selected.has(feature.id)}
          />
        ))}
      </ul>
      {shown.length < features.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show {features.length - shown.length} more {kindNames[kind].many}
        </button>
      ) : null}
    </section>
  )
}

type EntryProps = { readonly feature: Feature; readonly details: string; readonly isSelected: boolean }

const Entry = memo(function Entry({ feature, details, isSelected }: EntryProps) {
  const store = usePlannerStore()
  const select = useSelect()
  const toggle = () => {
    const { selection } = store.getState().view
    select(isSelected ? selection.filter(id => id !== feature.id) : [...selection, feature.id])
  }
  return (
    <li className="entry-line">
      <label className="entry-check">
        <input
          type="checkbox"
          checked={isSelected}
          aria-label={`${titleOf(feature)}, together with others`}
          onChange={toggle}
        />
      </label>
      <button
        type="button"
        className="entry"
        aria-pressed={isSelected}
        onClick={() => select(isSelected ? [] : [feature.id])}
      >
        <span className="entry-name">{titleOf(feature)}</span>{' '}
        {details ? <span className="entry-details">{details}</span> : null}
      </button>
    </li>
  )
})

function sumOf(plan: Plan, features: readonly Feature[]): string {
  let plants = 0
  let area = 0
  for (const feature of features) {
    const found = measured(plan, feature)
    plants += found.plants ?? 0
    area += found.area ?? 0
  }
  const parts = [
    counted(features.length, 'in all', 'in all'),
    plants > 0 ? counted(plants, 'plant') : '',
    area > 0 ? areaText(area, plan.units) : '',
  ]
  return parts.filter(Boolean).join(', ')
}

/** Whether each word that is wanted begins a word of the thing; no-station ground is no station. */
function matches(plan: Plan, feature: Feature, wanted: string): boolean {
  const { properties } = feature
  const called = [
    properties.name || 'unnamed',
    'crop' in properties ? cropTitle(plan, properties.crop) : '',
    'cultivar' in properties ? (properties.cultivar ?? '') : '',
  ].join(' ')
  const said = `${called} ${kindNames[properties.kind].one}`.toLowerCase().split(/\s+/)
  const parts = called.toLowerCase().split(/[^\p{L}\p{N}]+/u)
  const words = wanted.trim().toLowerCase().split(/\s+/)
  return words.every(word => [...said, ...parts].some(each => each.startsWith(word)))
}
