import { type FormEvent, type KeyboardEvent, useId, useState } from 'react'
import { compose } from '#geo/plan/edits'
import { addFeatures } from '#geo/plan/edits-features'
import type { Bed, Boundary, Feature, Plan, Plant } from '#geo/plan/plan'
import { gridSize, type Plot, type PlotGrid, plotsOf, spotsIn } from '#geo/plan/plots'
import type { LngLat, Plane } from '#geo/space/plane'
import { NumberField } from '../../parts/number-field'
import { select, setView } from '../../state/actions'
import { newIds } from '../../state/new-id'
import { usePlannerStore } from '../../state/use-planner'
import { areaText, lengthText } from '../../text/units'
import { counted } from '../../text/words'
import { useEdit, useHome, usePlan } from '../hooks'
import { cropTitle } from '../titles'
import { CropChoice } from './crop-choice'
import { FromSelected } from './from-selected'
import { type PlotPlants, readPlotList } from './plot-list'
import { PositionField } from './position-field'
import { TypingChoice } from './typing-choice'

/** More plots than any site of allotments has; a slip of the finger must not draw a million. */
const mostPlots = 2000

type Draft = Omit<PlotGrid, 'corner'>

const emptyDraft: Draft = {
  bearing: 90,
  rows: 2,
  columns: 10,
  length: 10,
  width: 25,
  pathBetween: 0.6,
  pathAcross: 1.5,
  first: 1,
  parts: 1,
  isWalked: false,
}

const size = { low: 0, high: 1000, isAbove: true } as const
const path = { low: 0, high: 100 } as const
const whole = { low: 1, high: 500, isWhole: true } as const

type Figure = Exclude<keyof Draft, 'isWalked'>

/**
 * Numbered allotment plots in one step. A plan holds what grows, so that a plot is a bed of its crop, or its plants by a
 * list, and on asking an outline.
 */
export function PlotGridForm() {
  const store = usePlannerStore()
  const plan = usePlan()
  const edit = useEdit()
  const home = useHome()
  const [draft, setDraft] = useState<Draft>(emptyDraft)
  const [corner, setCorner] = useState<LngLat | null>(null)
  const [crop, setCrop] = useState('strawberry')
  const [list, setList] = useState('')
  const [isOutlined, setOutlined] = useState(false)
  const field = useId()
  const [fault, setFault] = useState<string | null>(null)
  const [done, setDone] = useState('')
  const change = (patch: Partial<Draft>) => {
    setFault(null)
    setDone('')
    setDraft({ ...draft, ...patch })
  }
  const count = draft.rows * draft.columns * draft.parts
  const { along, across } = gridSize({ ...draft, corner: { x: 0, y: 0 } })
  const add = (event: FormEvent) => {
    event.preventDefault()
    if (corner === null) return setFault('The grid needs the position of its first corner.')
    if (count > mostPlots) return setFault(`${counted(count, 'plot')} are more than ${mostPlots}: make two grids.`)
    const twice = repeatedName(plan, draft)
    if (twice !== null) return setFault(`There is a Plot ${twice} already: begin with another number.`)
    const plots = plotsOf({ ...draft, corner: home.toMetres(corner) })
    const read = readPlotList(list, plan, new Set(plots.map(({ name }) => name)))
    if (!read.ok) return setFault(read.why)
    const wholly = plots.map(({ name }): PlotPlants => ({ plot: name, crop, count: null }))
    const idOf = newIds(plan)
    const byName = new Map(plots.map(plot => [plot.name, plot]))
    const features = (list.trim() === '' ? wholly : read.value).map(each =>
      plotFeature(byName.get(each.plot)!, each, home, { title: cropTitle(plan, each.crop), isOutlined, idOf }),
    )
    if (isOutlined) features.unshift(...plots.map(plot => outlineOf(plot, home, idOf)))
    edit(compose(`Add ${counted(plots.length, 'plot')}`, [addFeatures(features)]))
    select(store, [])
    if (plan.features.length === 0) setView(store, { focusRequest: store.getState().view.focusRequest + 1 })
    setDone(`Added ${counted(features.length, 'thing')} on plots ${plots[0]?.name} to ${plots.at(-1)?.name}.`)
  }
  const figure = (name: Figure, label: string, limit: object, quantity: 'plain' | 'length' | 'degrees' = 'length') => (
    <NumberField
      label={label}
      quantity={quantity}
      value={draft[name]}
      limit={limit as typeof size}
      isRequired
      onCommit={value => value !== null && change({ [name]: value })}
    />
  )
  return (
    <form className="stack add-form" onSubmit={add} onKeyDown={keepOpen}>
      <TypingChoice />
      <PositionField label="Corner of the first plot" value={corner} onCommit={setCorner} />
      <FromSelected onTake={setCorner} />
      <div className="fields">
        {figure('columns', 'Plots in a row', whole, 'plain')}
        {figure('rows', 'Rows of plots', whole, 'plain')}
        {figure('length', 'Plot along the row', size)}
        {figure('width', 'Plot across the row', size)}
        {figure('pathBetween', 'Path between plots', path)}
        {figure('pathAcross', 'Path between rows', path)}
        {figure('bearing', 'Bearing of the rows', { low: -360, high: 360 }, 'degrees')}
        {figure('first', 'Number of the first', { low: 0, high: 100_000, isWhole: true }, 'plain')}
        {figure('parts', 'Parts of a plot', { low: 1, high: 4, isWhole: true }, 'plain')}
      </div>
      <p className="field-note">
        {draft.parts > 1 ? `Parts are named ${draft.first}A, ${draft.first}B. ` : ''}Each further row lies to the right.
      </p>
      <label className="option">
        <input
          type="checkbox"
          checked={draft.isWalked}
          onChange={event => change({ isWalked: event.target.checked })}
        />
        Every second row numbered backwards
      </label>
      <div className="field">
        <label htmlFor={field}>What grows on them, a line each: plot; crop; number of plants</label>
        <textarea
          id={field}
          rows={4}
          value={list}
          placeholder={'12A; apple; 2\n12B; strawberry'}
          onChange={event => {
            setFault(null)
            setDone('')
            setList(event.target.value)
          }}
        />
        <p className="field-note">
          Without a number the crop fills the plot. Plots that are not listed grow nothing that wants bees. With no list
          at all, each is a bed of this crop:
        </p>
      </div>
      <label className="option">
        <input type="checkbox" checked={isOutlined} onChange={event => setOutlined(event.target.checked)} />
        The outline of every plot too, as ground in your care
      </label>
      {isOutlined ? (
        <p className="field-note">Suggested stations then keep to the plots, and off the paths between them.</p>
      ) : null}
      {list.trim() === '' ? <CropChoice value={crop} onCommit={setCrop} /> : null}
      <p className="field-note">
        {counted(count, 'plot')} of {areaText((draft.length * draft.width) / draft.parts, plan.units)} on{' '}
        {lengthText(along, plan.units)} by {lengthText(across, plan.units)}.
      </p>
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <p className="field-note" role="status">
        {done}
      </p>
      <div>
        <button type="submit" className="first">
          Add {counted(count, 'plot')}
        </button>
      </div>
    </form>
  )
}

/** Enter takes a figure over, and does not yet draw: twenty plots are not to come of one key. */
function keepOpen(event: KeyboardEvent): void {
  if (event.key === 'Enter' && event.target instanceof HTMLInputElement) event.preventDefault()
}

/** The first name of the grid that the plan has already. */
function repeatedName(plan: Plan, draft: Draft): string | null {
  const taken = new Set(plan.features.map(({ properties }) => properties.name))
  return plotsOf({ ...draft, corner: { x: 0, y: 0 } }).find(({ name }) => taken.has(`Plot ${name}`))?.name ?? null
}

function ringOf({ corners }: Plot, home: Plane): readonly LngLat[] {
  const ring = corners.map(corner => home.toLngLat(corner)).reverse()
  return [...ring, ring[0] as LngLat]
}

function outlineOf(plot: Plot, home: Plane, idOf: (kind: string) => string): Boundary {
  const geometry = { type: 'Polygon', coordinates: [ringOf(plot, home)] } as const
  return {
    type: 'Feature',
    id: idOf('boundary'),
    geometry,
    properties: { kind: 'boundary', name: `Plot ${plot.name}` },
  }
}

/** What a plot holds: a bed with its outline, or plants along its middle. Where the plot itself is drawn, it has the bare name. */
function plotFeature(
  plot: Plot,
  { crop, count }: PlotPlants,
  home: Plane,
  { title, isOutlined, idOf }: { readonly title: string; readonly isOutlined: boolean; idOf(kind: string): string },
): Feature {
  const longName = `Plot ${plot.name} ${title.toLowerCase()}`
  if (count === null) {
    const geometry = { type: 'Polygon', coordinates: [ringOf(plot, home)] } as const
    const properties = { kind: 'bed', name: isOutlined ? longName : `Plot ${plot.name}`, crop } as const
    return { type: 'Feature', id: idOf('bed'), geometry, properties } satisfies Bed
  }
  const coordinates = spotsIn(plot, count).map(spot => home.toLngLat(spot))
  const geometry = { type: 'MultiPoint', coordinates } as const
  return {
    type: 'Feature',
    id: idOf('plant'),
    geometry,
    properties: { kind: 'plant', name: longName, crop },
  } satisfies Plant
}
