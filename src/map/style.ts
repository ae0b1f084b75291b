/** Coverage from which on a plant counts as having enough. */
export const enough = 0.9

/** Lower bounds of the five steps of coverage. The last begins where a plant has enough, so it alone is not hatched. */
const coverSteps = [0, 0.25, 0.5, 0.75, enough] as const

export type CoverClass = 0 | 1 | 2 | 3 | 4

/** The steps in words, for the legend; the same order. */
export const coverWords: readonly { readonly range: string; readonly words: string }[] = [
  { range: 'under 25 %', words: 'little or nothing' },
  { range: '25 to 50 %', words: 'under half' },
  { range: '50 to 75 %', words: 'over half' },
  { range: '75 to 90 %', words: 'nearly enough' },
  { range: '90 % and more', words: 'enough' },
]

export function coverClass(coverage: number): CoverClass {
  if (coverage >= coverSteps[4]) return 4
  if (coverage >= coverSteps[3]) return 3
  if (coverage >= coverSteps[2]) return 2
  return coverage >= coverSteps[1] ? 1 : 0
}

/** A change of this many points counts as one, and as a large one. */
const changeSteps = { told: 0.05, large: 0.2 } as const

/** The steps of change in words, from large losses to large gains. */
export const changeWords: readonly string[] = [
  'lost 20 points or more',
  'lost 5 to 20 points',
  'changed by under 5 points',
  'gained 5 to 20 points',
  'gained 20 points or more',
]

/** 0 and 1: lost; 2: hardly changed; 3 and 4: gained. */
export function changeClass(change: number): CoverClass {
  const { told, large } = changeSteps
  if (Math.abs(change) < told) return 2
  if (change < 0) return change <= -large ? 0 : 1
  return change >= large ? 4 : 3
}

export type Palette = {
  readonly paper: string
  readonly ink: string
  readonly ink2: string
  readonly line: string
  readonly accent: string
  readonly cover: readonly string[]
  /** Change between seasons, from large losses to large gains. */
  readonly change: readonly string[]
  readonly font: string
}

const fallback: Palette = {
  paper: '#FBFAF6',
  ink: '#1E2B2F',
  ink2: '#5B6A6E',
  line: '#D9D6CC',
  accent: '#0F6B5C',
  cover: ['#E8E4D5', '#B9CDBF', '#7FAE9C', '#3E8574', '#0E5447'],
  change: ['#5E3C99', '#B2ABD2', '#F7F7F7', '#FDB863', '#E66101'],
  font: 'sans-serif',
}

/** The colours of the theme in force, as the page's style sheet gives them. */
export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element)
  const read = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise
  return {
    paper: read('--paper', fallback.paper),
    ink: read('--ink', fallback.ink),
    ink2: read('--ink-2', fallback.ink2),
    line: read('--line', fallback.line),
    accent: read('--accent', fallback.accent),
    cover: fallback.cover.map((colour, step) => read(`--cover-${step}`, colour)),
    change: fallback.change.map((colour, step) => read(`--change-${step}`, colour)),
    font: style.fontFamily || fallback.font,
  }
}
