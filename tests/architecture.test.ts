import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { importCycles, importsOf, resolved, type Sources, wrongContent, wrongImports } from './support/architecture'

const root = new URL('../', import.meta.url)

function sourcesIn(folder: string): Sources {
  const names = readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: 'utf8' })
  const paths = names.map(name => `${folder}/${name.replaceAll('\\', '/')}`).filter(path => /\.tsx?$/.test(path))
  return new Map(paths.sort().map(path => [path, readFileSync(new URL(path, root), 'utf8')]))
}

const program: Sources = new Map([...sourcesIn('geo'), ...sourcesIn('src')])
const tests = sourcesIn('tests')
/** Read by Vitest, which asks for their default export. */
const readByVitest = ['tests/support/closing-line.ts', 'tests/support/browser-setup.ts']

describe('the program', () => {
  test('is looked at in full', () => {
    expect(program.size).toBeGreaterThan(100)
    expect(tests.size).toBeGreaterThan(30)
  })

  test('imports only downwards, and packages only where they belong', () => {
    expect([...program].flatMap(([path, source]) => wrongImports(path, source))).toEqual([])
  })

  test('imports nothing that is not there', () => {
    const known = new Set([...program.keys()].map(path => path.replace(/\.tsx?$/, '')))
    const lost = [...program].flatMap(([path, source]) =>
      importsOf(source)
        .filter(specifier => !specifier.endsWith('.css'))
        .filter(specifier => !known.has(resolved(path, specifier) ?? [...known][0]!))
        .map(specifier => `${path}: ${specifier}`),
    )
    expect(lost).toEqual([])
  })

  test('has no circles of imports', () => {
    expect(importCycles(program)).toEqual([])
  })

  test('keeps its files small, named, and free of clock, chance and screen where they compute', () => {
    expect([...program].flatMap(([path, source]) => wrongContent(path, source))).toEqual([])
  })
})

test('no test file leaves tests out or grows too long', () => {
  const own = [...tests].filter(([path]) => path !== 'tests/architecture.test.ts')
  const wrong = own.flatMap(([path, source]) => wrongContent(path, source))
  const allowed = readByVitest.map(path => `${path} has a default export`)
  expect(wrong.filter(fault => !allowed.includes(fault))).toEqual([])
})

describe('the check of imports', () => {
  test('sees every way to import', () => {
    const source = [
      "import a from 'one'",
      "import type { B } from './two'",
      'import {',
      '  c,',
      '  type D,',
      "} from '../three'",
      "import './four.css'",
      "export { e } from './five'",
      "export * from './six'",
      "export type { F } from './seven'",
      "const g = await import('./eight')",
      "import * as h from 'nine'",
      "import i, { j as k } from 'ten'",
      "type L = import('./eleven').L",
      "// import x from 'not-this'",
      '/**',
      " * import y from 'nor-this'",
      ' */',
      "const text = 'a word from the field'",
    ].join('\n')
    expect([...importsOf(source)].sort()).toEqual(
      [
        'one',
        './two',
        '../three',
        './four.css',
        './five',
        './six',
        './seven',
        './eight',
        'nine',
        'ten',
        './eleven',
      ].sort(),
    )
  })

  test.each([
    ['geo/plan/x.ts', "import { evaluate } from '../report/evaluate'"],
    ['geo/space/x.ts', "import { dayOfSeason } from '../time/day'"],
    ['geo/data/x.ts', "import type { Plan } from '../plan/plan'"],
    ['geo/report/x.ts', "import { readPlan } from '../file/read'"],
    ['geo/report/x.ts', "import { store } from '../../src/state/store'"],
    ['geo/coverage/x.ts', "import { Plan } from '#geo/plan/plan'"],
    ['geo/coverage/x.ts', "import { lineString } from '@turf/turf'"],
    ['geo/time/x.ts', "import { readFileSync } from 'node:fs'"],
    ['geo/report/x.ts', "const solver = await import('highs')"],
    ['src/state/x.ts', "import { Plan } from '../../geo/plan/plan'"],
    ['src/state/store.ts', "import { use } from 'react'"],
    ['src/state/x.ts', "import { percent } from '../text/words'"],
    ['src/text/x.ts', "import type { Page } from '../state/store'"],
    ['src/parts/x.tsx', "import { engine } from '../worker/engine'"],
    ['src/worker/x.ts', "import { percent } from '../text/words'"],
    ['src/worker/engine.worker.ts', "import { store } from '../state/store'"],
    ['src/storage/x.ts', "import { engine } from '../worker/engine'"],
    ['src/map/tools/x.ts', "import { useState } from 'react'"],
    ['src/map/x.ts', "import { services } from '../panels/services'"],
    ['src/panels/x.tsx', "import L from 'leaflet'"],
    ['src/panels/x.tsx', "import { App } from '../app'"],
    ['src/panels/x.tsx', "import { createStore } from 'zustand'"],
    ['src/cli/x.ts', "import { percent } from '../text/words'"],
    ['src/cli/x.ts', "import { useState } from 'react'"],
    ['src/elsewhere/x.ts', ''],
  ])('finds the fault planted in %s: %s', (path, source) => {
    expect(wrongImports(path, source)).toHaveLength(1)
  })

  test.each([
    ['geo/report/x.ts', "import { planeOf } from '../space/plane'\nimport type { Problem } from '../problem'"],
    ['geo/file/x.ts', "import { z } from 'zod'"],
    ['src/state/use-planner.ts', "import { use } from 'react'\nimport { useStore } from 'zustand'"],
    ['src/worker/engine.worker.ts', "import { expose } from 'comlink'\nimport { EngineApi } from './protocol'"],
    ['src/map/map-view.tsx', "import 'leaflet/dist/leaflet.css'\nimport './map.css'\nimport L from 'leaflet'"],
    ['src/panels/x.tsx', "import { Table } from '../parts/table'\nimport { percent } from '../text/words'"],
    ['src/app.tsx', "import { MapView } from './map/map-view'\nimport './app.css'"],
    [
      'src/main.tsx',
      "import { createRoot } from 'react-dom/client'\nimport { startAutosave } from './storage/autosave'",
    ],
    ['src/cli/x.ts', "import { readFile } from 'node:fs/promises'\nimport { readPlan } from '#geo/file/read'"],
  ])('lets pass what is right in %s', (path, source) => {
    expect(wrongImports(path, source)).toEqual([])
  })

  test('finds circles, also through types and on demand, and tells each once', () => {
    const sources = new Map([
      ['geo/plan/a.ts', "import type { B } from './b'"],
      ['geo/plan/b.ts', "const c = import('./c')"],
      ['geo/plan/c.ts', "export { a } from './a'"],
      ['geo/plan/d.ts', "import { a } from './a'"],
    ])
    expect(importCycles(sources)).toEqual(['geo/plan/a.ts > geo/plan/b.ts > geo/plan/c.ts > geo/plan/a.ts'])
    sources.set('geo/plan/c.ts', '')
    expect(importCycles(sources)).toEqual([])
  })
})

describe('the check of contents', () => {
  test.each([
    ['geo/plan/x.ts', 'const now = Date.now()'],
    ['geo/plan/x.ts', 'const now = new Date()'],
    ['geo/plan/x.ts', 'const start = performance.now()'],
    ['geo/plan/x.ts', 'const x = Math.random()'],
    ['geo/plan/x.ts', "console.log('x')"],
    ['geo/plan/x.ts', 'const words = value.toLocaleString()'],
    ['src/panels/x.tsx', 'export default function X() {}'],
    ['src/panels/x.tsx', 'export { X as default }'],
    ['src/panels/x.tsx', "export { X } from './y'"],
    ['src/panels/x.tsx', "export * from './y'"],
    ['src/panels/index.ts', 'export const x = 1'],
    ['src/panels/PlanCard.tsx', 'export const x = 1'],
    ['tests/x.test.ts', "test.only('x', () => {})"],
    ['tests/x.test.ts', "describe.skip('x', () => {})"],
    ['tests/x.test.ts', "test.concurrent.skipIf(true)('x', () => {})"],
    ['tests/x.test.ts', "test.todo('x')"],
    ['tests/x.test.ts', "xit('x', () => {})"],
  ])('finds the fault planted in %s: %s', (path, source) => {
    expect(wrongContent(path, source)).toHaveLength(1)
  })

  test.each([
    ['geo/plan/x.ts', '// not Math.random: see random.ts\nconst date = new Date(0)'],
    ['src/state/x.ts', 'const year = new Date().getFullYear()\nexport const x = 1\nexport { x as y }'],
    ['tests/x.test.ts', "test.each([1])('x', () => {})\ntest('only one, skip none', () => {})"],
  ])('lets pass what is right in %s', (path, source) => {
    expect(wrongContent(path, source)).toEqual([])
  })
  test('finds a file that has grown too long, but lets tables of data grow', () => {
    const long = (lines: number) => 'x\n'.repeat(lines)
    expect(wrongContent('src/panels/x.tsx', long(500))).toEqual(['src/panels/x.tsx has 500 lines'])
    expect(wrongContent('src/panels/x.tsx', long(499))).toEqual([])
    expect(wrongContent('geo/data/x.ts', long(600))).toEqual([])
  })
})
