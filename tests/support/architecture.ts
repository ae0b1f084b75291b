/** Rules of DEVELOPERS.md on how the program's files may lean on each other, as functions of path and source text. */

/** Parts of the program from the bottom up; parts of one line do not import each other. */
const order: readonly (readonly string[])[] = [
  ['geo/wording'],
  ['geo/problem', 'geo/random'],
  ['geo/space', 'geo/time'],
  ['geo/data'],
  ['geo/plan'],
  ['geo/weather'],
  ['geo/bloom', 'geo/flight'],
  ['geo/coverage'],
  ['geo/timing'],
  ['geo/stocking'],
  ['geo/siting'],
  ['geo/report'],
  ['geo/seasons'],
  ['geo/calendar'],
  ['geo/file'],
  ['src/state', 'src/text'],
  ['src/parts'],
  ['src/worker', 'src/storage'],
  ['src/map', 'src/panels', 'src/print'],
  ['src/app', 'src/here-services'],
  ['src/main'],
]

/** Parts that may import less than all that stands below them; `geo` = all of geo. */
const narrower: Readonly<Record<string, readonly string[]>> = {
  'src/cli': ['geo'],
  'src/worker': ['geo', 'src/state'],
  'src/storage': ['geo', 'src/state', 'src/text'],
}

/** Files with a rule of their own: the engine runs in a worker, where nothing but its own messages is known. */
const single: Readonly<Record<string, readonly string[]>> = {
  'src/worker/engine.worker': ['geo', 'src/worker/protocol', 'src/worker/kept-plan', 'src/worker/load-highs'],
}

/** Outside packages by the path that may use them, the longest path first; everything else may use none. */
const packages: readonly (readonly [path: string, allowed: readonly string[]])[] = [
  ['geo/space', ['@turf/turf', 'proj4']],
  ['geo/time', ['temporal-polyfill']],
  ['geo/file', ['zod', 'papaparse', 'fflate']],
  ['geo/calendar', ['ical-generator']],
  ['src/state/use-planner', ['zustand', 'react']],
  ['src/state', ['zustand']],
  ['src/worker/load-highs', ['highs']],
  ['src/worker', ['comlink']],
  ['src/storage', ['idb']],
  ['src/map/tools', []],
  ['src/map', ['leaflet', 'react']],
  ['src/panels', ['react', 'react-dom']],
  ['src/parts', ['react', 'react-dom']],
  ['src/print', ['react', 'react-dom']],
  ['src/app', ['react']],
  ['src/main', ['react', 'react-dom']],
  ['src/cli/solver', ['highs']],
  ['src/cli', ['node:']],
]

/** Source texts by path from the project's root, such as `geo/plan/plan.ts`. */
export type Sources = ReadonlyMap<string, string>

/** Without comments that stand on lines of their own. */
export function withoutComments(source: string): string {
  return source.replace(/^[ \t]*\/\*[\s\S]*?\*\/[ \t]*$/gm, '').replace(/^[ \t]*\/\/.*$/gm, '')
}

const statement = /^[ \t]*(?:import|export)\b(?:[\w*\s{},$]|type\b)*?\bfrom\s*(['"])(.+?)\1/gm
const bare = /^[ \t]*import\s*(['"])(.+?)\1/gm
const called = /\bimport\s*\(\s*(['"`])(.+?)\1/g

/** Everything a source imports: types, side effects, on demand and what it exports onwards. */
export function importsOf(source: string): readonly string[] {
  const text = withoutComments(source)
  return [statement, bare, called].flatMap(pattern => [...text.matchAll(pattern)].map(match => match[2]!))
}

/** The file an import names, without its ending; null for a package. */
export function resolved(from: string, specifier: string): string | null {
  const plain = specifier.replace(/\?.*$/, '')
  if (plain.startsWith('#geo/')) return plain.slice(1)
  if (!plain.startsWith('.')) return null
  const parts = from.split('/').slice(0, -1)
  for (const step of plain.split('/')) {
    if (step === '..') parts.pop()
    else if (step !== '.') parts.push(step)
  }
  return stem(parts.join('/'))
}

function stem(path: string): string {
  return path.replace(/\.(tsx?|css)$/, '')
}

function partOf(path: string): string {
  return stem(path).split('/').slice(0, 2).join('/')
}

function isWithin(path: string, folder: string): boolean {
  return path === folder || path.startsWith(`${folder}/`)
}

function allowedFor(path: string): readonly string[] {
  const part = partOf(path)
  const own = single[stem(path)]
  if (own !== undefined) return own
  const level = order.findIndex(parts => parts.includes(part))
  const below = narrower[part] ?? order.slice(0, level).flat()
  return [part, ...below]
}

/** Imports that go against the order, reach geo in the wrong way or take a package where it may not be used. */
export function wrongImports(path: string, source: string): readonly string[] {
  const part = partOf(path)
  const isKnown = order.flat().includes(part) || part in narrower
  if (!isKnown) return [`${path}: ${part} has no place in the order of parts`]
  return importsOf(source).flatMap(specifier => {
    const target = resolved(path, specifier)
    const fault = target === null ? packageFault(path, specifier) : fileFault(path, specifier, target)
    return fault === null ? [] : [`${path}: ${specifier} ${fault}`]
  })
}

function packageFault(path: string, specifier: string): string | null {
  const allowed = packages.find(([folder]) => isWithin(stem(path), folder))?.[1] ?? []
  const isAllowed = allowed.some(name => (name === 'node:' ? specifier.startsWith(name) : isWithin(specifier, name)))
  return isAllowed ? null : 'is a package that may not be used here'
}

function fileFault(path: string, specifier: string, target: string): string | null {
  const isGeo = path.startsWith('geo/')
  if (isGeo && specifier.startsWith('#geo/')) return 'should be relative within geo'
  if (!isGeo && target.startsWith('geo/') && !specifier.startsWith('#geo/')) return 'should be written #geo/'
  const isAllowed = allowedFor(path).some(part => isWithin(target, part))
  return isAllowed ? null : 'stands beside or above what imports it'
}

/** Circles of imports, each told once, from its first file in the alphabet. */
export function importCycles(sources: Sources): readonly string[] {
  const files = new Map([...sources.keys()].map(path => [stem(path), path]))
  const targets = (path: string): readonly string[] =>
    importsOf(sources.get(path)!).flatMap(specifier => {
      const target = resolved(path, specifier)
      const file = target === null || specifier.endsWith('.css') ? undefined : files.get(target)
      return file === undefined ? [] : [file]
    })
  const cycles: string[] = []
  const done = new Set<string>()
  const trail: string[] = []
  const visit = (path: string): void => {
    const at = trail.indexOf(path)
    if (at >= 0) cycles.push([...trail.slice(at), path].join(' > '))
    if (at >= 0 || done.has(path)) return
    trail.push(path)
    for (const target of targets(path)) visit(target)
    trail.pop()
    done.add(path)
  }
  for (const path of [...sources.keys()].sort()) visit(path)
  return cycles
}

type Ban = { readonly pattern: RegExp; readonly what: string }

const everywhere: readonly Ban[] = [
  { pattern: /^\s*export\s+default\b|\bas\s+default\b/m, what: 'has a default export' },
  {
    pattern: /^\s*export\s+(?:type\s+)?(?:\*|\{[^}]*\})[\w\s]*\bfrom\b/m,
    what: 'only hands on what another file exports',
  },
  { pattern: /\bTO[D]O\b|\bFIX[M]E\b/, what: 'holds a note of work left undone' },
]

const inGeo: readonly Ban[] = [
  {
    pattern: /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bperformance\.|\bTemporal\.Now\b/,
    what: 'reads the clock',
  },
  { pattern: /\bMath\.random\b|\bcrypto\b/, what: 'draws numbers without a seed' },
  {
    pattern: /\bconsole\b|\bprocess\b|\bdocument\.|\bwindow\.|\bfetch\(|\bset(?:Timeout|Interval)\b/,
    what: 'touches the world outside',
  },
  { pattern: /\btoLocale\w*\(/, what: 'depends on the language of the machine' },
]

const inTests: readonly Ban[] = [
  {
    pattern:
      /\b(?:test|it|describe|suite|bench)(?:\.\w+)*\.(?:only|skip|skipIf|runIf|todo|fails)\b|\b(?:x|f)(?:it|describe|test)\(/,
    what: 'leaves tests out',
  },
]

/** The most lines of a file that is not a table of data. */
export const mostLines = 500

/** What a file may not hold, whatever it imports. */
export function wrongContent(path: string, source: string): readonly string[] {
  const text = withoutComments(source)
  const bans = [...everywhere, ...(path.startsWith('geo/') ? inGeo : []), ...(path.startsWith('tests/') ? inTests : [])]
  const faults = bans.filter(({ pattern }) => pattern.test(text)).map(({ what }) => what)
  const lines = source.trimEnd().split('\n').length
  if (lines >= mostLines && !path.startsWith('geo/data/')) faults.push(`has ${lines} lines`)
  if (/(^|\/)index\.tsx?$/.test(path)) faults.push('is named index')
  if (!/^[a-z0-9]+([.-][a-z0-9]+)*\.tsx?$/.test(path.split('/').at(-1)!)) faults.push('is not named in kebab-case')
  return faults.map(fault => `${path} ${fault}`)
}
