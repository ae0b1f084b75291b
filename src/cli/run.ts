import type { Answer } from './answer'
import { type Request, readArguments } from './args'
import { check } from './check'
import { convert } from './convert'
import { coverage } from './coverage'
import { helpText } from './help'
import { parameters } from './parameters'
import { version } from './version'

/** Text of a file, or why there is none. */
export type ReadFile = (name: string) => Promise<{ readonly text: string } | { readonly fault: string }>

/** Answers the words behind `nestreach`. */
export async function run(words: readonly string[], readFile: ReadFile): Promise<Answer> {
  const request = readArguments(words)
  switch (request.kind) {
    case 'help':
      return { out: helpText(request.command), err: '', exitCode: 0 }
    case 'version':
      return { out: `${version}\n`, err: '', exitCode: 0 }
    case 'wrong':
      return wrongUse(`${request.reason} Try nestreach ${request.command ? `${request.command} ` : ''}--help.`)
    case 'command': {
      if (request.file === null) return answered(request, null)
      const file = await readFile(request.file)
      return 'fault' in file ? wrongUse(file.fault) : answered(request, file.text)
    }
    default:
      return request satisfies never
  }
}

function answered(request: Extract<Request, { kind: 'command' }>, text: string | null): Answer {
  switch (request.command) {
    case 'coverage':
      return coverage(text!, request)
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

function wrongUse(sentence: string): Answer {
  return { out: '', err: `nestreach: ${sentence}\n`, exitCode: 2 }
}
