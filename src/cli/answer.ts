import type { Plan } from '#geo/plan/plan'
import { hasErrors, type Problem } from '#geo/problem'

/** What a command has to say: text for standard output and for the error output, and how it ended. */
export type Answer = { readonly out: string; readonly err: string; readonly exitCode: 0 | 1 | 2 }

/** An answer, and the plan that it leads to; null where there is none. */
export type Planned = { readonly answer: Answer; readonly plan: Plan | null }

export function answer(out: string, err: string, problems: readonly Problem[]): Answer {
  return { out, err, exitCode: hasErrors(problems) ? 1 : 0 }
}

export function jsonAnswer(value: object, problems: readonly Problem[]): Answer {
  return answer(`${JSON.stringify(value, null, 2)}\n`, '', problems)
}
