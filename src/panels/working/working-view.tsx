import { useMemo } from 'react'
import { parameterRows } from '#geo/data/parameter-rows'
import type { WorkingTopic } from '../../state/store'
import { usePlanner } from '../../state/use-planner'
import { enough, partlyEnough } from '../../text/verdict'
import { percent } from '../../text/words'
import { useBoxes, useStocked, useSuggested } from '../boxes/use-boxes'
import { useRanges } from '../coverage/figures'
import { useEvaluation, usePlan, useYear, valueOfJob } from '../hooks'
import { boxesWorking, isBoxesFigure } from './boxes-workings'
import { foundWorking, isFoundFigure } from './found-workings'
import { Influences } from './influences'
import { ParameterField } from './parameter-field'
import { isTimingFigure, timingWorking } from './timing-workings'
import { type Uses, type Working, workingOf } from './workings'
import { isYearsFigure, yearsWorking } from './years-workings'
import './working.css'

/** How a figure was worked out: the rule, what went in, how sure it is, and the way to change what went in. */
export function WorkingView({ topic }: { readonly topic: WorkingTopic }) {
  const { working, isFresh } = useWorking(topic)
  if (working === null) return <p>There is no such figure in this season’s count.</p>
  return (
    <div className="stack">
      <div className={isFresh ? 'stack' : 'stack stale'}>
        <h3>{working.title}</h3>
        <p className="aside-note">{working.of}</p>
        <p className="answer">{working.answer}</p>
        {/* A range of one value says nothing: where no bees fly there is nothing to vary. */}
        {working.range?.includes(' to ') !== true ? null : (
          <p>
            Between {working.range.replace(' to ', ' and ')}: each figure behind it was taken to the low and to the high
            end of its range, one at a time, and the effects were combined as for errors that have nothing to do with
            one another.
          </p>
        )}
      </div>
      <Rule working={working} />
      {working.given.length === 0 ? null : (
        <dl className="numbers">
          {working.given.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
      {/* The influences are those on the orchard’s coverage; a planting’s own may hang on other figures. */}
      {topic.figure === 'coverage' && topic.id === null ? <Influences /> : null}
      <UsedFigures uses={working.uses} />
    </div>
  )
}

function useWorking(topic: WorkingTopic): { readonly working: Working | null; readonly isFresh: boolean } {
  const plan = usePlan()
  const year = useYear()
  const ranges = useRanges()
  const { value, isFresh } = useEvaluation()
  const suggested = useSuggested()
  const stocked = useStocked()
  const boxes = useBoxes()
  const { value: advised } = valueOfJob(
    usePlanner(state => state.results.advice),
    0,
  )
  const { value: typical } = valueOfJob(
    usePlanner(state => state.results.typical),
    0,
  )
  const { value: found } = valueOfJob(
    usePlanner(state => state.results.found),
    0,
  )
  const { value: compared } = valueOfJob(
    usePlanner(state => state.results.comparison),
    0,
  )
  const { value: projected } = valueOfJob(
    usePlanner(state => state.results.projection),
    0,
  )
  const care = usePlanner(state => state.years.ahead.care)
  const { figure, id } = topic
  if (isBoxesFigure(figure)) {
    const answers = { suggested: suggested.answer, stocked: stocked.answer, boxes }
    return { working: boxesWorking({ figure, id }, answers), isFresh: suggested.isFresh || stocked.isFresh }
  }
  if (isFoundFigure(figure)) {
    return { working: foundWorking(figure, id, { plan, year, found }), isFresh: true }
  }
  if (isTimingFigure(figure)) {
    const context = { plan, year, advised, typical, coverage: value?.report.orchard.coverage ?? null }
    return { working: timingWorking(figure, id, context), isFresh: true }
  }
  if (isYearsFigure(figure)) {
    const answered = figure === 'ahead' ? projected : compared
    const working = yearsWorking(figure, id, { plan, compared, projected, care })
    return { working, isFresh: answered?.plan === plan }
  }
  return { working: value && workingOf({ figure, id }, { plan, year, report: value.report, ranges }), isFresh }
}

function Rule({ working }: { readonly working: Working }) {
  return (
    <section className="stack prose" aria-label="The rule in words">
      {working.rule.map(paragraph => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {working.isVerdict ? (
        <p>
          From {percent(enough)} on the verdict is “yes”, from {percent(partlyEnough)} on “partly”, below that “no”. The
          two limits are our own choice.
        </p>
      ) : null}
    </section>
  )
}

/** The table figures that went in, each to be changed on the spot. */
function UsedFigures({ uses }: { readonly uses: Uses }) {
  const plan = usePlan()
  const rows = useMemo(() => parameterRows(plan), [plan])
  const groups = [
    ...uses.crops.map(id => ({ id, names: uses.crop })),
    ...uses.bees.map(id => ({ id, names: uses.bee as readonly string[] })),
    { id: 'site', names: uses.site as readonly string[] },
  ]
  return groups.map(({ id, names }) => {
    const found = rows.filter(row => row.groupId === id && names.includes(row.name))
    const [first] = found
    if (first === undefined) return null
    return (
      <section key={id} className="stack" aria-label={`Figures: ${first.group}`}>
        <h4>{first.group}</h4>
        {found.map(row => (
          <ParameterField key={`${row.groupId} ${row.name}`} row={row} />
        ))}
      </section>
    )
  })
}
