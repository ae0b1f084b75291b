import react from '@vitejs/plugin-react'
import { configDefaults, defineConfig } from 'vitest/config'
import { offline } from './vite.offline.ts'

// One file for the app build and for Vitest, so that both resolve modules in the same way.
export default defineConfig({
  base: './',
  plugins: [react(), offline()],
  build: { target: 'es2022', sourcemap: false, chunkSizeWarningLimit: 700 },
  worker: { format: 'es' },
  test: {
    reporters: ['default', './tests/support/closing-line.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, 'tests/src/**', 'tests/browser/**'],
          env: { TZ: 'UTC' },
          // One world for all files of a worker: the engine keeps no state between calls, and loading it anew costs more than most tests.
          isolate: false,
          maxWorkers: '100%',
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'page',
          environment: 'jsdom',
          include: ['tests/src/**/*.test.{ts,tsx}'],
          setupFiles: ['tests/support/page-setup.ts'],
          env: { TZ: 'UTC' },
          maxWorkers: '100%',
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/browser-setup.ts'],
          fileParallelism: false,
          testTimeout: 90_000,
          hookTimeout: 90_000,
        },
      },
    ],
  },
})
