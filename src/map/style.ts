/** Coverage from which on a plant counts as having enough. */
export const enough = 0.9

/** Lower bounds of the five steps of coverage. The last begins where a plant has enough, so it alone is not hatched. */
export const coverSteps = [0, 0.25, 0.5, 0.75, enough] as const

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

export type Palette = {
  readonly paper: string
  readonly ink: string
  readonly ink2: string
  readonly line: string
  readonly accent: string
  readonly cover: readonly string[]
  readonly font: string
}

const fallback: Palette = {
  paper: '#FBFAF6',
  ink: '#1E2B2F',
  ink2: '#5B6A6E',
  line: '#D9D6CC',
  accent: '#0F6B5C',
  cover: ['#E8E4D5', '#B9CDBF', '#7FAE9C', '#3E8574', '#0E5447'],
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
    font: style.fontFamily || fallback.font,
  }
}
