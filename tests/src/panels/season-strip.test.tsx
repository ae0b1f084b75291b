import { act, fireEvent, screen, within } from '@testing-library/react'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { modelOf } from '#geo/report/model'
import { dayOfSeason } from '#geo/time/day'
import { setView, setYear } from '../../../src/state/actions'
import type { PlannerStore } from '../../../src/state/store'
import { smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const on = (date: string) => dayOfSeason(date, 2026)
const slider = () => screen.getByRole('slider', { name: 'Day of the season' })
const strip = () => within(screen.getByRole('region', { name: 'Bloom and flight over the season' }))
const press = (name: string) => fireEvent.click(strip().getByRole('button', { name }))
const dayNow = (store: PlannerStore) => store.getState().view.day

/** What the engine would answer for the day that is looked at. */
function answerDay(store: PlannerStore): void {
  const made = modelOf(planOf(store), store.getState().view.year)
  const { day } = store.getState().view
  if (!made.ok || day === null) throw new Error('no day')
  const value = made.value.day(day)
  act(() =>
    store.setState(({ results }) => ({ results: { ...results, day: { status: 'ready', value, revision: 1 } } })),
  )
}

/** Media queries of which those that match `holds` hold. */
function media(holds: RegExp): void {
  vi.stubGlobal('matchMedia', (query: string) => ({
    matches: holds.test(query),
    addEventListener() {},
    removeEventListener() {},
  }))
}

afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('the season strip', () => {
  test('teaches where nothing blooms or flies yet', () => {
    renderApp({ plan: smallPlan({ seasons: [{ year: 2026 }] }) })
    expect(strip().getByText(/appear here once there are bloom dates/)).toBeVisible()
    expect(screen.queryByRole('slider', { name: 'Day of the season' })).toBeNull()
  })

  test('chooses days by keys and reads them in words', () => {
    const { store } = renderApp({ plan: smallPlan() })
    expect(slider()).toHaveAttribute('aria-valuetext', expect.stringContaining('choose a day with the arrow keys'))
    fireEvent.keyDown(slider(), { key: 'Home' })
    const first = dayNow(store)!
    expect(slider()).toHaveAttribute('aria-valuenow', String(first))
    for (const key of ['ArrowRight', 'ArrowUp', 'PageUp', 'ArrowLeft']) fireEvent.keyDown(slider(), { key })
    expect(dayNow(store)).toBe(first + 8)
    fireEvent.keyDown(slider(), { key: 'End' })
    const last = dayNow(store)!
    fireEvent.keyDown(slider(), { key: 'PageUp' })
    expect(dayNow(store)).toBe(last)
    act(() => setView(store, { day: on('2026-04-24') }))
    expect(slider().getAttribute('aria-valuetext')).toMatch(/^24 April 2026: Apple in full bloom/)
    expect(strip().getByText(/^24 April 2026: Apple in full bloom and Clover bank/)).toBeVisible()
    fireEvent.keyDown(slider(), { key: 'Escape' })
    expect(dayNow(store)).toBeNull()
  })

  test('says what the bees bring on the day, once that is known and only for that day', () => {
    const { store } = renderApp({ plan: smallPlan() })
    act(() => setView(store, { day: on('2026-04-24') }))
    expect(strip().queryByText(/The bees bring/)).toBeNull()
    answerDay(store)
    expect(strip().getByText(/The bees bring \d+% of what the open flowers want\.$/)).toBeVisible()
    act(() => setView(store, { day: on('2026-04-25') }))
    expect(strip().queryByText(/The bees bring/)).toBeNull()
  })

  test('is pressed to choose and pointed at to read', () => {
    const { store } = renderApp({ plan: smallPlan() })
    const box = { left: 0, width: 1132, top: 0, height: 90 } as DOMRect
    vi.spyOn(slider(), 'getBoundingClientRect').mockReturnValue(box)
    fireEvent.pointerMove(slider(), { clientX: 700 })
    expect(strip().getByText(/2026: .*at work\.$/)).toBeVisible()
    expect(dayNow(store)).toBeNull()
    fireEvent.pointerDown(slider(), { clientX: 700, buttons: 1 })
    const chosen = dayNow(store)!
    expect(chosen).not.toBeNull()
    fireEvent.pointerMove(slider(), { clientX: 800, buttons: 1 })
    expect(dayNow(store)).toBeGreaterThan(chosen)
    // The names at the left are no days.
    fireEvent.pointerDown(slider(), { clientX: 40, buttons: 1 })
    expect(dayNow(store)).toBeGreaterThan(chosen)
    press('Whole season')
    expect(dayNow(store)).toBeNull()
  })

  test('steps day by day, and zooms by buttons, keys and wheel', () => {
    const { store } = renderApp({ plan: smallPlan() })
    press('The next day')
    const first = dayNow(store)!
    expect(strip().getByRole('button', { name: 'The day before' })).toBeDisabled()
    press('The next day')
    press('The next day')
    press('The day before')
    expect(dayNow(store)).toBe(first + 1)
    expect(strip().getByRole('button', { name: 'Show more days' })).toBeDisabled()
    press('Show fewer days')
    expect(strip().getByRole('button', { name: 'Later days' })).toBeEnabled()
    fireEvent.keyDown(slider(), { key: '0' })
    expect(strip().queryByRole('button', { name: 'Later days' })).toBeNull()
    fireEvent.keyDown(slider(), { key: '+' })
    press('Later days')
    press('Earlier days')
    fireEvent.keyDown(slider(), { key: '-' })
    expect(strip().queryByRole('button', { name: 'Later days' })).toBeNull()
    const isLeftAlone = fireEvent.wheel(slider(), { deltaY: -100 })
    const isTaken = !fireEvent.wheel(slider(), { deltaY: -100, ctrlKey: true })
    expect([isLeftAlone, isTaken]).toEqual([true, true])
    expect(strip().getByRole('button', { name: 'Later days' })).toBeVisible()
    expect(dayNow(store)).toBe(first + 1)
  })

  test('plays the days and pauses, and stops at the end or when a day is taken by hand', () => {
    vi.useFakeTimers()
    const { store } = renderApp({ plan: smallPlan() })
    act(() => setView(store, { day: on('2026-04-20') }))
    press('Play')
    act(() => void vi.advanceTimersByTime(1600))
    expect(dayNow(store)).toBe(on('2026-04-23'))
    press('Pause')
    act(() => void vi.advanceTimersByTime(5000))
    expect(dayNow(store)).toBe(on('2026-04-23'))
    press('Play')
    fireEvent.keyDown(slider(), { key: 'ArrowRight' })
    act(() => void vi.advanceTimersByTime(5000))
    expect(dayNow(store)).toBe(on('2026-04-24'))
    fireEvent.keyDown(slider(), { key: 'End' })
    const last = dayNow(store)!
    fireEvent.keyDown(slider(), { key: 'ArrowLeft' })
    press('Play')
    act(() => void vi.advanceTimersByTime(5000))
    expect(dayNow(store)).toBe(last)
    expect(strip().getByRole('button', { name: 'Play' })).toBeVisible()
    press('Play')
    act(() => void vi.advanceTimersByTime(600))
    expect(dayNow(store)).toBe(Number(slider().getAttribute('aria-valuemin')) + 1)
    const folded = dayNow(store)
    press('Fold the season')
    act(() => void vi.advanceTimersByTime(5000))
    expect(dayNow(store)).toBe(folded)
  })

  test('offers steps by hand alone to those who asked for no motion', () => {
    media(/reduced-motion/)
    renderApp({ plan: smallPlan() })
    expect(strip().queryByRole('button', { name: 'Play' })).toBeNull()
    expect(strip().getByRole('button', { name: 'The next day' })).toBeVisible()
  })

  test('keeps the day when another season is looked at', () => {
    const { store } = renderApp({ plan: smallPlan() })
    act(() => setView(store, { day: on('2026-04-24') }))
    act(() => setYear(store, 2025))
    expect(strip().getByText(/^24 April 2025: Apple in full bloom/)).toBeVisible()
  })

  test('begins folded on a small screen and leaves the wide screen’s fold as it is', () => {
    media(/max-width/)
    const { store } = renderApp({ plan: smallPlan() })
    expect(screen.queryByRole('slider', { name: 'Day of the season' })).toBeNull()
    press('Unfold the season')
    expect(slider()).toBeVisible()
    expect(store.getState().view).toMatchObject({ stripFolded: false, sheet: 'third' })
    press('Fold the season')
    expect(store.getState().view.stripFolded).toBe(false)
  })
})

describe('the season’s sheet', () => {
  test('has the days, who works where on the chosen one, and can be copied, saved and printed', async () => {
    const copied: string[] = []
    const saved: string[] = []
    const print = vi.fn()
    vi.stubGlobal('print', print)
    const { store, user } = renderApp({
      plan: smallPlan(),
      services: {
        copyText: async text => void copied.push(text),
        saveTable: async (name, text) => {
          saved.push(name, text)
          return 'Saved.'
        },
      },
    })
    act(() => setView(store, { day: on('2026-04-24') }))
    answerDay(store)
    press('Table')
    const sheet = within(screen.getByRole('dialog', { name: 'Season 2026: Small orchard' }))
    expect(sheet.getByRole('heading', { name: 'Who works where on 24 April 2026' })).toBeVisible()
    const stations = within(sheet.getByRole('table', { name: 'Stations on 24 April 2026' }))
    expect(
      stations.getByRole('row', {
        name: /^North gate \d+ Clover bank \d+%, Row 2 \d+%, Row 1 \d+% and blossom nobody drew \d+%$/,
      }),
    ).toBeVisible()
    const days = within(sheet.getByRole('table', { name: 'The season day by day' }))
    expect(
      days.getByRole('row', { name: /^24 April 2026 Apple in full bloom, Clover bank \d+% open \d+$/ }),
    ).toBeVisible()
    await user.click(sheet.getByRole('button', { name: 'Copy the table' }))
    expect(copied[0]).toMatch(/\n24 April 2026\tApple in full bloom/)
    await user.click(sheet.getByRole('radio', { name: 'Week by week' }))
    expect(sheet.getByRole('row', { name: /^20 to 26 April 2026 Apple in full bloom/ })).toBeVisible()
    await user.click(sheet.getByRole('button', { name: 'Save as CSV' }))
    expect(saved[0]).toBe('Small orchard season 2026')
    expect(saved[1]).toContain('2026-04-24,1,')
    await user.click(sheet.getByRole('button', { name: 'Print' }))
    expect(print).toHaveBeenCalledOnce()
    await user.click(sheet.getByRole('button', { name: 'Close' }))
    expect(screen.queryByRole('dialog')).toBeNull()
  })

  test('begins with weeks on a phone', () => {
    media(/max-width/)
    renderApp({ plan: smallPlan() })
    press('Unfold the season')
    press('Table')
    expect(screen.getByRole('radio', { name: 'Week by week' })).toBeChecked()
  })
})
