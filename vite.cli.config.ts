import { readFileSync } from 'node:fs'
import { defineConfig } from 'vite'

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'))

/** The command line (default) or the bench (`--mode bench`) as one file that runs without node_modules. */
export default defineConfig(({ mode }) => {
  const isBench = mode === 'bench'
  return {
    publicDir: false,
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
