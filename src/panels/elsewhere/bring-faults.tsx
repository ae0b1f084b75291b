import { type Problem, problemText } from '#geo/problem'

type Props = { readonly problems: readonly Problem[]; readonly onAgain: () => void }

/** Why nothing can be brought in, and the way to another file. */
export function Faults({ problems, onAgain }: Props) {
  return (
    <div className="stack">
      <ul className="plain-list" role="alert">
        {problems.slice(0, 12).map(problem => (
          <li className="field-fault" key={problem.code + JSON.stringify(problem.values)}>
            {problemText(problem)}
          </li>
        ))}
      </ul>
      <button type="button" onClick={onAgain}>
        Another file
      </button>
    </div>
  )
}
