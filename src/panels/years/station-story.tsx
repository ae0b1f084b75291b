import type { StationStory } from '#geo/seasons/station-story'
import { Disclosure } from '../../parts/disclosure'
import { Figure } from '../../parts/figure'
import { Table } from '../../parts/table'
import { setView } from '../../state/actions'
import { featureById } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { grouped, percent } from '../../text/words'
import { useExplain, usePlan, useSelect } from '../hooks'
import { titleOf } from '../titles'
import { adviceWords, evidenceWords } from './advice-words'
import { causeLines, returnText, stationLines } from './found-figures'
import { Causes, FoundLines } from './found-lines'

/** One station: what to do with it and why, its season, and its years. */
export function StationStoryCard({ story, year }: { readonly story: StationStory; readonly year: number }) {
  const plan = usePlan()
  const store = usePlannerStore()
  const select = useSelect()
  const explain = useExplain()
  const isSelected = usePlanner(state => state.view.selection.includes(story.id))
  const feature = featureById(plan, story.id)
  const name = feature ? titleOf(feature) : story.name
  const found = story.years.find(each => each.year === year)?.found
  const losses = found?.losses ?? null
  return (
    <section className={isSelected ? 'story is-selected' : 'story'} aria-label={name}>
      <h3>
        <button type="button" className="link" onClick={() => select([story.id])}>
          {name}
        </button>
      </h3>
      <p>
        <Figure
          label={`What the counts of ${name} speak for`}
          onExplain={() => explain({ figure: 'advice', id: story.id })}
        >
          {adviceWords(story)}
        </Figure>
      </p>
      {story.evidence.map(evidence => (
        <p key={`${evidence.code} ${evidence.year}`} className="aside-note">
          {evidenceWords(evidence)}
        </p>
      ))}
      <Disclosure summary={`Its ${year} and the years before`} isOpen={isSelected}>
        {found === undefined ? null : <FoundLines lines={stationLines(found)} id={story.id} />}
        {losses === null || causeLines(losses).length === 0 ? null : <Causes causes={causeLines(losses)} />}
        <Table
          caption={`${name} over the years; a dash was not counted`}
          columns={[
            { key: 'year', head: 'Season', cell: row => String(row.year) },
            {
              key: 'out',
              head: 'Females out',
              cell: ({ found: { released } }) => grouped(released.females),
              isFigure: true,
            },
            {
              key: 'capped',
              head: 'Capped',
              cell: ({ found: { capped, tubes } }) => cappedText(capped, tubes),
              isFigure: true,
            },
            {
              key: 'lost',
              head: 'Lost',
              cell: ({ found: { lossShare } }) => (lossShare ? percent(lossShare.share) : '–'),
              isFigure: true,
            },
            {
              key: 'return',
              head: 'Daughters for each',
              cell: row => (row.found.return === null ? '–' : returnText(row.found.return)),
              isFigure: true,
            },
          ]}
          rows={story.years}
          keyOf={row => String(row.year)}
        />
        <div className="actions">
          <button
            type="button"
            onClick={() => {
              select([story.id])
              setView(store, { yearTask: 'round' })
            }}
          >
            Visits <span className="unseen">to {name}</span>
          </button>
          <button
            type="button"
            onClick={() => {
              select([story.id])
              setView(store, { yearTask: 'opening' })
            }}
          >
            Opening <span className="unseen">of {name}</span>
          </button>
        </div>
      </Disclosure>
    </section>
  )
}

function cappedText(capped: number | null, tubes: number | null): string {
  if (capped === null) return '–'
  return tubes === null ? grouped(capped) : `${grouped(capped)} of ${grouped(tubes)}`
}
