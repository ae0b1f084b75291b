import type { PredictedBloom } from '#geo/bloom/predict'
import { compose } from '#geo/plan/edits'
import { setBloom } from '#geo/plan/edits-seasons'
import { bloomStages, isObserved, type Plan, seasonOf } from '#geo/plan/plan'
import { dayAndMonth } from '#geo/time/date-text'
import { listed } from '#geo/wording/plain'
import { Table } from '../../parts/table'
import { notify } from '../../state/actions'
import { cropsIn } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { useEdit, usePlan, useYear } from '../hooks'
import { cropTitle } from '../titles'
import { isSameBloom } from './bloom-defaults'
import { predictionOf } from './predicted-line'

/** Every crop's full bloom as this season's weather or apple as seen has it, to be taken over in one step. */
export function Predictions() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const rows = cropsIn(plan, year).flatMap(crop => {
    const found = predictionOf(plan, year, crop)
    const bloom = seasonOf(plan, year)?.bloom?.[crop]
    return found === null ? [] : [{ crop, found, bloom }]
  })
  if (rows.length === 0) return null
  const usable = rows.filter(
    ({ crop, bloom, found }) =>
      !isSameBloom(bloom, found.bloom) &&
      !(bloom && bloomStages.some(stage => isObserved(bloom, stage))) &&
      !isVariant(plan, crop),
  )
  const variants = rows.filter(({ crop }) => isVariant(plan, crop)).map(({ crop }) => cropTitle(plan, crop))
  const use = () => {
    edit(
      compose(
        `Use predicted bloom of ${counted(usable.length, 'crop')}`,
        usable.map(({ crop, bloom, found }) => setBloom(year, crop, { ...bloom, ...found.bloom })),
      ),
    )
    notify(store, `${counted(usable.length, 'crop')} set to predicted dates. One press of Undo takes all of it back.`)
  }
  return (
    <div className="stack">
      <Table
        caption={`Full bloom in ${year} as predicted`}
        columns={[
          { key: 'crop', head: 'Crop', cell: ({ crop }) => cropTitle(plan, crop) },
          { key: 'full', head: 'Predicted', cell: ({ found }) => dayAndMonth(found.bloom.full) },
          { key: 'spread', head: 'Days ±', cell: ({ found }) => spreadText(found), isFigure: true },
          { key: 'now', head: 'In the plan', cell: ({ bloom }) => (bloom ? dayAndMonth(bloom.full) : 'none') },
          { key: 'basis', head: 'By', cell: ({ found }) => shortBasis(found) },
        ]}
        rows={rows}
        keyOf={({ crop }) => crop}
      />
      {variants.length === 0 ? null : (
        <p className="aside-note">
          {listed(variants)} {variants.length === 1 ? 'is' : 'are'} predicted like the crop of the table behind{' '}
          {variants.length === 1 ? 'it' : 'them'}; an early or late sort differs by the days you know.
        </p>
      )}
      {usable.length === 0 ? null : (
        <div>
          <button type="button" onClick={use}>
            Use the predicted dates of {counted(usable.length, 'crop')}
          </button>
        </div>
      )}
    </div>
  )
}

/** A crop of the grower's own that stands on one of the tables: how early or late it is nobody but the grower knows. */
function isVariant(plan: Plan, crop: string): boolean {
  return plan.crops[crop]?.basedOn !== undefined
}

function shortBasis({ basis, heat }: PredictedBloom): string {
  if (basis === 'degree-days') return heat?.isRescaled ? 'warmth, your own total' : 'warmth'
  return basis === 'apple-observed' ? 'days from apple, seen' : 'days from apple'
}

function spreadText({ before, after }: { readonly before: number; readonly after: number }): string {
  const [early, late] = [Math.round(before), Math.round(after)]
  return early === late ? String(early) : `−${early} +${late}`
}
