import type { ReactNode } from 'react'
import { type Problem, problemText, type Severity } from '#geo/problem'

const severityNames: Readonly<Record<Severity, string>> = {
  error: 'Stops the count',
  warning: 'Doubtful',
  note: 'Note',
}

/** Full, half or empty square beside the word, so that severity needs no colour. */
function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <span className={`severity severity-${severity}`}>
      <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
        <rect
          x="2"
          y="2"
          width="10"
          height="10"
          fill={severity === 'error' ? 'currentColor' : 'none'}
          stroke="currentColor"
          strokeWidth="1.6"
        />
        {severity === 'warning' ? <path d="M2 12V2h5v10z" fill="currentColor" /> : null}
      </svg>
      {severityNames[severity]}
    </span>
  )
}

/** Problems in sentences; where a thing can be pointed at, pressing selects it. */
export function ProblemList(props: {
  readonly problems: readonly Problem[]
  /** What the thing is called that it points at. */
  readonly nameOf?: (problem: Problem) => string | null
  readonly onSelect?: (id: string) => void
  readonly textOf?: (problem: Problem) => string
  /** What else can be done about a problem. */
  readonly below?: (problem: Problem) => ReactNode
}) {
  const { problems, nameOf, onSelect, textOf = problemText, below } = props
  return (
    <ul className="plain-list problem-list">
      {problems.map((problem, i) => {
        const name = nameOf?.(problem) ?? null
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two equal problems are told apart by nothing else
          <li key={`${problem.code} ${problem.at} ${i}`} className="problem">
            <SeverityMark severity={problem.severity} />
            <p>{textOf(problem)}</p>
            {name !== null && onSelect ? (
              <button type="button" className="link" onClick={() => onSelect(problem.at)}>
                Show {name}
              </button>
            ) : null}
            {below?.(problem)}
          </li>
        )
      })}
    </ul>
  )
}
