import { usePlannerStore } from '../../state/use-planner'
import type { YearLook } from '../../state/years'
import { changeYears } from '../../state/years-actions'
import { AheadPage } from './ahead/ahead-page'
import { ComparePage } from './compare/compare-page'
import { lookNames } from './look-list'

/** A look at more seasons than one, with the way back to the overview. */
export function LookPage({ look }: { readonly look: YearLook }) {
  const store = usePlannerStore()
  return (
    <div className="page years">
      <div className="task-head">
        <button type="button" className="quiet" onClick={() => changeYears(store, { look: null })}>
          <span aria-hidden="true">‹</span> Back
        </button>
        <h2>{lookNames[look]}</h2>
      </div>
      {look === 'compare' ? <ComparePage /> : <AheadPage />}
    </div>
  )
}
