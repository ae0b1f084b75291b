import { useState } from 'react'
import { seasonOf } from '#geo/plan/plan'
import type { Projection } from '#geo/seasons/project'
import { carriesText } from '#geo/seasons/project-text'
import { Caution } from '../../../parts/caution'
import { ChoiceField } from '../../../parts/choice-field'
import { Disclosure } from '../../../parts/disclosure'
import { Table } from '../../../parts/table'
import { usePlanner } from '../../../state/use-planner'
import type { Projected } from '../../../state/years'
import { grouped, percent } from '../../../text/words'
import { Explained } from '../../coverage/figures'
import { usePlan, useYear, valueOfJob } from '../../hooks'
import { useShell } from '../../shell'
import { AheadForm } from './ahead-form'
import {
  type AheadMeasure,
  aheadSentence,
  bandText,
  basisText,
  careNames,
  measures,
  tubesSentence,
  wordOf,
} from './ahead-words'
import { BandChart } from './band-chart'
import './ahead.css'

/** The seasons to come, as a band: what these bees may become, cared for one way or the other. */
export function AheadPage() {
  const plan = usePlan()
  const year = useYear()
  const { answer, isFresh, reason } = useProjection()
  const care = usePlanner(state => state.years.ahead.care)
  const { showDialog } = useShell()
  if (seasonOf(plan, year) === undefined) {
    return (
      <div className="call-box">
        <p>{year} is no season of this plan yet, so there is nothing to reckon on from.</p>
        <button type="button" className="first" onClick={() => showDialog('season')}>
          Add a season
        </button>
      </div>
    )
  }
  return (
    <>
      {reason === null ? null : (
        <p role="alert" className="call">
          {reason}
        </p>
      )}
      {answer === null ? (
        reason === null ? (
          <p role="status">Reckoning on from {year}.</p>
        ) : null
      ) : (
        <div className={isFresh ? 'page' : 'page stale'}>
          <Outlook projection={answer.ways[care]} other={answer.ways[care === 'takenIn' ? 'outside' : 'takenIn']} />
        </div>
      )}
      <AheadForm year={year} />
      <Caution about="yield" />
    </>
  )
}

/** The latest reckoning from the season on the screen; fresh where it answers just what is asked. */
function useProjection(): {
  readonly answer: Projected | null
  readonly isFresh: boolean
  readonly reason: string | null
} {
  const plan = usePlan()
  const year = useYear()
  const { seasons, shareKept, target } = usePlanner(state => state.years.ahead)
  const job = usePlanner(state => state.results.projection)
  const { value } = valueOfJob(job, 0)
  const answer = value !== null && value.from === year ? value : null
  const asked = answer?.ahead
  const isFresh =
    answer?.plan === plan && asked?.seasons === seasons && asked.shareKept === shareKept && asked.target === target
  return { answer, isFresh, reason: job.status === 'failed' ? job.reason : null }
}

type Props = { readonly projection: Projection; readonly other: Projection }

function Outlook({ projection, other }: Props) {
  const plan = usePlan()
  const [measure, setMeasure] = useState<AheadMeasure>('coverage')
  const { seasons, from, care, shareKept, target } = projection
  const { name, isShare } = measures.find(({ value }) => value === measure)!
  const word = wordOf(measure)
  const kept = care === 'takenIn' && shareKept < 1 ? `, ${percent(shareKept)} of the harvest kept` : ''
  return (
    <>
      <p className="lead">{aheadSentence(projection)}</p>
      <p>{carriesText(projection, percent)}</p>
      <p>
        {careNames[other.care]} instead: {lowered(carriesText(other, percent))}
      </p>
      <section className="stack" aria-labelledby="ahead-figures">
        <h2 id="ahead-figures">
          The seasons after {from}: {careNames[care].toLowerCase()}
          {kept}
        </h2>
        <ChoiceField label="Figure" value={measure} choices={measures} onCommit={setMeasure} />
        <BandChart
          title={`${name} by season, low to high; the table below has the same figures`}
          points={seasons.map(each => ({ year: each.year, band: each[measure] }))}
          word={word}
          goal={isShare ? { value: target, name: `Target ${percent(target)}` } : null}
          top={isShare ? 1 : null}
        />
        <Table
          caption={`${name}: middle, and low to high. An estimate, not a promise: any way within the band may come true, and a frost or a parasite can end outside it.`}
          columns={[
            {
              key: 'year',
              head: 'Season',
              cell: row => `${row.year}${row.isCounted ? ', counted' : ''}`,
            },
            {
              key: 'band',
              head: `${name}: middle (low to high)`,
              cell: row => {
                const band = row[measure]
                if (band === null) return 'cannot be said'
                return (
                  <Explained figure="ahead" id={null} label={`${name} in ${row.year}`}>
                    {bandText(band, word)}
                  </Explained>
                )
              },
              isFigure: true,
            },
          ]}
          rows={seasons}
          keyOf={row => String(row.year)}
        />
        <p className="aside-note">{basisText(plan, projection)}</p>
        <p className="aside-note">
          Bloom, places, tubes and batches are taken as in {from}; no cocoons are bought. Coverage’s own uncertainty
          comes on top.
        </p>
      </section>
      <Tubes projection={projection} />
    </>
  )
}

function Tubes({ projection }: { readonly projection: Projection }) {
  const rows = projection.seasons.filter(({ tubesToAdd }) => tubesToAdd.length > 0)
  return (
    <section className="stack" aria-labelledby="ahead-tubes">
      <h2 id="ahead-tubes">Tubes to add, and when</h2>
      <p>{tubesSentence(projection)}</p>
      {rows.length === 0 ? null : (
        <Table
          caption="Tubes to have, more than there are now, on the middle way"
          columns={[
            { key: 'year', head: 'Season', cell: row => row.year },
            {
              key: 'all',
              head: 'In all',
              cell: row => (
                <Explained figure="ahead" id={null} label={`tubes to add in ${row.year}`}>
                  {grouped(row.tubesToAdd.reduce((sum, { tubes }) => sum + tubes, 0))}
                </Explained>
              ),
              isFigure: true,
            },
          ]}
          rows={rows}
          keyOf={row => String(row.year)}
        />
      )}
      {rows.length === 0 ? null : <TubesByStation rows={rows} />}
    </section>
  )
}

function lowered(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`
}

/** The same, station by station: one column for each season. */
function TubesByStation({ rows }: { readonly rows: Projection['seasons'] }) {
  const stations = [...new Map(rows.flatMap(row => row.tubesToAdd.map(({ id, name }) => [id, name] as const)))]
  return (
    <Disclosure summary="Station by station">
      <Table
        caption="Tubes to have at each station, more than there are now"
        columns={[
          { key: 'name', head: 'Station', cell: ([, name]) => name },
          ...rows.map(({ year, tubesToAdd }) => ({
            key: String(year),
            head: String(year),
            cell: ([id]: readonly [string, string]) => {
              const found = tubesToAdd.find(each => each.id === id)
              return found === undefined ? 'none' : grouped(found.tubes)
            },
            isFigure: true as const,
          })),
        ]}
        rows={stations}
        keyOf={([id]) => id}
      />
    </Disclosure>
  )
}
