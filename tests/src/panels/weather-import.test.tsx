import { fireEvent, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { seasonOf } from '#geo/plan/plan'
import { smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const table = [
  'Tag;Tmin (°C);Tmax (°C);Regen;Wind (km/h)',
  '01.04.2026;2,5;11,0;0,0;18',
  '02.04.2026;-1,2;9,4;4,2;36',
  '04.04.2026;3,0;abc;0;9',
].join('\n')

async function looked(text = table, services = {}) {
  const app = renderApp({ plan: smallPlan(), services })
  await app.user.click(screen.getByRole('button', { name: 'Bloom and flight' }))
  await app.user.click(screen.getByRole('button', { name: 'Bring in a weather table' }))
  const dialog = within(await screen.findByRole('dialog', { name: 'Weather for 2026' }, { timeout: 15_000 }))
  fireEvent.change(dialog.getByLabelText('Or paste the table here'), { target: { value: text } })
  await app.user.click(dialog.getByRole('button', { name: 'Look at what was pasted' }))
  return { ...app, dialog }
}

describe('a table of weather', () => {
  test('is guessed, shown with its faults by row, and taken in by one undoable step after a restore point', async () => {
    const keepRestorePoint = vi.fn(async () => {})
    const { store, user, dialog } = await looked(table, { keepRestorePoint })
    expect(dialog.getByLabelText('Lowest temperature')).toHaveDisplayValue('Tmin (°C)')
    expect(dialog.getByLabelText('Wind in')).toHaveDisplayValue('km/h')
    expect(dialog.getByLabelText('Decimals')).toHaveDisplayValue('comma: 4,5')
    const faults = within(dialog.getByRole('region', { name: 'What is wrong with its rows' }))
    expect(faults.getByText(/abc/)).toHaveTextContent(/\b4\b/)
    await user.click(dialog.getByRole('button', { name: 'Take in 3 days' }))
    expect(keepRestorePoint).toHaveBeenCalledWith('plan-1', smallPlan(), 'before weather of 2026 was taken in')
    expect(seasonOf(planOf(store), 2026)?.weather?.days).toEqual([
      ['2026-04-01', 2.5, 11, 0, 5],
      ['2026-04-02', -1.2, 9.4, 4.2, 10],
      ['2026-04-04', 3, null, 0, 2.5],
    ])
    expect(store.getState().document.past).toHaveLength(1)
    expect(screen.getByText(/^3 days, 1 to 4 April 2026; 1 day is missing, the first 3 April 2026/)).toBeVisible()
  })

  test('is read anew when a unit or a column is put right', async () => {
    const { store, user, dialog } = await looked('date,low,high\n2026-04-01,36,50\n2026-04-02,41,59')
    await user.selectOptions(dialog.getByLabelText('Temperatures in'), '°F')
    await user.click(dialog.getByRole('button', { name: 'Take in 2 days' }))
    expect(seasonOf(planOf(store), 2026)?.weather?.days).toEqual([
      ['2026-04-01', 2.22, 10, null, null],
      ['2026-04-02', 5, 15, null, null],
    ])
  })

  test('of another year has nothing for this season, and says so', async () => {
    const { dialog } = await looked('date,low,high\n2024-04-01,3,12\n2024-04-02,4,13')
    expect(dialog.getByText(/None of them belongs to season 2026/)).toBeVisible()
    expect(dialog.getByRole('button', { name: 'No day of 2026 in it' })).toBeDisabled()
  })

  test('without dates is refused in words, and another can be given', async () => {
    const { user, dialog } = await looked('apples,pears\n1,2')
    expect(dialog.getByRole('alert')).toHaveTextContent(/date/i)
    await user.click(dialog.getByRole('button', { name: 'Another table' }))
    expect(dialog.getByLabelText('Or paste the table here')).toBeVisible()
  })

  test('is not taken in where no restore point can be kept', async () => {
    const keepRestorePoint = () => Promise.reject(new Error('the disk is full'))
    const { store, user, dialog } = await looked(table, { keepRestorePoint })
    await user.click(dialog.getByRole('button', { name: 'Take in 3 days' }))
    expect(await dialog.findByText(/Nothing was changed.*the disk is full/)).toBeVisible()
    expect(planOf(store)).toEqual(smallPlan())
  })
})

test('weather is removed by one undoable step', async () => {
  const plan = smallPlan()
  const seasons = plan.seasons.map(season => ({
    ...season,
    weather: { days: [['2026-04-01', 2, 12, 0, null] as const] },
  }))
  const { store, user } = renderApp({ plan: { ...plan, seasons } })
  await user.click(screen.getByRole('button', { name: 'Bloom and flight' }))
  expect(screen.getByText('1 day, 1 April 2026; none missing; no wind.')).toBeVisible()
  await user.click(screen.getByRole('button', { name: 'Remove the weather' }))
  expect(seasonOf(planOf(store), 2026)).not.toHaveProperty('weather')
  expect(store.getState().document.past).toHaveLength(1)
})
