import { judging } from '#geo/data/judging-figures'
import { type Care, mostSeasons } from '#geo/seasons/project'
import { NumberField } from '../../../parts/number-field'
import { usePlanner, usePlannerStore } from '../../../state/use-planner'
import { changeAhead } from '../../../state/years-actions'
import { careNames } from './ahead-words'

/** What is asked of the seasons to come. */
export function AheadForm({ year }: { readonly year: number }) {
  const store = usePlannerStore()
  const { care, seasons, shareKept, target } = usePlanner(state => state.years.ahead)
  return (
    <section className="stack" aria-labelledby="ahead-form">
      <h2 id="ahead-form">Reckon on from {year}</h2>
      <fieldset className="ahead-care">
        <legend>Care of the nests</legend>
        {(Object.keys(careNames) as Care[]).map(each => (
          <label key={each} className="option">
            <input
              type="radio"
              name="care"
              checked={care === each}
              onChange={() => changeAhead(store, { care: each })}
            />
            {careNames[each]}
          </label>
        ))}
      </fieldset>
      <div className="fields">
        <NumberField
          label="Seasons"
          value={seasons}
          limit={{ low: 1, high: mostSeasons, isWhole: true }}
          isRequired
          onCommit={value => value !== null && changeAhead(store, { seasons: value })}
        />
        <NumberField
          label="Target coverage"
          quantity="share"
          value={target}
          fallback={judging.usualTarget}
          limit={{ low: 0.05, high: 1 }}
          onCommit={value => changeAhead(store, { target: value })}
        />
        <NumberField
          label="Share of each harvest kept"
          quantity="share"
          value={shareKept}
          limit={{ low: 0, high: 1 }}
          note={
            shareKept === null
              ? 'empty: as the season’s share-out says, else all of it'
              : 'the rest is given away; of cocoons taken in'
          }
          onCommit={value => changeAhead(store, { shareKept: value })}
        />
      </div>
    </section>
  )
}
