import { copyFileSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { defineConfig } from 'vite'

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'))

/** The command line (default) or the bench (`--mode bench`) as one file that runs without node_modules. */
export default defineConfig(({ mode }) => {
  const isBench = mode === 'bench'
  return {
    publicDir: false,
    plugins: [solverBeside()],
    define: { NESTREACH_VERSION: JSON.stringify(version) },
    ssr: { noExternal: true },
    build: {
      ssr: isBench ? 'tests/bench/bench.ts' : 'src/cli/main.ts',
      outDir: isBench ? 'dist-bench' : 'dist-cli',
      target: 'node20',
      emptyOutDir: true,
      rolldownOptions: {
        output: {
          entryFileNames: isBench ? 'bench.mjs' : 'nestreach.mjs',
          codeSplitting: false,
          banner: '#!/usr/bin/env node',
        },
      },
    },
  }
})

/** The solver's machine code stands beside the file that runs: it is loaded only where a proof is asked for. */
function solverBeside() {
  return {
    name: 'solver-beside',
    writeBundle({ dir }: { dir?: string | undefined }) {
      const runtime = createRequire(import.meta.url).resolve('highs/runtime')
      copyFileSync(runtime, join(dir ?? '', 'highs.wasm'))
    },
  }
}
