import type { OrchardResult } from '#geo/report/report'
import { dateText } from '#geo/time/date-text'
import { aboutCounted } from '../../text/words'
import { Estimate, Explained, useRanges, VerdictFigure } from './figures'

/** The orchard as a whole, and its busiest day: the most females wanted at once. */
export function OrchardTotals({ orchard }: { readonly orchard: OrchardResult }) {
  const ranges = useRanges()?.orchard
  const { wanted, supplied, shortBy, busiestDay } = orchard
  return (
    <section className="stack" aria-labelledby="orchard">
      <h2 id="orchard">The orchard</h2>
      <dl className="verdicts">
        <VerdictFigure label="In reach" share={orchard.reach} figure="reach" id={null} range={ranges?.reach} />
        <VerdictFigure
          label="In number"
          share={orchard.coverage}
          figure="coverage"
          id={null}
          range={ranges?.coverage ?? null}
        />
      </dl>
      <dl className="numbers">
        <div>
          <dt>Wanted, all added up</dt>
          <dd>
            <Explained figure="wanted" id={null} label="females wanted in all">
              <Estimate value={wanted} range={ranges?.wanted} />
            </Explained>
          </dd>
        </div>
        <div>
          <dt>Supplied</dt>
          <dd>
            <Explained figure="supplied" id={null} label="females supplied in all">
              <Estimate value={supplied} range={ranges?.supplied} />
            </Explained>
          </dd>
        </div>
        <div>
          <dt>Short by</dt>
          <dd>
            <Explained figure="shortBy" id={null} label="females short in all">
              <Estimate value={shortBy} range={ranges?.shortBy} />
            </Explained>
          </dd>
        </div>
      </dl>
      {(shortBy ?? 0) > 0 && (supplied ?? 0) > 0 ? (
        <p className="aside-note">
          Plants that get more than they want do not help those that get too little, so wanted less supplied is not what
          is short.
        </p>
      ) : null}
      {busiestDay === null ? null : (
        <p>
          Most are wanted at once on {dateText(busiestDay.date)}:{' '}
          <Explained figure="busiestDay" id={null} label="females wanted on the busiest day">
            {aboutCounted(busiestDay.wanted, 'female')}
          </Explained>
          . That is the least needed at once. One female serves one bloom after another, so all plantings added up
          overstate what is needed; but with a single release date more than that are needed. Coverage tells whether it
          is enough.
        </p>
      )}
    </section>
  )
}
