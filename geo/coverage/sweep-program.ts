import { type Code, define, f64, f64x2, i32, loopWhile, moduleOf, type Names, when } from './assembler'

/*
 * The inner loops of `PlainSweep`, two points in one instruction and four in one round; see there for what they do.
 * Parameters that name arrays are their addresses in bytes; the table of decay stands at address 0. The last round of
 * a run reads beyond its end and drops what does not belong to it. Sums and roundings follow the plain loops one for
 * one, so both give the same bits.
 */

/** Bytes of a double; of the four that one round takes; of a run's three numbers. */
const size = 8
const round = 4 * size
const runSize = 12

/** Entries of the table, a power of two: an entry's number is cut to it, so that nothing beyond is ever read. */
export const tableLength = 2 ** 13

/** Doubles after the table in which a round puts its entries' numbers aside. */
export const asideLength = 8

const place = { px: 'f64', py: 'f64', limit: 'f64', toNearest: 'f64', c1: 'f64', c2: 'f64', c3: 'f64' } as const
const spread = {
  atX: 'v128',
  atY: 'v128',
  most: 'v128',
  magic: 'v128',
  first: 'v128',
  second: 'v128',
  third: 'v128',
  one: 'v128',
} as const
const point = { dx: 'v128', dy: 'v128', square: 'v128', distance: 'v128', entry: 'v128', left: 'v128' } as const
const walk = { xs: 'i32', ys: 'i32', rest: 'i32', from: 'i32' } as const

function spreadOut({ get, set }: Names<keyof typeof spread | keyof typeof place>): Code[] {
  return [
    set('atX', f64x2.splat(get('px'))),
    set('atY', f64x2.splat(get('py'))),
    set('most', f64x2.splat(get('limit'))),
    set('magic', f64x2.splat(get('toNearest'))),
    set('first', f64x2.splat(get('c1'))),
    set('second', f64x2.splat(get('c2'))),
    set('third', f64x2.splat(get('c3'))),
    set('one', f64x2.of(1, 1)),
  ]
}

type Measuring = keyof typeof point | keyof typeof spread | keyof typeof walk

/** Leaves the decay of the two points `offset` bytes on in `left`, 0 beyond the range. */
function measureTwo({ get, set, keep }: Names<Measuring>, offset: number): Code[] {
  const { add, sub, mul } = f64x2
  const aside = 8 * tableLength + 2 * offset
  const entryOf = (index: 0 | 1) =>
    i32.shiftLeft(i32.and(i32.load(aside + 8 * index, i32.of(0)), i32.of(tableLength - 1)), i32.of(3))
  const series = (...terms: Code[]) => terms.reduce((sum, term) => add(mul(sum, get('left')), term))
  return [
    set('dx', sub(f64x2.load(offset, get('xs')), get('atX'))),
    set('dy', sub(f64x2.load(offset, get('ys')), get('atY'))),
    set('square', add(mul(get('dx'), get('dx')), mul(get('dy'), get('dy')))),
    set('distance', f64x2.sqrt(get('square'))),
    set('left', sub(sub(keep('entry', add(get('distance'), get('magic'))), get('magic')), get('distance'))),
    f64x2.store(aside, i32.of(0), get('entry')),
    set('entry', f64x2.loadSecond(entryOf(1), f64x2.loadFirst(0, entryOf(0)))),
    set('left', mul(get('entry'), series(get('third'), get('second'), get('first'), get('one')))),
    set('left', f64x2.and(get('left'), f64x2.isAtMost(get('square'), get('most')))),
  ]
}

const runs = { run: 'i32', end: 'i32', figure: 'i32' } as const
type Walking = keyof typeof walk | keyof typeof runs

/** Address of double number `index` of an array. */
function doubleAt(array: Code, index: Code): Code {
  return i32.add(array, i32.shiftLeft(index, i32.of(3)))
}

/**
 * Goes through runs `run` to `end`, each with its figure; `pointers` walk along a run from their starts. `four` does
 * one round; in the last round of a run, `cut` makes 0 of what lies beyond it.
 */
function throughRuns<Pointer extends string>(
  { get, set }: Names<Pointer | Walking>,
  pointers: readonly (readonly [name: Pointer, start: Code])[],
  steps: {
    readonly before?: readonly Code[]
    readonly four: (cut: (half: 0 | 1, value: Code) => Code) => readonly Code[]
    readonly after?: readonly Code[]
  },
): Code {
  const advance = (name: Pointer | Walking, bytes: number) => set(name, i32.add(get(name), i32.of(bytes)))
  const isWithin = (half: 0 | 1) =>
    f64x2.isLess(f64x2.of(2 * half, 2 * half + 1), f64x2.splat(f64.fromI32(get('rest'))))
  return loopWhile(i32.isLess(get('run'), get('end')), [
    set('from', i32.load(0, get('run'))),
    set('rest', i32.sub(i32.load(4, get('run')), get('from'))),
    ...pointers.map(([name, start]) => set(name, start)),
    ...(steps.before ?? []),
    loopWhile(i32.isAtLeast(get('rest'), i32.of(4)), [
      ...steps.four((_, value) => value),
      ...pointers.map(([name]) => advance(name, round)),
      set('rest', i32.sub(get('rest'), i32.of(4))),
    ]),
    when(
      get('rest'),
      steps.four((half, value) => f64x2.and(value, isWithin(half))),
    ),
    ...(steps.after ?? []),
    advance('run', runSize),
    advance('figure', size),
  ])
}

const measure = define(
  { ...runs, x: 'i32', y: 'i32', decays: 'i32', ...place },
  { ...walk, ...spread, ...point, to: 'i32', sum: 'v128', other: 'v128' },
  null,
  names => {
    const { get, set } = names
    const pointers = [
      ['xs', doubleAt(get('x'), get('from'))] as const,
      ['ys', doubleAt(get('y'), get('from'))] as const,
      ['to', doubleAt(get('decays'), i32.load(8, get('run')))] as const,
    ]
    const two = (half: 0 | 1, sum: 'sum' | 'other', cut: (half: 0 | 1, value: Code) => Code) => [
      ...measureTwo(names, 2 * size * half),
      set('left', cut(half, get('left'))),
      f64x2.store(2 * size * half, get('to'), get('left')),
      set(sum, f64x2.add(get(sum), get('left'))),
    ]
    return [
      ...spreadOut(names),
      throughRuns(names, pointers, {
        before: [set('sum', f64x2.of(0, 0)), set('other', f64x2.of(0, 0))],
        four: cut => [...two(0, 'sum', cut), ...two(1, 'other', cut)],
        after: [
          set('sum', f64x2.add(get('sum'), get('other'))),
          f64.store(0, get('figure'), f64.add(f64x2.lane(0, get('sum')), f64x2.lane(1, get('sum')))),
        ],
      }),
    ]
  },
)

const rounding = { factor: 'v128', shifts: 'v128' } as const

/** Decays times the run's figure, rounded by the shift. */
function rounded({ get }: Names<keyof typeof rounding>, decays: Code): Code {
  return f64x2.sub(f64x2.add(f64x2.mul(decays, get('factor')), get('shifts')), get('shifts'))
}

const add = define(
  { ...runs, supplied: 'i32', decays: 'i32', shift: 'f64' },
  { ...walk, to: 'i32', ...rounding },
  null,
  names => {
    const { get, set } = names
    const pointers = [
      ['to', doubleAt(get('supplied'), get('from'))] as const,
      ['xs', doubleAt(get('decays'), i32.load(8, get('run')))] as const,
    ]
    const two = (offset: number) => {
      const service = rounded(names, f64x2.load(offset, get('xs')))
      return f64x2.store(offset, get('to'), f64x2.add(f64x2.load(offset, get('to')), service))
    }
    return [
      set('shifts', f64x2.splat(get('shift'))),
      throughRuns(names, pointers, {
        before: [
          set('factor', f64x2.loadTwice(0, get('figure'))),
          // A run that is to receive nothing is passed over.
          set('rest', i32.mul(get('rest'), f64.isOther(f64.load(0, get('figure')), f64.of(0)))),
        ],
        // Decays beyond a run's end were stored as 0, and adding 0 changes no bit.
        four: () => [two(0), two(2 * size)],
      }),
    ]
  },
)

const sumTiles = define(
  { tile: 'i32', end: 'i32', starts: 'i32', stale: 'i32', totals: 'i32', supplied: 'i32', wanted: 'f64' },
  {
    from: 'i32',
    rest: 'i32',
    limit: 'v128',
    two: 'v128',
    sum: 'v128',
    other: 'v128',
    served: 'v128',
    otherServed: 'v128',
    all: 'f64',
    met: 'f64',
    one: 'f64',
  },
  null,
  ({ get, set, keep }) => {
    const four = (i32Code: Code) => i32.shiftLeft(i32Code, i32.of(2))
    const start = (offset: number) => i32.load(offset, i32.add(get('starts'), four(get('tile'))))
    const total = () => i32.add(get('totals'), i32.shiftLeft(get('tile'), i32.of(4)))
    const isStale = () => i32.add(get('stale'), get('tile'))
    const both = (value: Code) => f64.add(f64x2.lane(0, value), f64x2.lane(1, value))
    const zero = f64x2.of(0, 0)
    const addTwo = (offset: number, sum: 'sum' | 'other', served: 'served' | 'otherServed') => [
      set(sum, f64x2.add(get(sum), keep('two', f64x2.load(offset, get('from'))))),
      set(served, f64x2.add(get(served), f64x2.lesser(get('limit'), get('two')))),
    ]
    return [
      set('limit', f64x2.splat(get('wanted'))),
      loopWhile(i32.isLess(get('tile'), get('end')), [
        when(i32.load8(0, isStale()), [
          set('from', start(0)),
          set('rest', i32.sub(start(4), get('from'))),
          set('from', i32.add(get('supplied'), i32.shiftLeft(get('from'), i32.of(3)))),
          ...(['sum', 'other', 'served', 'otherServed'] as const).map(name => set(name, zero)),
          loopWhile(i32.isAtLeast(get('rest'), i32.of(4)), [
            ...addTwo(0, 'sum', 'served'),
            ...addTwo(2 * size, 'other', 'otherServed'),
            set('from', i32.add(get('from'), i32.of(round))),
            set('rest', i32.sub(get('rest'), i32.of(4))),
          ]),
          set('sum', f64x2.add(get('sum'), get('other'))),
          set('served', f64x2.add(get('served'), get('otherServed'))),
          set('all', both(get('sum'))),
          set('met', both(get('served'))),
          loopWhile(get('rest'), [
            set('one', f64.load(0, get('from'))),
            set('all', f64.add(get('all'), get('one'))),
            set('met', f64.add(get('met'), f64.min(get('one'), get('wanted')))),
            set('from', i32.add(get('from'), i32.of(size))),
            set('rest', i32.sub(get('rest'), i32.of(1))),
          ]),
          f64.store(0, total(), get('met')),
          f64.store(size, total(), get('all')),
          i32.store8(0, isStale(), i32.of(0)),
        ]),
        set('tile', i32.add(get('tile'), i32.of(1))),
      ]),
    ]
  },
)

/** The program's bytes. */
export function sweepProgram(): Uint8Array<ArrayBuffer> {
  return moduleOf({ measure, add, sumTiles })
}
