import { readFile } from './read-file'
import { run } from './run'
import { solver } from './solver'
import { writeFile } from './write-file'

// A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
    process.exit()
  })
}

try {
  const { out, err, exitCode } = await run(process.argv.slice(2), {
    readFile,
    writeFile,
    solver,
    now: () => new Date().toISOString(),
  })
  process.exitCode = exitCode
  process.stderr.write(err)
  process.stdout.write(out)
} catch (error) {
  // The codes below tell of the plan and of its use; a mistake of ours must not be taken for either.
  process.exitCode = 70
  process.stderr.write(`nestreach: a mistake of the program itself; nothing was changed.\n${(error as Error).stack}\n`)
}
