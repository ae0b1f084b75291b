import { readFile } from './read-file'
import { run } from './run'

// A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
    process.exit()
  })
}

const { out, err, exitCode } = await run(process.argv.slice(2), readFile)
process.exitCode = exitCode
process.stderr.write(err)
process.stdout.write(out)
