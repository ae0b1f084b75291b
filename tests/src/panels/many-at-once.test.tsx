import { act, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import type { Plan } from '#geo/plan/plan'
import { select, undo } from '../../../src/state/actions'
import { rowFeature, smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const rows = (plan: Plan) => plan.features.filter(({ properties }) => properties.kind === 'row')

function orchard(): Plan {
  const plan = smallPlan()
  const more = Array.from({ length: 10 }, (_, i) =>
    rowFeature(`row-x${i}`, { name: `Pear row ${i + 1}`, crop: 'pear-european', spacing: 2 + (i % 2) }),
  )
  return { ...plan, features: [...plan.features, ...more] }
}

describe('many at once', () => {
  test('all of a crop are found, selected and changed in one step that undo names', async () => {
    const { store, user } = renderApp({ plan: orchard() })
    await user.type(screen.getByLabelText('Find by name, crop or kind'), 'european pear')
    await user.click(screen.getByRole('button', { name: 'Select 10 things found' }))
    const card = screen.getByRole('region', { name: 'Selected things' })
    const spacing = within(card).getByLabelText('Spacing in the row')
    expect(spacing).toHaveAccessibleDescription(/Several values now/)
    await user.type(spacing, '3.5{Enter}')
    const changed = rows(planOf(store)).filter(
      ({ properties }) => 'spacing' in properties && properties.spacing === 3.5,
    )
    expect(changed).toHaveLength(10)
    expect(screen.getByRole('button', { name: /^Undo: change spacing of 10 rows/i })).toBeEnabled()
    await user.selectOptions(within(card).getByLabelText('Crop'), 'Apple')
    expect(rows(planOf(store)).every(({ properties }) => 'crop' in properties && properties.crop === 'apple')).toBe(
      true,
    )
    undo(store)
    undo(store)
    expect(planOf(store).features).toEqual(orchard().features)
  })

  test('stations get height, tubes and a batch together; nothing else of them changes', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    const use = (id: string) => planOf(store).seasons.find(({ year }) => year === 2026)?.stations?.[id]
    const before = use('station-1')
    act(() => select(store, ['station-1', 'station-2']))
    const card = within(screen.getByRole('region', { name: 'Selected things' }))
    await user.type(card.getByLabelText('Height above ground'), '1.6{Enter}')
    const heights = planOf(store).features.map(({ properties }) => ('height' in properties ? properties.height : null))
    expect(heights.filter(height => height === 1.6)).toHaveLength(2)
    await user.click(card.getByRole('button', { name: 'Take it into use' }))
    await user.clear(card.getByLabelText('Tubes, each'))
    await user.type(card.getByLabelText('Tubes, each'), '90{Enter}')
    expect(use('station-1')).toEqual({ ...before, tubes: 90 })
    expect(use('station-2')).toEqual({ tubes: 90 })
    expect(screen.getByRole('button', { name: /^Undo: change tubes of 2 stations/ })).toBeEnabled()
    await user.click(card.getByText('Set cocoons out at each'))
    expect(card.getByRole('button', { name: 'Add this batch at each' })).toBeDisabled()
    await user.type(card.getByLabelText('Female cocoons, each'), '40')
    expect(card.getByRole('button', { name: 'Add this batch at each' })).toBeEnabled()
    await user.click(card.getByRole('button', { name: 'Add this batch at each' }))
    expect(use('station-1')?.releases?.map(({ females }) => females)).toEqual([60, 40])
    expect(use('station-2')?.releases?.map(({ females }) => females)).toEqual([40])
    expect(card.getByLabelText('Female cocoons, each')).toHaveValue('')
    expect(card.getByRole('button', { name: 'Add this batch at each' })).toBeDisabled()
    act(() => undo(store))
    expect(use('station-2')).toEqual({ tubes: 90 })
  })

  test('a station on Ground names its tubes and cocoons, and leads to where they are changed', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    act(() => select(store, ['station-1']))
    const card = within(screen.getByRole('region', { name: 'Selected: North gate' }))
    expect(card.getByText(/^In 2026: 60 female cocoons on 6 April 2026; 120 tubes\./)).toBeVisible()
    expect(card.getByText(/A duplicate gets the same tubes and batches/)).toBeVisible()
    await user.click(card.getByRole('button', { name: 'Change tubes and cocoons under Bloom and flight' }))
    expect(store.getState().view.page).toBe('bloom')
  })

  test('checkboxes gather things of any kind; deleting them is one step', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    const count = planOf(store).features.length
    await user.click(screen.getByRole('checkbox', { name: /^Row 1, together/ }))
    await user.click(screen.getByRole('checkbox', { name: /^North gate, together/ }))
    expect(store.getState().view.selection).toHaveLength(2)
    const card = screen.getByRole('region', { name: 'Selected things' })
    await user.click(within(card).getByRole('button', { name: 'Delete' }))
    expect(planOf(store).features).toHaveLength(count - 2)
    expect(screen.getByRole('button', { name: /^Undo: remove 2 things/i })).toBeEnabled()
    undo(store)
    expect(planOf(store).features).toHaveLength(count)
  })

  test('a typed box selects what lies wholly inside it', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByText('Select by a box'))
    const [from, to] = [await screen.findByLabelText('One corner'), screen.getByLabelText('The corner across')]
    await user.type(from, '-5000, -5000{Enter}')
    await user.type(to, '5000, 5000{Enter}')
    await user.click(screen.getByRole('button', { name: 'Select what lies inside' }))
    expect(store.getState().view.selection).toHaveLength(planOf(store).features.length)
    await user.clear(to)
    await user.type(to, '-4000, -4000{Enter}')
    await user.click(screen.getByRole('button', { name: 'Select what lies inside' }))
    expect(store.getState().view.selection).toEqual([])
    expect(screen.getByText('Nothing lies wholly inside it.')).toBeVisible()
  })
})

describe('numbered plots', () => {
  test('are drawn in one step, from a list of what grows on them', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    const before = planOf(store).features.length
    await user.click(screen.getByText('Numbered plots in a grid'))
    await user.type(await screen.findByLabelText('Corner of the first plot'), '100, 100{Enter}')
    const parts = screen.getByLabelText('Parts of a plot')
    await user.clear(parts)
    await user.type(parts, '2{Enter}')
    const list = screen.getByLabelText(/^What grows on them/)
    await user.type(list, '21A; apple; 2')
    await user.click(screen.getByRole('button', { name: 'Add 40 plots' }))
    expect(screen.getByRole('alert')).toHaveTextContent('Line 1: “21A” is no plot of this grid.')
    expect(planOf(store).features).toHaveLength(before)
    await user.clear(list)
    await user.type(list, '12A; apple; 2{Enter}plot 12b, strawberry')
    await user.click(screen.getByRole('button', { name: 'Add 40 plots' }))
    const [trees, bed] = planOf(store).features.slice(before)
    expect(trees).toMatchObject({
      geometry: { type: 'MultiPoint' },
      properties: { name: 'Plot 12A apple', crop: 'apple' },
    })
    expect(trees!.geometry.coordinates).toHaveLength(2)
    expect(bed).toMatchObject({ properties: { kind: 'bed', name: 'Plot 12B', crop: 'strawberry' } })
    expect(screen.getByRole('button', { name: /^Undo: add 40 plots/i })).toBeEnabled()
  })

  test('get an outline each on asking, and what grows there is told apart from it by name', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    const before = planOf(store).features.length
    await user.click(screen.getByText('Numbered plots in a grid'))
    await user.type(await screen.findByLabelText('Corner of the first plot'), '100, 100{Enter}')
    await user.type(screen.getByLabelText(/^What grows on them/), '2; apple; 1')
    await user.click(screen.getByLabelText(/^The outline of every plot/))
    await user.click(screen.getByRole('button', { name: 'Add 20 plots' }))
    const added = planOf(store).features.slice(before)
    expect(added.filter(({ properties }) => properties.kind === 'boundary')).toHaveLength(20)
    expect(added.map(({ properties }) => properties.name).filter(name => /Plot 2\b/.test(name!))).toEqual([
      'Plot 2',
      'Plot 2 apple',
    ])
  })

  test('without a list are beds of one crop, and no name comes twice', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    const before = planOf(store).features.length
    await user.click(screen.getByText('Numbered plots in a grid'))
    await user.type(await screen.findByLabelText('Corner of the first plot'), '100, 100{Enter}')
    await user.click(screen.getByRole('button', { name: 'Add 20 plots' }))
    const beds = planOf(store).features.slice(before)
    expect(beds.map(({ properties }) => properties.name)).toEqual(Array.from({ length: 20 }, (_, i) => `Plot ${i + 1}`))
    await user.click(screen.getByRole('button', { name: 'Add 20 plots' }))
    expect(screen.getByRole('alert')).toHaveTextContent('There is a Plot 1 already')
    undo(store)
    expect(planOf(store).features).toHaveLength(before)
  })
})
