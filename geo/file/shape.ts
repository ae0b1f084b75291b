import type { z } from 'zod'
import { beeIds } from '../data/own'
import { foundText, type Path, pathText, valueAt } from '../plan/place'
import type { Problem, Severity } from '../problem'

const typeWords: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a group of members',
  record: 'a group of members',
}

/** Faults of one value that are put into words; a list of a million words for numbers has a million. */
const mostListed = 100

/**
 * What keeps `value` from having `shape`: one problem per place, after a hundred the number of those left; none when it
 * has it. `base` is where it stands in the file.
 */
export function shapeProblems(shape: z.ZodType, value: unknown, base: Path): Problem[] {
  const issues = issuesOf(shape, value)
  if (issues === null) return [faultAt('too-many-faults', base, value)]
  const listed = issues.slice(0, mostListed).flatMap(unfolded)
  const problems = listed.map(issue => problemOf(issue, value, base))
  return issues.length > mostListed ? [...problems, moreProblems(issues.length - mostListed, 'error')] : problems
}

/** null where there are more than the library can pass on: it hands them up as arguments, of which browsers allow few. */
function issuesOf(shape: z.ZodType, value: unknown): readonly z.core.$ZodIssue[] | null {
  try {
    return shape.safeParse(value).error?.issues ?? []
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** Stands for problems that are not listed. */
function moreProblems(count: number, severity: Severity): Problem {
  return { code: 'more-problems', severity, at: '', values: { count } }
}

/** The first `most` problems, and how many more there are. */
export function capped(problems: readonly Problem[], most: number): Problem[] {
  const told = problems.filter(({ code }) => code !== 'more-problems')
  const untold = problems.reduce(
    (sum, { code, values }) => sum + (code === 'more-problems' ? Number(values.count) : 0),
    0,
  )
  const count = Math.max(0, told.length - most) + untold
  return count > 0 ? [...told.slice(0, most), moreProblems(count, problems.at(-1)!.severity)] : told
}

/** Where one choice of several fits but for something within it, that is what is wrong; else the choice as a whole. */
function unfolded(issue: z.core.$ZodIssue): z.core.$ZodIssue[] {
  if (issue.code !== 'invalid_union') return [issue]
  const near = issue.errors.find(inner => inner.length > 0 && inner.every(({ path }) => path.length > 0))
  return near?.map(inner => ({ ...inner, path: [...issue.path, ...inner.path] })) ?? [issue]
}

function problemOf(issue: z.core.$ZodIssue, root: unknown, base: Path): Problem {
  const inner = issue.path.map(key => (typeof key === 'symbol' ? String(key) : key))
  const found = valueAt(root, inner)
  const path = pathText([...base, ...inner])
  const problem = (code: Problem['code'], values: Problem['values']): Problem => ({
    code,
    severity: 'error',
    at: path,
    values: { path, found: foundText(found), ...values },
  })
  const expected = expectedWords(issue)
  if (found === undefined) return problem('member-missing', { expected })
  if (issue.code !== 'invalid_value') return problem('wrong-type', { expected })
  const isBee = issue.values.length === beeIds.length && beeIds.every(id => issue.values.includes(id))
  return isBee ? problem('unknown-bee', { known: beeIds.join(', ') }) : problem('wrong-value', { allowed: expected })
}

function expectedWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return typeWords[issue.expected] ?? `of type ${issue.expected}`
    case 'invalid_value': {
      const values = issue.values.map(value => (typeof value === 'string' ? `“${value}”` : String(value)))
      return values.length === 1 ? values[0]! : `one of ${values.join(', ')}`
    }
    case 'invalid_union':
      return issue.discriminator === undefined
        ? 'a number or a group of numbers'
        : 'a type of geometry, such as “Point”'
    case 'too_big':
      return `a list of ${issue.maximum}`
    case 'too_small':
      return issue.origin === 'string' ? 'a text that is not empty' : `a list of ${issue.minimum}`
    default:
      return 'of another form'
  }
}

/** A fault that keeps a file from being opened, with its place and what was found there. */
export function faultAt(code: Problem['code'], path: Path, found: unknown, values: Problem['values'] = {}): Problem {
  const at = pathText(path)
  return { code, severity: 'error', at, values: { path: at || 'The file', found: foundText(found), ...values } }
}
