import { problemText } from '#geo/problem'
import type { Comparison } from '#geo/seasons/compare'
import { remarkTexts, type StationChange, stationChanges } from '#geo/seasons/station-change'
import { significant } from '#geo/wording/plain'
import { Disclosure } from '../../../parts/disclosure'
import { Table } from '../../../parts/table'
import { grouped, percent } from '../../../text/words'
import { Explained } from '../../coverage/figures'
import { usePlan } from '../../hooks'
import { foundText, shareText } from './compare-words'
import { cappedEachText, establishedText, likeSentence, pairText, standOutSentence } from './station-words'

/** Coverage as planned beside coverage as found, and the stations counted in both seasons, like with like. */
export function Found({ comparison }: { readonly comparison: Comparison }) {
  const plan = usePlan()
  const { years, orchard, stations } = comparison
  const { coverage, found } = orchard
  const changes = stationChanges(plan, years, stations)
  const like = likeSentence(comparison)
  const left = stations.stations.filter(({ isCounted }) => !isCounted).map(({ name }) => name)
  const rows = [
    { key: 'planned', name: 'As planned', texts: [shareText(coverage.from), shareText(coverage.to)] },
    { key: 'found', name: 'As found', texts: [foundText(found.from), foundText(found.to)] },
  ]
  return (
    <section className="stack" aria-labelledby="as-found">
      <h2 id="as-found">As planned and as found</h2>
      <Table
        caption="Coverage by the females reckoned with, and by those that really nested"
        columns={[
          { key: 'name', head: 'Coverage', cell: row => row.name },
          ...years.map((year, i) => ({
            key: String(year),
            head: String(year),
            cell: (row: (typeof rows)[number]) => (
              <Explained
                figure={row.key === 'planned' ? 'seasonChange' : 'coverageFoundBeside'}
                id={null}
                label={`coverage ${row.name.toLowerCase()} in ${year}`}
              >
                {row.texts[i]}
              </Explained>
            ),
            isFigure: true as const,
          })),
        ]}
        rows={rows}
        keyOf={row => row.key}
      />
      {like === null ? (
        <p>No station was counted in both seasons, so nothing that was found can be held like with like.</p>
      ) : (
        <>
          <p>{like}</p>
          <p>{standOutSentence(changes, years)}</p>
          <Stations changes={changes} years={years} />
          {changes.map(each => (
            <Evidence key={each.id} change={each} years={years} />
          ))}
        </>
      )}
      {left.length === 0 ? null : (
        <p className="field-note">Not counted in both seasons, so left out here: {left.join(', ')}.</p>
      )}
      {stations.problems.map(problem => (
        <p key={`${problem.code} ${problem.at}`} className="aside-note">
          {problemText(problem)}
        </p>
      ))}
    </section>
  )
}

type Years = readonly [number, number]

function Stations({
  changes,
  years: [from, to],
}: {
  readonly changes: readonly StationChange[]
  readonly years: Years
}) {
  return (
    <Table
      caption={`Stations counted in both seasons, ${from} to ${to}. Nested: of the female cocoons set out, the middle of its range. Return: daughters for each of them.`}
      columns={[
        { key: 'name', head: 'Station', cell: row => row.name },
        {
          key: 'capped',
          head: 'Capped',
          cell: row => pairText(row.from.capped, row.to.capped, grouped),
          isFigure: true,
        },
        {
          key: 'nested',
          head: 'Nested',
          cell: row => (
            <Explained figure="coverageFoundBeside" id={null} label={`females that nested at ${row.name}`}>
              {establishedText(row)}
            </Explained>
          ),
          isFigure: true,
        },
        {
          key: 'lost',
          head: 'Cells lost',
          cell: row => pairText(row.from.lossShare?.share ?? null, row.to.lossShare?.share ?? null, percent),
          isFigure: true,
        },
        {
          key: 'return',
          head: 'Return',
          cell: row => pairText(row.from.return, row.to.return, value => grouped(significant(value, 2))),
          isFigure: true,
        },
      ]}
      rows={changes}
      keyOf={row => row.id}
    />
  )
}

/** What was remarked at a station that counts alone do not show; nothing where nothing was. */
function Evidence({ change, years }: { readonly change: StationChange; readonly years: Years }) {
  const remarks = change.remarks.flatMap(remarkTexts)
  if (remarks.length === 0) return null
  const each = cappedEachText(change, years)
  return (
    <Disclosure summary={`${change.name}: what was seen there`} isOpen>
      <ul className="remarks">
        {each === null ? null : <li>{each}</li>}
        {remarks.map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </Disclosure>
  )
}
