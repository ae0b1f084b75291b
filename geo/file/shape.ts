import type { z } from 'zod'
import { beeIds } from '../data/own'
import { foundText, type Path, pathText, valueAt } from '../plan/place'
import type { Problem } from '../problem'

const typeWords: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a group of members',
  record: 'a group of members',
}

/** What keeps `value` from having `shape`, one problem per place; none when it has it. `base` is where it stands in the file. */
export function shapeProblems(shape: z.ZodType, value: unknown, base: Path): Problem[] {
  const result = shape.safeParse(value)
  if (result.success) return []
  return result.error.issues.flatMap(unfolded).map(issue => problemOf(issue, value, base))
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
      return issue.discriminator === undefined ? 'a number or a group of numbers' : 'a type of geometry, such as “Point”'
    case 'too_big':
      return `a list of ${issue.maximum}`
    case 'too_small':
      return issue.origin === 'string' ? 'a text that is not empty' : `a list of ${issue.minimum}`
    default:
      return 'of another form'
  }
}
