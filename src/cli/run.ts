import { writePlan } from '#geo/file/write'
import type { Solver } from '#geo/stocking/solver'
import type { Answer, Planned } from './answer'
import { type Request, readArguments } from './args'
import { calendar } from './calendar'
import { check } from './check'
import { compare } from './compare'
import { convert } from './convert'
import { coverage } from './coverage'
import { helpText } from './help'
import { parameters } from './parameters'
import { project } from './project'
import { release } from './release'
import { stock } from './stock'
import { suggest } from './suggest'
import { version } from './version'

/** Text of a file, or why there is none. */
export type ReadFile = (name: string) => Promise<{ readonly text: string } | { readonly fault: string }>

/** Saves a text; the sentence says why where that cannot be. */
export type WriteFile = (name: string, text: string) => Promise<{ readonly fault: string | null }>

/** What the program needs of the machine it runs on. */
export type Outside = {
  readonly readFile: ReadFile
  readonly writeFile: WriteFile
  /** A general solver, loaded only where it is asked for. */
  readonly solver: () => Promise<Solver>
  /** The moment that it is, in UTC: `2026-03-01T12:00:00.000Z`. */
  readonly now: () => string
}

/** Answers the words behind `nestreach`. */
export async function run(words: readonly string[], outside: Outside): Promise<Answer> {
  const request = readArguments(words)
  switch (request.kind) {
    case 'help':
      return { out: helpText(request.command), err: '', exitCode: 0 }
    case 'version':
      return { out: `${version}\n`, err: '', exitCode: 0 }
    case 'wrong':
      return wrongUse(`${request.reason} Try nestreach ${request.command ? `${request.command} ` : ''}--help.`)
    case 'command': {
      if (request.file === null) return answered(request, null, outside)
      const file = await outside.readFile(request.file)
      return 'fault' in file ? wrongUse(file.fault) : answered(request, file.text, outside)
    }
    default:
      return request satisfies never
  }
}

async function answered(
  request: Extract<Request, { kind: 'command' }>,
  text: string | null,
  { writeFile, solver, now }: Outside,
): Promise<Answer> {
  switch (request.command) {
    case 'coverage':
      return coverage(text!, request)
    case 'suggest':
      return saved(await suggest(text!, request, solver), request.write, writeFile)
    case 'stock':
      return saved(stock(text!, request), request.write, writeFile)
    case 'release':
      return saved(release(text!, request), request.write, writeFile)
    case 'compare':
      return compare(text!, request)
    case 'project':
      return project(text!, request)
    case 'calendar':
      return calendar(text!, request, now())
    case 'check':
      return check(text!, request)
    case 'parameters':
      return parameters(text, request)
    case 'convert':
      return convert(text!, request)
    default:
      return request.command satisfies never
  }
}

/** An answer, once the plan that it leads to is saved. */
async function saved({ plan, answer }: Planned, name: string | null, writeFile: WriteFile): Promise<Answer> {
  if (plan === null || name === null) return answer
  const { fault } = await writeFile(name, writePlan(plan))
  return fault === null ? answer : wrongUse(fault)
}

function wrongUse(sentence: string): Answer {
  return { out: '', err: `nestreach: ${sentence}\n`, exitCode: 2 }
}
