import { useEffect, useRef, useState } from 'react'
import { nameOf } from '#geo/plan/plan'
import type { SuggestedStation } from '#geo/siting/suggestion'
import { dateText } from '#geo/time/date-text'
import { listed } from '#geo/wording/plain'
import { Disclosure } from '../../parts/disclosure'
import { useUnits } from '../../parts/units-context'
import type { Suggested } from '../../state/boxes'
import { choosePlace, movePlace, takePlace } from '../../state/boxes-actions'
import { featureById, planeOfPlan, stations, stationsInUse } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { lengthText, measureOf } from '../../text/units'
import { about, counted, grouped } from '../../text/words'
import { Explained } from '../coverage/figures'
import { PositionField } from '../ground/position-field'
import { usePlan } from '../hooks'
import { titleOf } from '../titles'
import { closeChange, finely, placeWords } from './answer-words'
import { useTrial } from './trial'
import { useBoxes, usePlaceNames } from './use-boxes'

/** More stations than this are shown on asking. */
const most = 10

type Props = { readonly answer: Suggested; readonly isFresh: boolean }

/** The suggested stations, one by one: why there, what goes in, and a way to put it elsewhere. */
export function PlaceList({ answer, isFresh }: Props) {
  const { plan, suggestion, year } = answer
  const names = usePlaceNames(answer)
  const { chosen } = useBoxes()
  const [isAll, setAll] = useState(false)
  const shown = suggestion.stations.filter(({ id }, i) => isAll || i < most || id === chosen)
  const nameById = (id: string) => {
    const feature = featureById(plan, id)
    return feature ? nameOf(feature) : id
  }
  const spared = suggestion.spared.map(nameById)
  const dropped = suggestion.dropped.filter(id => !suggestion.spared.includes(id)).map(nameById)
  return (
    <section className="stack" aria-labelledby="places">
      <h2 id="places">The stations</h2>
      <p className="aside-note">
        Dashed on the map, with these numbers where there is room. Drag one there, or give it another place here, to see
        what that costs.
      </p>
      <ul className="results">
        {shown.map(station => (
          <li key={station.id}>
            <PlaceEntry
              answer={answer}
              station={station}
              name={names.get(station.id)?.name ?? station.id}
              isFresh={isFresh}
            />
          </li>
        ))}
      </ul>
      {shown.length < suggestion.stations.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show {suggestion.stations.length - shown.length} more stations
        </button>
      ) : null}
      {spared.length === 0 ? null : (
        <p>
          {listed(spared)}: not needed for this in {year}. The cocoons and tubes there go to the others.
        </p>
      )}
      {dropped.length === 0 ? null : (
        <p>
          {listed(dropped)}: not in use in {year}.
        </p>
      )}
    </section>
  )
}

type EntryProps = Props & { readonly station: SuggestedStation; readonly name: string }

function PlaceEntry({ answer, station, name, isFresh }: EntryProps) {
  const store = usePlannerStore()
  const plan = usePlan()
  const { left, chosen, moved } = useBoxes()
  const { id, femaleCocoons, maleCocoons, tubes, releases } = station
  const isChosen = chosen === id
  const isTaken = !left.includes(id)
  const isSame = station.source === 'station'
  const head = useSight(isChosen)
  return (
    <>
      <div className="place-head" ref={head}>
        <h3>
          <button
            type="button"
            className="link"
            aria-pressed={isChosen}
            onClick={() => choosePlace(store, isChosen ? null : id)}
          >
            {name}
          </button>{' '}
          <span className="kind-sum">
            {station.new ? 'new' : isSame ? (station.reused ? 'stands unused' : 'stays where it is') : 'moves'}
          </span>
        </h3>
        <label className="option">
          <input
            type="checkbox"
            checked={isTaken}
            disabled={!isFresh}
            onChange={event => takePlace(store, id, event.target.checked)}
          />
          Take it<span className="unseen">: {name}</span>
        </label>
      </div>
      <p>
        {moved[id] === undefined ? placeWords(station, plan.units) : 'Where you put it.'}{' '}
        <NearUnused answer={answer} station={station} />
      </p>
      <p>
        <Explained figure="placeCocoons" id={id} label={`cocoons at ${name}`}>
          {grouped(femaleCocoons)} female, {grouped(maleCocoons)} male cocoons
        </Explained>
        {releases.length > 0 ? `, out on ${listed(releases.map(({ date }) => dateText(date)))}` : ''};{' '}
        <Explained figure="placeTubes" id={id} label={`tubes at ${name}`}>
          {counted(tubes, 'tube')}
        </Explained>
      </p>
      <WhyHere station={station} name={name} />
      {isChosen && isFresh ? <Elsewhere answer={answer} station={station} name={name} /> : null}
    </>
  )
}

/** Nearer than this a station that stands unused would do as well, m. */
const nearBy = 30

/** A station that stands near and is not in use: taking it into use may save a post. */
function NearUnused({ answer, station }: { readonly answer: Suggested; readonly station: SuggestedStation }) {
  const { plan, year } = answer
  const plane = planeOfPlan(plan)
  const { moved } = useBoxes()
  const here = plane.toMetres(moved[station.id] ?? station.at)
  const inUse = new Set(stationsInUse(plan, year).map(({ id }) => id))
  const [nearest] = stations(plan)
    .filter(({ id }) => !inUse.has(id) && !answer.suggestion.stations.some(each => each.id === id))
    .map(each => {
      const { x, y } = plane.toMetres(each.geometry.coordinates)
      return { name: titleOf(each), distance: Math.hypot(x - here.x, y - here.y) }
    })
    .filter(({ distance }) => distance < nearBy)
    .sort((a, b) => a.distance - b.distance)
  if (nearest === undefined) return null
  return (
    <>
      {nearest.name} stands {lengthText(nearest.distance, plan.units)} from here and is not in use this season: it may
      do as well.
    </>
  )
}

/** What is chosen on the map is brought into sight in the list. */
function useSight(isChosen: boolean) {
  const ref = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (isChosen) ref.current?.scrollIntoView?.({ block: 'nearest' })
  }, [isChosen])
  return ref
}

const mostGains = 3

/** Which plantings gain by this station. */
function WhyHere({ station, name }: { readonly station: SuggestedStation; readonly name: string }) {
  const { gains, id } = station
  if (gains.length === 0) return <p className="aside-note">Without it no planting would lose anything.</p>
  const line = (gain: (typeof gains)[number]) => (
    <li key={gain.id}>
      <span>{gain.name}</span>
      <span className="figure-cell">{about(gain.females)} females</span>
    </li>
  )
  return (
    <Disclosure
      summary={
        <>
          Why here? {listed(gains.slice(0, 2).map(gain => gain.name))}
          {gains.length > 2 ? ` and ${gains.length - 2} more` : ''} {gains.length === 1 ? 'gains' : 'gain'}
        </>
      }
    >
      <ul className="gains">{gains.slice(0, mostGains).map(line)}</ul>
      {gains.length > mostGains ? (
        <Disclosure summary={`${gains.length - mostGains} more plantings`}>
          <ul className="gains">{gains.slice(mostGains).map(line)}</ul>
        </Disclosure>
      ) : null}
      <p className="aside-note">
        Females served that would be missing without {name}, in blue orchard bee females.{' '}
        <Explained figure="gain" id={id} label={`what ${name} adds`}>
          How that is counted
        </Explained>
      </p>
    </Disclosure>
  )
}

/** "0.4 points less than suggested". */
function differenceWords(suggested: number, now: number): string {
  const words = closeChange(suggested, now)
  return words === 'no difference' ? `${words} to the suggestion` : `${words} than suggested`
}

const directions = [
  { name: 'north', x: 0, y: 1 },
  { name: 'south', x: 0, y: -1 },
  { name: 'west', x: -1, y: 0 },
  { name: 'east', x: 1, y: 0 },
] as const

/** Another place for a suggested station, typed or stepped, and what it costs. */
function Elsewhere({ answer, station, name }: Omit<EntryProps, 'isFresh'>) {
  const store = usePlannerStore()
  const { moved } = useBoxes()
  const { trial, isChanged } = useTrial(answer)
  const { id } = station
  const at = moved[id] ?? station.at
  const plane = planeOfPlan(answer.plan)
  const { unit, toStored } = measureOf('length', useUnits())
  const step = (x: number, y: number) => {
    const from = plane.toMetres(at)
    const nudge = toStored(1)
    movePlace(store, id, plane.toLngLat({ x: from.x + x * nudge, y: from.y + y * nudge }))
  }
  const suggested = answer.suggestion.after.coverage
  return (
    <fieldset className="call-box" aria-label={`Another place for ${name}`}>
      <PositionField label={`Place of ${name}`} value={at} onCommit={next => movePlace(store, id, next)} />
      <div className="actions">
        {directions.map(({ name: direction, x, y }) => (
          <button type="button" key={direction} onClick={() => step(x, y)}>
            1 {unit} {direction}
          </button>
        ))}
      </div>
      {isChanged && trial?.coverage != null && suggested !== null ? (
        <p>
          Coverage would be about {finely(trial.coverage)}: {differenceWords(suggested, trial.coverage)}.
        </p>
      ) : null}
      {moved[id] === undefined ? null : (
        <button type="button" className="quiet" onClick={() => movePlace(store, id, null)}>
          Put it back where it was suggested
        </button>
      )}
    </fieldset>
  )
}
