import { isFieldCheck, type Problem, problemText } from '#geo/problem'
import { listed, oneLine } from '#geo/wording/plain'
import { counted } from './words'

const severities = ['error', 'warning', 'note'] as const

/** Worst first, else in the order in which they were found. */
export function sorted(problems: readonly Problem[]): readonly Problem[] {
  return severities.flatMap(severity => problems.filter(problem => problem.severity === severity))
}

/** One problem a line, as beside a table. */
export function problemLines(problems: readonly Problem[]): string {
  return sorted(problems)
    .map(problem => `${problem.severity}: ${oneLine(problemText(problem))} [${problem.code}${place(problem)}]\n`)
    .join('')
}

/** Problems one by one with all that is known of them. */
export function problemList(problems: readonly Problem[]): string {
  return sorted(problems)
    .map(problem => {
      const indent = ' '.repeat(9)
      const figures = Object.entries(problem.values).map(([name, value]) => `${name} ${oneLine(String(value))}`)
      const about = `${problem.code}${place(problem)}${figures.length > 0 ? `: ${figures.join(', ')}` : ''}`
      return `${problem.severity.padEnd(9)}${oneLine(problemText(problem))}\n${indent}${about}\n`
    })
    .join('\n')
}

/** "1 error, 2 warnings and 1 note"; "no problems". */
export function problemCount(problems: readonly Problem[]): string {
  const counts = severities.flatMap(severity => {
    const count = problems.filter(problem => problem.severity === severity).length
    return count === 0 ? [] : [counted(count, severity)]
  })
  return counts.length === 0 ? 'no problems' : listed(counts)
}

function place({ at }: Problem): string {
  return at === '' ? '' : ` at ${oneLine(at)}`
}

/** Lines beside a result: field checks do not bear on it, so they are only counted. */
export function linesBeside(problems: readonly Problem[]): string {
  const ofStations = problems.filter(isFieldCheck)
  const lines = problemLines(problems.filter(problem => !isFieldCheck(problem)))
  if (ofStations.length === 0) return lines
  const severity = ofStations.some(problem => problem.severity === 'warning') ? 'warning' : 'note'
  const found = `${counted(ofStations.length, 'field check')} of stations and dates found something`
  return `${lines}${severity}: ${found}; see nestreach check. The coverage does not hang on it.\n`
}
