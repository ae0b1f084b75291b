import { type FormEvent, useId, useState } from 'react'
import { putCheckAside, takeCheckBack } from '#geo/plan/edits-timing'
import { seasonOf } from '#geo/plan/plan'
import { setAsideOf } from '#geo/plan/set-aside'
import { isFieldCheck, type Problem, problemText } from '#geo/problem'
import { Disclosure } from '../parts/disclosure'
import { counted } from '../text/words'
import { useEdit, usePlan, useYear } from './hooks'

/** Sets a field check aside with a reason; nothing for problems of other sorts, which stay as long as they are there. */
export function SetAsideButton({ problem }: { readonly problem: Problem }) {
  const year = useYear()
  const edit = useEdit()
  const id = useId()
  const [reason, setReason] = useState<string | null>(null)
  if (!isFieldCheck(problem)) return null
  if (reason === null) {
    return (
      <button type="button" className="link" onClick={() => setReason('')}>
        Set aside…<span className="unseen"> {problemText(problem)}</span>
      </button>
    )
  }
  const keep = (event: FormEvent) => {
    event.preventDefault()
    if (reason.trim() === '') return
    edit(putCheckAside(year, { code: problem.code, at: problem.at, reason: reason.trim() }))
    setReason(null)
  }
  return (
    <form className="stack" onSubmit={keep}>
      <div className="field">
        <label htmlFor={id}>Why it does not matter here</label>
        <input
          id={id}
          type="text"
          autoComplete="off"
          maxLength={300}
          required
          value={reason}
          onChange={event => setReason(event.target.value)}
        />
        <p className="field-note">Kept with season {year}; you can take it back.</p>
      </div>
      <div className="actions">
        <button type="submit">Set aside</button>
        <button type="button" className="quiet" onClick={() => setReason(null)}>
          Cancel
        </button>
      </div>
    </form>
  )
}

/** What was set aside this season, with the reasons, each to be taken back. */
export function SetAsideList({ problems }: { readonly problems: readonly Problem[] }) {
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const season = seasonOf(plan, year)
  const aside = problems.flatMap(problem => {
    const found = setAsideOf(season, problem)
    return found === null ? [] : [{ problem, found }]
  })
  if (aside.length === 0) return null
  return (
    <Disclosure summary={`${counted(aside.length, 'check')} set aside`}>
      <ul className="plain-list problem-list" aria-label="Checks set aside">
        {aside.map(({ problem, found }) => (
          <li className="problem" key={`${found.code} ${found.at}`}>
            <p>{problemText(problem)}</p>
            <p>
              <strong>Set aside:</strong> {found.reason}
            </p>
            <button type="button" className="link" onClick={() => edit(takeCheckBack(year, found))}>
              Take back<span className="unseen"> {problemText(problem)}</span>
            </button>
          </li>
        ))}
      </ul>
    </Disclosure>
  )
}
