import { act, screen, waitFor, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { placeOf } from '#geo/plan/home'
import { closePlan, setPage } from '../../../src/state/actions'
import { smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

describe('the first screen', () => {
  test('says what this is, and that nothing is sent anywhere', () => {
    renderApp()
    expect(screen.getByRole('heading', { level: 1, name: 'Nestreach' })).toBeVisible()
    expect(screen.getByText(/see which plantings get enough bees/)).toBeVisible()
    expect(screen.getByText(/nothing you draw or type is sent anywhere/)).toBeVisible()
  })

  test('starts a plan on the bare grid with one press', async () => {
    const { store, user } = renderApp()
    await user.type(screen.getByLabelText('Name of the plan'), 'Hill orchard')
    await user.click(screen.getByRole('button', { name: 'Start the plan' }))
    expect(planOf(store)).toMatchObject({ name: 'Hill orchard', units: 'metric', timeZone: 'Europe/London' })
    expect(planOf(store).seasons).toEqual([{ year: 2026 }])
    // A fixed point all the same: what is typed in metres must not move as more is drawn.
    expect(placeOf(planOf(store))).toEqual([0, 0])
    expect(screen.getByText('Nothing is drawn yet.')).toBeVisible()
  })

  test('starts it on Ground and in the coming spring, whatever was looked at before', async () => {
    const { store, user } = renderApp({ plan: smallPlan(), services: { today: () => '2026-11-25' } })
    act(() => {
      setPage(store, 'coverage')
      closePlan(store)
    })
    expect(screen.getByText(/^Its first season is 2027, the spring to come/)).toBeVisible()
    await user.click(screen.getByRole('button', { name: 'Start the plan' }))
    expect(planOf(store).seasons).toEqual([{ year: 2027 }])
    expect(store.getState().view).toMatchObject({ page: 'ground', year: 2027 })
  })

  test('guesses bee and spring from a typed place, and keeps the place', async () => {
    const { store, user } = renderApp()
    await user.click(screen.getByLabelText('At coordinates that I type'))
    await user.type(screen.getByLabelText('Latitude, longitude'), '52.59, 0.16')
    expect(screen.getByText('Read as 52.59000 N, 0.16000 E.')).toBeVisible()
    expect(screen.getByLabelText('Bee')).toHaveDisplayValue('Red mason bee (Osmia bicornis)')
    await user.click(screen.getByRole('button', { name: 'Start the plan' }))
    expect(placeOf(planOf(store))).toEqual([0.16, 52.59])
    expect(planOf(store)).toMatchObject({ bee: 'osmia-bicornis', bloomRegion: 'southern-england' })
  })

  test('does not start at a place that it cannot read', async () => {
    const { store, user } = renderApp()
    await user.click(screen.getByLabelText('At coordinates that I type'))
    await user.type(screen.getByLabelText('Latitude, longitude'), 'the hill')
    await user.click(screen.getByRole('button', { name: 'Start the plan' }))
    expect(store.getState().document.plan).toBeNull()
    expect(screen.getByText(/“the hill” is not a place/)).toBeVisible()
  })

  test('takes the position of the device with its accuracy, when asked', async () => {
    const { store, user } = renderApp()
    await user.click(screen.getByLabelText('Where this device is'))
    await user.click(screen.getByRole('button', { name: 'Take the position of this device' }))
    expect(await screen.findByText(/good to about 12 m/)).toBeVisible()
    await user.click(screen.getByRole('button', { name: 'Start the plan' }))
    expect(placeOf(planOf(store))).toEqual([-1.7, 52.2])
  })

  test('says why the device gave no position', async () => {
    const locate = () => Promise.reject(new Error('The browser may not give the position.'))
    const { user } = renderApp({ services: { locate } })
    await user.click(screen.getByLabelText('Where this device is'))
    await user.click(screen.getByRole('button', { name: 'Take the position of this device' }))
    expect(await screen.findByText('The browser may not give the position.')).toBeVisible()
  })

  test('says where the chosen bee is at home and that others must not be let go', async () => {
    const { user } = renderApp()
    await user.selectOptions(screen.getByLabelText('Bee'), 'Hornfaced bee (Osmia cornifrons)')
    expect(screen.getByText(/^Native to Japan/)).toBeVisible()
    expect(screen.getByText(/Release only bees that are native where you are/)).toBeVisible()
  })
})

describe('plans on this device', () => {
  const kept = [{ id: 'plan-7', name: 'Old orchard', savedAt: '6 April 2026, 14:02', things: 5 }]

  test('are listed and opened', async () => {
    const readKeptPlan = async () => ({ ok: true as const, value: smallPlan(), problems: [] })
    const { store, user } = renderApp({ services: { listPlans: async () => kept, readKeptPlan } })
    await user.click(
      await screen.findByRole('button', { name: /Old orchard 5 things drawn, saved 6 April 2026, 14:02/ }),
    )
    await waitFor(() => expect(store.getState().document.planId).toBe('plan-7'))
    expect(screen.getByLabelText('Name of the plan')).toHaveValue('Small orchard')
  })

  test('leave for good only after a question', async () => {
    const deletePlan = vi.fn(async () => {})
    const { user } = renderApp({ services: { listPlans: async () => kept, deletePlan } })
    await user.click(await screen.findByRole('button', { name: 'Delete Old orchard' }))
    const dialog = screen.getByRole('dialog', { name: 'Delete “Old orchard”?' })
    await user.click(within(dialog).getByRole('button', { name: 'Keep it' }))
    expect(deletePlan).not.toHaveBeenCalled()
    await user.click(screen.getByRole('button', { name: 'Delete Old orchard' }))
    await user.click(screen.getByRole('button', { name: 'Delete for good' }))
    expect(deletePlan).toHaveBeenCalledExactlyOnceWith('plan-7')
  })
})

describe('files and samples', () => {
  test('a file that cannot be read tells what is wrong with it, and opens nothing', async () => {
    const problem = { code: 'file-empty', severity: 'error', at: '', values: {} } as const
    const { store, user } = renderApp({ services: { openFile: async () => ({ ok: false, problems: [problem] }) } })
    await user.click(screen.getByRole('button', { name: 'Open a plan file' }))
    expect(await screen.findByText(/The file is empty/)).toBeVisible()
    expect(store.getState().document.plan).toBeNull()
  })

  test('a file dialog that is called off changes nothing', async () => {
    const { store, user } = renderApp()
    await user.click(screen.getByRole('button', { name: 'Open a plan file' }))
    expect(store.getState().document.plan).toBeNull()
    expect(screen.queryByRole('alert')).toBeNull()
  })

  test('a sample opens as a plan of its own', async () => {
    const sample = {
      id: 'small',
      name: 'Sample S',
      notes: 'Two rows.',
      open: async () => ({ ok: true as const, value: smallPlan(), problems: [] }),
    }
    const { store, user } = renderApp({ services: { listSamples: async () => [sample] } })
    await user.click(await screen.findByRole('button', { name: /Sample S/ }))
    await waitFor(() => expect(store.getState().document.plan?.name).toBe('Small orchard'))
    expect(store.getState().document.planId).not.toBe('small')
  })
})
