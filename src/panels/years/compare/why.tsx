import type { Comparison } from '#geo/seasons/compare'
import { Table } from '../../../parts/table'
import { capitalised } from '../../../text/words'
import { Explained } from '../../coverage/figures'
import { usePlan } from '../../hooks'
import { cropTitle } from '../../titles'
import { changeText, jointSentence, reachSentence } from './compare-words'
import { WhyChart } from './why-chart'

/** Why coverage changed: its parts as bars and in words, and what belongs together. */
export function Why({ comparison }: { readonly comparison: Comparison }) {
  const plan = usePlan()
  const { reasons, orchard, years } = comparison
  const { change } = orchard.coverage
  const reach = reachSentence(comparison)
  const joint = jointSentence(comparison, crop => cropTitle(plan, crop).toLowerCase())
  return (
    <section className="stack" aria-labelledby="why-changed">
      <h2 id="why-changed">Why it changed</h2>
      {change === null ? (
        <p>Coverage is not known in both seasons, so there is nothing to split up.</p>
      ) : reasons.length === 0 ? (
        <p>
          The two seasons have the same plantings, stations, cocoons, bloom dates and weather, so coverage is the same.
        </p>
      ) : (
        <>
          <WhyChart
            parts={reasons.map(({ cause, text, change: part }) => ({ key: cause, text, change: part }))}
            title={`Parts of the change in coverage from ${years[0]} to ${years[1]}; the table below has the same figures`}
          />
          <Table
            caption="Parts of the change in coverage; together they are the whole change"
            columns={[
              { key: 'what', head: 'What differs', cell: row => capitalised(row.text) },
              {
                key: 'part',
                head: 'Part',
                cell: row => (
                  <Explained figure="whyChanged" id={null} label={`part of the change by ${row.text}`}>
                    {changeText(row.change)}
                  </Explained>
                ),
                isFigure: true,
              },
            ]}
            rows={[...reasons, { cause: 'all', text: 'all together', change }]}
            keyOf={row => row.cause}
          />
        </>
      )}
      {joint === null ? null : <p>{joint}</p>}
      {reach === null ? null : <p>{reach}</p>}
    </section>
  )
}
