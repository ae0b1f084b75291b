import { screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { copiedSeason } from '../../../src/panels/frame/copied-season'
import { smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

describe('the header', () => {
  test('renames the plan, and undo says what it takes back', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    const field = screen.getByLabelText('Name of the plan')
    await user.clear(field)
    await user.type(field, 'Hill orchard{Enter}')
    expect(planOf(store).name).toBe('Hill orchard')
    await user.click(screen.getByRole('button', { name: 'Undo: rename plan' }))
    expect(planOf(store).name).toBe('Small orchard')
    await user.click(screen.getByRole('button', { name: 'Redo: rename plan' }))
    expect(planOf(store).name).toBe('Hill orchard')
  })

  test('undoes by keys, but not while text is being typed', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: /^Row 1/ }))
    await user.click(screen.getByRole('button', { name: 'Delete' }))
    screen.getByLabelText('Name of the plan').focus()
    await user.keyboard('{Control>}z{/Control}')
    expect(planOf(store).features).toHaveLength(4)
    screen.getByRole('button', { name: 'Menu' }).focus()
    await user.keyboard('{Control>}z{/Control}')
    expect(planOf(store).features).toHaveLength(5)
    await user.keyboard('{Control>}{Shift>}z{/Shift}{/Control}')
    expect(planOf(store).features).toHaveLength(4)
  })

  test('says what was saved where and when, and what to do where it failed', async () => {
    const { store } = renderApp({ plan: smallPlan() })
    store.setState({ saving: { status: 'saved', at: '14:02', reason: '' } })
    expect(await screen.findByText('Saved on this device at 14:02')).toBeVisible()
    store.setState({ saving: { status: 'failed', at: '14:02', reason: 'There is no room left.' } })
    expect(
      await screen.findByText(/^Not saved on this device: There is no room left\. Last saved at 14:02/),
    ).toBeVisible()
  })
})

describe('seasons', () => {
  test('are chosen, and added as a copy with every date moved', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.selectOptions(screen.getByLabelText('Season'), '2025')
    expect(store.getState().view.year).toBe(2025)
    await user.selectOptions(screen.getByLabelText('Season'), 'Add a season…')
    const dialog = within(screen.getByRole('dialog', { name: 'Seasons' }))
    expect(dialog.getByLabelText('Year of the new season')).toHaveValue('2027')
    await user.click(dialog.getByRole('button', { name: 'Add the season' }))
    const added = planOf(store).seasons.find(season => season.year === 2027)
    expect(added?.bloom?.apple?.first).toBe('2027-04-17')
    expect(store.getState().view.year).toBe(2027)
  })

  test('of a year that is there already are not added again', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.selectOptions(screen.getByLabelText('Season'), 'Add a season…')
    const dialog = within(screen.getByRole('dialog', { name: 'Seasons' }))
    await user.clear(dialog.getByLabelText('Year of the new season'))
    await user.type(dialog.getByLabelText('Year of the new season'), '2025{Enter}')
    expect(dialog.getByText('The plan already has a season 2025.')).toBeVisible()
    await user.click(dialog.getByRole('button', { name: 'Add the season' }))
    expect(planOf(store).seasons).toHaveLength(2)
  })

  test('copied over a leap day keep the day of the season, and leave records, lots and what was seen behind', () => {
    const copy = copiedSeason(
      {
        year: 2024,
        bloom: { apple: { first: '2024-03-01', full: '2024-03-08', end: '2024-03-20', observed: ['full'] } },
        stations: { s: { tubes: 60, releases: [{ date: '2024-02-25', females: 5, lot: 'A-24' }] } },
        weather: { days: [['2024-03-01', 1, 2, 0, 0]] },
        records: { s: { visits: [{ date: '2024-05-01', capped: 3 }] } },
      },
      2025,
    )
    expect(copy).toEqual({
      year: 2025,
      bloom: { apple: { first: '2025-03-02', full: '2025-03-09', end: '2025-03-21' } },
      stations: { s: { tubes: 60, releases: [{ date: '2025-02-25', females: 5 }] } },
    })
  })
})

describe('the menu', () => {
  test('folds on Escape and gives the focus back', async () => {
    const { user } = renderApp({ plan: smallPlan() })
    const button = screen.getByRole('button', { name: 'Menu' })
    await user.click(button)
    expect(button).toHaveAttribute('aria-expanded', 'true')
    await user.keyboard('{Escape}')
    expect(button).toHaveAttribute('aria-expanded', 'false')
    expect(button).toHaveFocus()
  })

  test('saves a file and says where it went', async () => {
    const saveFile = vi.fn(async () => 'Saved as Small orchard.plan.geojson.')
    const { user } = renderApp({ plan: smallPlan(), services: { saveFile } })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByRole('button', { name: 'Save as a file' }))
    expect(await screen.findByText('Saved as Small orchard.plan.geojson.')).toBeVisible()
  })

  test('changes units and look at once', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByLabelText('Feet and acres'))
    expect(planOf(store).units).toBe('us')
    expect(screen.getByText(/^2 plantings .* (acres?|sq ft) in 2026/)).toBeVisible()
    await user.click(screen.getByLabelText('Dark, for night counts'))
    expect(document.documentElement.dataset.theme).toBe('dark')
  })

  test('takes an own address for the ground only with its three places', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByRole('button', { name: 'Ground of the map' }))
    const dialog = within(screen.getByRole('dialog', { name: 'Ground of the map' }))
    await user.click(dialog.getByLabelText('Pictures from an address of my own'))
    const field = dialog.getByLabelText('Address of the pictures')
    await user.type(field, 'https://example.org/{{z}/{{x}.png')
    await user.click(dialog.getByRole('button', { name: 'Use this ground' }))
    expect(dialog.getByRole('alert')).toHaveTextContent('The address lacks {y}.')
    expect(store.getState().view.ground).toEqual({ kind: 'grid' })
    await user.clear(field)
    await user.type(field, 'https://example.org/{{z}/{{x}/{{y}.png')
    await user.click(dialog.getByRole('button', { name: 'Use this ground' }))
    expect(store.getState().view.ground).toEqual({ kind: 'own', url: 'https://example.org/{z}/{x}/{y}.png' })
  })

  test('goes back to a restore point as a step that undo takes back, and keeps the present first', async () => {
    const keepRestorePoint = vi.fn(async () => {})
    const { store, user } = renderApp({
      plan: smallPlan(),
      services: {
        keepRestorePoint,
        listRestorePoints: async () => [{ id: '3', savedAt: '5 April 2026, 9:00', why: 'kept by hand' }],
        readRestorePoint: async () => ({ ok: true, value: smallPlan({ name: 'As it was' }), problems: [] }),
      },
    })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByRole('button', { name: 'Restore points' }))
    await user.click(await screen.findByRole('button', { name: 'Go back to 5 April 2026, 9:00' }))
    expect(await screen.findByDisplayValue('As it was')).toBeVisible()
    expect(keepRestorePoint).toHaveBeenCalledWith(
      'plan-1',
      expect.objectContaining({ name: 'Small orchard' }),
      'before going back',
    )
    await user.click(screen.getByRole('button', { name: /^Undo: go back to a restore point/ }))
    expect(planOf(store).name).toBe('Small orchard')
  })

  test('closes the plan and comes back to the first screen', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByRole('button', { name: 'Close the plan' }))
    expect(store.getState().document.plan).toBeNull()
    expect(screen.getByRole('heading', { name: 'Nestreach' })).toBeVisible()
  })
})

describe('problems', () => {
  test('are counted by the pages, worded, and lead to the thing', async () => {
    const bare = smallPlan({ seasons: [{ year: 2026 }] })
    const { store, user, compute } = renderApp({ plan: bare })
    compute()
    await user.click(screen.getByRole('button', { name: /^\d+ problems?/ }))
    const view = within(screen.getByRole('region', { name: 'Problems' }))
    expect(view.getByText(/^Apple: 2 plantings have no bloom dates for 2026/)).toBeVisible()
    expect(view.getAllByText('Doubtful').length).toBeGreaterThan(0)
    await user.click(view.getAllByRole('button', { name: 'Show Clover bank' })[0]!)
    expect(store.getState().view.selection).toEqual(['forage-1'])
    await user.click(view.getByRole('button', { name: 'Select all 2' }))
    expect(store.getState().view.selection).toEqual(['row-1', 'row-2'])
  })
})

describe('the panel', () => {
  test('rests at three heights by buttons, and folds', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Panel over the whole map' }))
    expect(store.getState().view.sheet).toBe('full')
    await user.click(screen.getByRole('button', { name: 'Fold the panel' }))
    expect(store.getState().view.panelFolded).toBe(true)
    expect(screen.getByRole('button', { name: 'Unfold the panel' })).toBeVisible()
  })
})

describe('figures and own crops', () => {
  test('lists every figure with its source, and takes an own value', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByRole('button', { name: 'Figures and own crops' }))
    const view = within(screen.getByRole('region', { name: 'Figures and own crops' }))
    await user.click(view.getByText('Site'))
    await user.type(await view.findByLabelText('Background blossom'), '5{Enter}')
    expect(planOf(store).parameters).toEqual({ backgroundBlossom: 5 })
    expect(view.getByText(/1 value is your own/)).toBeVisible()
  })

  test('adds a crop that stands on another, and deletes it only where nothing grows it', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'Menu' }))
    await user.click(screen.getByRole('button', { name: 'Figures and own crops' }))
    const view = within(screen.getByRole('region', { name: 'Figures and own crops' }))
    await user.type(view.getByLabelText('Name of a new crop'), 'Late apple')
    await user.click(view.getByRole('button', { name: 'Add the crop' }))
    expect(planOf(store).crops).toEqual({ 'late-apple': { basedOn: 'apple', name: 'Late apple' } })
    await user.click(view.getAllByText('Late apple')[0]!)
    await user.type(view.getByLabelText('Stocking rate'), '600{Enter}')
    expect(planOf(store).crops['late-apple']).toEqual({ basedOn: 'apple', name: 'Late apple', stockingRate: 600 })
    await user.click(view.getByRole('button', { name: 'Delete this crop' }))
    expect(planOf(store).crops).toEqual({})
  })
})
