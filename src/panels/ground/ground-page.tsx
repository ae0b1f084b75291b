import { useState } from 'react'
import type { Plan } from '#geo/plan/plan'
import { Disclosure } from '../../parts/disclosure'
import { plantingsIn, stations, stationsInUse } from '../../state/selectors'
import { areaText } from '../../text/units'
import { counted } from '../../text/words'
import { PicturesSection } from '../beneath/pictures-section'
import { usePlan, useYear } from '../hooks'
import { measured } from '../measures'
import { AddByTyping } from './add-by-typing'
import { GroundList } from './ground-list'
import { PlotGridForm } from './plot-grid'
import './ground.css'

/** What stands there: a sentence, the list of everything, and the way to add without drawing. */
export function GroundPage() {
  const plan = usePlan()
  const year = useYear()
  const isEmpty = plan.features.length === 0
  // Stays as it was when the page came: whoever adds one thing by typing is about to add the next.
  const [wasEmpty] = useState(isEmpty)
  return (
    <div className="page">
      <p className="lead">{groundSentence(plan, year)}</p>
      {isEmpty ? (
        <p>
          Choose a tool at the edge of the map and draw a row, a block or a bed, then put up a nest station. Or type the
          figures here.
        </p>
      ) : null}
      <Disclosure summary="Add by typing" isOpen={wasEmpty}>
        <AddByTyping />
      </Disclosure>
      <Disclosure summary="Numbered plots in a grid" isLazy>
        <PlotGridForm />
      </Disclosure>
      <Disclosure summary="Photograph or sketch under the map" isLazy>
        <PicturesSection />
      </Disclosure>
      {isEmpty ? null : <GroundList />}
    </div>
  )
}

/** "14 plantings with 1,031 plants on 1.4 ha in 2026; 3 nest stations, 2 of them in use." */
function groundSentence(plan: Plan, year: number): string {
  if (plan.features.length === 0) return 'Nothing is drawn yet.'
  const there = plantingsIn(plan, year)
  let plants = 0
  let area = 0
  for (const planting of there) {
    const found = measured(plan, planting)
    plants += found.plants ?? 0
    area += found.area ?? 0
  }
  const with_ = plants > 0 ? ` with ${counted(plants, 'plant')}` : ''
  const fruit =
    there.length === 0 ? 'No planting' : `${counted(there.length, 'planting')}${with_} on ${areaText(area, plan.units)}`
  const all = stations(plan).length
  const used = stationsInUse(plan, year).length
  const inUse =
    used === all ? (all === 1 ? 'in use' : 'all in use') : used === 0 ? 'not in use' : `${used} of them in use`
  const nests = all === 0 ? 'no nest station yet' : `${counted(all, 'nest station')}, ${inUse}`
  return `${fruit} in ${year}; ${nests}.`
}
