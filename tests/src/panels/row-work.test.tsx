import { act, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import { isPlanting } from '#geo/plan/plan'
import { newPlan } from '../../../src/panels/first/new-plan'
import { measured } from '../../../src/panels/measures'
import { select, undo } from '../../../src/state/actions'
import { repeatSelected } from '../../../src/state/row-actions'
import { rowFeature, smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

describe('the card of a row', () => {
  const open = async () => {
    const plan = smallPlan({ features: [rowFeature('row-1', { name: 'Row 1', rowSpacing: 4 })] })
    const app = renderApp({ plan })
    act(() => select(app.store, ['row-1']))
    await app.user.click(screen.getByText('Repeat, extend, split, turn'))
    return app
  }

  test('repeats it, names on, and undo says so', async () => {
    const { store, user } = await open()
    const times = screen.getByLabelText('How many more')
    await user.clear(times)
    await user.type(times, '3{Enter}')
    await user.click(screen.getByRole('button', { name: 'Add 3 rows' }))
    expect(planOf(store).features.map(({ properties }) => properties.name)).toEqual([
      'Row 1',
      'Row 2',
      'Row 3',
      'Row 4',
    ])
    expect(screen.getByRole('button', { name: 'Undo: repeat Row 1' })).toBeVisible()
    act(() => {
      undo(store)
    })
    expect(planOf(store).features).toHaveLength(1)
  })

  test('leaves a gap: two rows with one plant fewer', async () => {
    const { store, user } = await open()
    const plants = () => {
      const plan = planOf(store)
      return plan.features.filter(isPlanting).reduce((sum, each) => sum + (measured(plan, each).plants ?? 0), 0)
    }
    const before = plants()
    await user.click(screen.getByRole('button', { name: 'Leave a gap of 1 plant' }))
    expect(planOf(store).features).toHaveLength(2)
    expect(plants()).toBe(before - 1)
  })

  test('splits it, with both parts selected, and joins them under the name they share', async () => {
    const { store, user } = await open()
    await user.click(screen.getByRole('button', { name: 'Split before plant 2' }))
    const parts = planOf(store).features.map(({ id }) => id)
    expect(parts).toHaveLength(2)
    expect(store.getState().view.selection).toEqual(parts)
    await user.click(screen.getByRole('button', { name: 'Join into one row' }))
    expect(planOf(store).features.map(({ properties }) => properties.name)).toEqual(['Row 1'])
  })

  test('goes on by the key R, row by row', async () => {
    const { store } = await open()
    act(() => {
      repeatSelected(store, 'right')
      repeatSelected(store, 'right')
    })
    expect(planOf(store).features.map(({ properties }) => properties.name)).toEqual(['Row 1', 'Row 2', 'Row 3'])
  })

  test('sets a cultivar in every third of several rows', async () => {
    const rows = Array.from({ length: 6 }, (_, i) => rowFeature(`row-${i}`, {}, [0, i], [10, i]))
    const { store, user } = renderApp({ plan: smallPlan({ features: rows }) })
    act(() =>
      select(
        store,
        rows.map(({ id }) => id),
      ),
    )
    await user.click(screen.getByText('Cultivar by rows'))
    await user.type(
      within(screen.getByRole('region', { name: 'Selected things' })).getByLabelText('Their cultivar'),
      'Crab{Enter}',
    )
    await user.click(screen.getByRole('button', { name: 'Set it in 2 rows' }))
    const set = planOf(store).features.filter(
      ({ properties }) => 'cultivar' in properties && properties.cultivar === 'Crab',
    )
    expect(set.map(({ id }) => id)).toEqual(['row-0', 'row-3'])
  })
})

test('an orchard of 28 rows of 8 trees, 30 by 16 ft, from one form', async () => {
  const plan = newPlan({
    name: 'Old rows',
    place: [-111.82, 41.7],
    bee: 'osmia-lignaria',
    bloomRegion: 'continental',
    units: 'us',
    timeZone: 'America/Denver',
    year: 2026,
  })
  const { store, user } = renderApp({ plan })
  await user.selectOptions(screen.getByLabelText('What'), 'Block')
  await user.click(screen.getByLabelText('By number of rows and plants'))
  const type = async (label: string, text: string) => {
    const field = screen.getByLabelText(label)
    await user.clear(field)
    await user.type(field, `${text}{Tab}`)
  }
  await type('First plant', '0, 0')
  await type('Number of rows', '28')
  await type('Plants in a row', '8')
  await type('Bearing', '90')
  await type('Spacing in the row', '16')
  await type('Between rows', '30')
  await user.click(screen.getByRole('button', { name: 'Add the block' }))
  expect(screen.getByText(/^1 planting with 224 plants on 2\.47 acres/)).toBeVisible()
  expect(planOf(store).features[0]?.properties).toMatchObject({ kind: 'block', spacing: 4.8768, rowSpacing: 9.144 })
})
