import { type ParameterRow, parameterRows } from '#geo/data/parameter-rows'
import { type SourceKey, sources } from '#geo/data/sources'
import type { Units } from '#geo/plan/plan'
import { oneLine } from '#geo/wording/plain'
import { type Answer, answer, jsonAnswer } from './answer'
import { openedPlan, withoutFieldChecks } from './plan-file'
import { problemLines } from './problems'
import { type Column, table, wrapped } from './table'
import { shownUnit } from './units'

type Options = { readonly isJson: boolean; readonly units: Units | null; readonly isWhy: boolean }

const columns: readonly Column[] = [
  { head: 'Name', align: 'left' },
  { head: 'Value', align: 'right' },
  { head: 'Low', align: 'right' },
  { head: 'High', align: 'right' },
  { head: 'Unit', align: 'left' },
  { head: 'Basis', align: 'left' },
  { head: 'Source', align: 'left' },
]

/** Every number in use; with a plan's text, its own values in place of the table's. */
export function parameters(text: string | null, options: Options): Answer {
  const opened = text === null ? null : openedPlan(text)
  const plan = opened?.plan ?? null
  const problems = withoutFieldChecks(opened?.problems ?? [])
  const isFailed = opened !== null && plan === null
  const rows = isFailed ? [] : parameterRows(plan ?? undefined)
  const cited = new Set(rows.flatMap(row => row.sources))
  if (options.isJson) {
    const bibliography = Object.fromEntries([...cited].sort().map(key => [key, sources[key]]))
    return jsonAnswer({ plan: plan?.name ?? null, parameters: rows, sources: bibliography, problems }, problems)
  }
  const out = isFailed
    ? ''
    : listing(rows, cited, plan?.name ?? null, options.units ?? plan?.units ?? 'metric', options)
  return answer(out, problemLines(problems), problems)
}

function listing(
  rows: readonly ParameterRow[],
  cited: ReadonlySet<SourceKey>,
  plan: string | null,
  units: Units,
  { isWhy }: { readonly isWhy: boolean },
): string {
  const lines = rows.map(row => tableLine(row, units))
  const [head = '', ...body] = table(columns, lines).split('\n')
  const parts = [
    `Every number in use${plan === null ? '' : ` in ${oneLine(plan)}`}, with the range in which it may lie.`,
    'Basis: measured = read in the source; derived = worked out from it; assumed = our own choice; own = set in the plan.',
  ]
  let group = ''
  for (const [i, row] of rows.entries()) {
    if (row.group !== group) parts.push('', oneLine(row.group), head)
    group = row.group
    parts.push(body[i]!)
    if (isWhy) parts.push(wrapped(why(row, units), 100, '      '))
  }
  const cites = [...cited].map(key => reference(key)).sort()
  return [...parts, '', 'Sources', ...cites.map(each => wrapped(each, 118, '  ')), ''].join('\n')
}

function tableLine({ name, unit, value, low, high, basis, source }: ParameterRow, units: Units): readonly string[] {
  const shown = shownUnit(unit, units)
  return [oneLine(name), shown.text(value), shown.text(low), shown.text(high), shown.unit, basis, source]
}

function why({ about, own, table: built, unit }: ParameterRow, units: Units): string {
  const instead =
    own && built !== null ? `The plan's own value, in place of ${shownUnit(unit, units).text(built)}. ` : ''
  return instead + about
}

function reference(key: SourceKey): string {
  const { authors, year, title, where, seen } = sources[key]
  const how = { read: '', excerpt: ' (seen in part)', memory: ' (not looked up)' }[seen]
  const text = [year === null ? authors : `${authors} ${year}`, title, where].join('. ')
  return key === 'assumed' ? text : text + how
}
