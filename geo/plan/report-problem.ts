import type { Problem, ProblemCode, ProblemValues, Severity } from '../problem'

/** Takes down one problem. */
export type ReportProblem = (severity: Severity, code: ProblemCode, at: string, values: ProblemValues) => void

/** A plan of ten thousand rows with one mistake in each is told of the first hundred. */
const mostOfAKind = 100

/** Gathers problems, at most a hundred of a code; how many more there were is told last. */
export function problemList(): { readonly report: ReportProblem; finish(): readonly Problem[] } {
  const problems: Problem[] = []
  const counts = new Map<ProblemCode, number>()
  const worst = new Map<ProblemCode, Severity>()
  const report: ReportProblem = (severity, code, at, values) => {
    const count = (counts.get(code) ?? 0) + 1
    counts.set(code, count)
    if (count <= mostOfAKind) problems.push({ code, severity, at, values })
    else if (severity === 'error' || !worst.has(code)) worst.set(code, severity)
  }
  return {
    report,
    finish: () => [
      ...problems,
      ...[...worst].map(
        ([code, severity]): Problem => ({
          code: 'more-problems',
          severity,
          at: '',
          values: { count: counts.get(code)! - mostOfAKind, like: code },
        }),
      ),
    ],
  }
}
