import { type Projection, project as projectSeasons } from '#geo/seasons/project'
import { carriesText } from '#geo/seasons/project-text'
import type { Spread } from '#geo/seasons/spread'
import { listed, oneLine } from '#geo/wording/plain'
import { type Answer, answer, jsonAnswer } from './answer'
import { joined, latestYear, noSeasons, openedPlan } from './plan-file'
import { linesBeside, problemLines } from './problems'
import { type Column, table } from './table'
import { estimate, grouped, notKnown, percent } from './words'

type Options = {
  readonly isJson: boolean
  readonly year: number | null
  readonly seasons: number | null
  readonly isOutside: boolean
}

const usualSeasons = 5

/** The seasons to come, as a table or as JSON. */
export function project(text: string, options: Options): Answer {
  const { plan, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  const care = options.isOutside ? 'outside' : 'takenIn'
  const outcome =
    plan === null || year === null ? null : projectSeasons(plan, year, options.seasons ?? usualSeasons, { care })
  const problems =
    outcome === null ? (plan === null ? ofReading : [...ofReading, noSeasons]) : joined(ofReading, outcome.problems)
  if (plan === null || outcome === null || !outcome.ok) {
    const result = { from: year, seasons: [], problems }
    return options.isJson ? jsonAnswer(result, problems) : answer('', problemLines(problems), problems)
  }
  if (options.isJson) return jsonAnswer({ ...outcome.value, problems }, problems)
  const name = oneLine(plan.name) || 'Plan without a name'
  return answer(projectText(name, outcome.value), linesBeside(problems), problems)
}

function projectText(name: string, projection: Projection): string {
  const { from, care, shareKept, seasons } = projection
  const keeping = care === 'takenIn' ? 'cocoons taken in, sorted and kept cold' : 'nests left outside'
  const kept = shareKept < 1 && care === 'takenIn' ? `, ${percent(shareKept)} of them kept` : ''
  const adding = seasons.filter(({ tubesToAdd }) => tubesToAdd.length > 0)
  return [
    `${name}, the seasons after ${from}: ${keeping}${kept}`,
    carriesText(projection, percent),
    '',
    'Each figure: middle (low to high)',
    table(
      [left('Season'), right('Cocoons'), right('Nesting females'), right('Filled tubes'), right('Coverage')],
      seasons.map(each => [
        `${each.year}${each.isCounted ? ', counted' : ''}`,
        band(each.cocoons, estimate),
        band(each.females, estimate),
        band(each.tubes, estimate),
        each.coverage === null ? notKnown : band(each.coverage, percent),
      ]),
    ),
    '',
    adding.length === 0
      ? 'The tubes there are suffice on the middle way.'
      : `Tubes to have in the season, more than there are, on the middle way:`,
    ...adding.map(({ year, tubesToAdd }) => {
      const all = tubesToAdd.reduce((sum, { tubes }) => sum + tubes, 0)
      return `  ${year}  ${grouped(all)}: ${listed(tubesToAdd.map(each => `${grouped(each.tubes)} at ${oneLine(each.name)}`))}`
    }),
    '',
  ].join('\n')
}

function band({ low, mid, high }: Spread, text: (value: number) => string): string {
  return low === high ? text(mid) : `${text(mid)} (${text(low)} to ${text(high)})`
}

const left = (head: string): Column => ({ head, align: 'left' })
const right = (head: string): Column => ({ head, align: 'right' })
