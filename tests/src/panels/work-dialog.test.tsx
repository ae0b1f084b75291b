import { screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { seasonTasks } from '#geo/calendar/tasks'
import { setReleases } from '#geo/plan/edits-seasons'
import { smallPlan } from '../../support/builders'
import { renderApp } from './render-app'

const opened = async (options: Parameters<typeof renderApp>[0] = {}) => {
  const page = renderApp({ plan: smallPlan(), ...options })
  await page.user.click(screen.getByRole('button', { name: 'Menu' }))
  await page.user.click(screen.getByRole('button', { name: 'Work and calendar of the season' }))
  return { ...page, dialog: screen.getByRole('dialog', { name: 'Work of the season 2026' }) }
}

describe('the work of the season', () => {
  test('stands by date, with why, what to do and what to beware of', async () => {
    const { dialog } = await opened()
    const titles = within(dialog)
      .getAllByRole('heading', { level: 3 })
      .map(({ textContent }) => textContent)
    const outcome = seasonTasks(smallPlan(), 2026)
    expect(titles).toEqual(outcome.ok && outcome.value.map(({ title }) => title))
    const release = within(dialog).getByRole('listitem', { name: 'Set out cocoons at North gate' })
    expect(release).toHaveTextContent('6 April 2026')
    expect(release).toHaveTextContent('8 days (6 to 12) later')
    expect(release).toHaveTextContent('60 female and 108 male cocoons')
    expect(
      within(release).getByRole('complementary', { name: 'Cautions: Set out cocoons at North gate' }),
    ).toHaveTextContent(/Release only bees/)
    expect(within(dialog).getByRole('listitem', { name: 'Round of 1 station' })).toHaveTextContent(
      /^14 April to \d+ May 2026, every 7 days/,
    )
  })

  test('is saved as a calendar; the dialog closes on what was saved, and stays where it was called off', async () => {
    const saveCalendar = vi.fn(async (): Promise<string | null> => null)
    const { user } = await opened({ services: { saveCalendar } })
    const save = () => user.click(screen.getByRole('button', { name: 'Save as a calendar file' }))
    await save()
    expect(screen.getByRole('dialog')).toBeVisible()
    saveCalendar.mockResolvedValueOnce('Saved as work.ics.')
    await save()
    expect(screen.queryByRole('dialog')).toBeNull()
    expect(screen.getByText('Saved as work.ics.')).toBeVisible()
    const outcome = seasonTasks(smallPlan(), 2026)
    expect(saveCalendar).toHaveBeenLastCalledWith(smallPlan(), 2026, outcome.ok && outcome.value)
  })

  test('says what is not known, and offers no file of nothing', async () => {
    const { dialog } = await opened({ plan: setReleases(2026, 'station-1', []).apply(smallPlan()) })
    expect(dialog).toHaveTextContent(/No cocoons are set out in 2026, so it is not known when bees fly/)
    expect(within(dialog).getAllByRole('heading', { level: 3 })).toHaveLength(2)
  })

  test('of an empty season is none', async () => {
    const { dialog } = await opened({ plan: smallPlan({ seasons: [{ year: 2026 }] }) })
    expect(dialog).toHaveTextContent('No work can be dated yet.')
    expect(dialog).toHaveTextContent(/There is nothing to put into a calendar of 2026/)
    expect(within(dialog).queryByRole('button', { name: 'Save as a calendar file' })).toBeNull()
  })

  test('is reached from the page of bloom and flight too', async () => {
    const { user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Bloom and flight' }))
    await user.click(screen.getByRole('button', { name: 'Work of the season 2026' }))
    expect(screen.getByRole('dialog', { name: 'Work of the season 2026' })).toBeVisible()
  })
})
