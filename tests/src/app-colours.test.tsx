import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const css = readFileSync('src/app.css', 'utf8')

function colours(selector: string): Readonly<Record<string, string>> {
  const start = css.indexOf(`${selector} {`)
  expect(start).toBeGreaterThanOrEqual(0)
  const block = css.slice(start, css.indexOf('}', start))
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map(([, name, value]) => [name, value]),
  )
}

const paper = colours(':root')
const themes = {
  paper,
  dark: { ...paper, ...colours(':root[data-theme="dark"]') },
  sun: { ...paper, ...colours(':root[data-theme="sun"]') },
}

/** Relative luminance of WCAG 2. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map(at => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number]
  return (light + 0.05) / (dark + 0.05)
}

describe.each(Object.entries(themes))('the look %s', (_, theme) => {
  test.each([
    ['ink', 'paper'],
    ['ink', 'paper-2'],
    ['ink', 'field'],
    ['ink-2', 'paper'],
    ['ink-2', 'paper-2'],
    ['ink-2', 'field'],
    ['accent', 'paper'],
    ['accent', 'paper-2'],
    ['accent', 'field'],
    ['on-accent', 'accent'],
    ['danger', 'paper'],
    ['danger', 'paper-2'],
  ])('lets %s be read on %s: 4.5 to 1', (text, ground) => {
    expect(contrast(theme[text]!, theme[ground]!)).toBeGreaterThanOrEqual(4.5)
  })

  test.each(['paper', 'paper-2', 'field'])('shows the edge of a field on %s: 3 to 1', ground => {
    expect(contrast(theme.edge!, theme[ground]!)).toBeGreaterThanOrEqual(3)
  })

  test('keeps the steps of coverage in order of darkness, for those who see greys', () => {
    const steps = [0, 1, 2, 3, 4].map(step => luminance(theme[`cover-${step}`]!))
    const falling = steps.slice(1).map((value, i) => Math.sign(value - steps[i]!))
    expect(new Set(falling).size).toBe(1)
  })
})

test('the paper look has the colours that were settled', () => {
  expect(paper).toMatchObject({
    paper: '#fbfaf6',
    ink: '#1e2b2f',
    'ink-2': '#5b6a6e',
    line: '#d9d6cc',
    accent: '#0f6b5c',
    'cover-0': '#e8e4d5',
    'cover-4': '#0e5447',
  })
})
