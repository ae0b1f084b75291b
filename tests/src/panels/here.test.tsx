import { act, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import { planeAt } from '#geo/space/plane'
import type { Fix } from '#geo/space/standing'
import { select, undo } from '../../../src/state/actions'
import { rowFeature, smallPlan, stationFeature } from '../../support/builders'
import { type fakeServices, planOf, renderApp } from './render-app'

const plan = smallPlan({
  features: [rowFeature('row-1', { name: 'Row 1' }), stationFeature('station-1', { name: 'Gate' })],
  seasons: [],
})

function openStation(services: NonNullable<Parameters<typeof fakeServices>[0]> = {}) {
  const app = renderApp({ plan, services })
  act(() => select(app.store, ['station-1']))
  return { ...app, card: () => screen.getByRole('region', { name: 'Selected: Gate' }) }
}

describe('where the device is', () => {
  test('is the mean of its readings, says no more than the best of them, and moves the station on asking alone', async () => {
    let tell: (fix: Fix) => void = () => {}
    let isStopped = false
    const watchPosition = (onFix: (fix: Fix) => void) => {
      tell = onFix
      return () => {
        isStopped = true
      }
    }
    const { store, user, card } = openStation({ watchPosition })
    const before = planOf(store)
    await user.click(within(card()).getByText('Place and shape'))
    await user.click(within(card()).getByRole('button', { name: 'Where this device is' }))
    const take = within(card()).getByRole('button', { name: 'Use this place' })
    expect(take).toBeDisabled()
    const plane = planeAt([0.16, 52.59])
    for (const x of [-1, 1]) act(() => tell({ at: plane.toLngLat({ x, y: 0 }), accuracy: 4 }))
    expect(within(card()).getByText(/good to about 4 m by 2 readings/)).toBeVisible()
    expect(store.getState().view.device!.radius).toBe(4)
    expect(planOf(store)).toBe(before)
    await user.click(take)
    const [lng, lat] = planOf(store).features[1]!.geometry.coordinates as [number, number]
    // A file keeps nine decimals.
    expect(lng).toBeCloseTo(0.16, 8)
    expect(lat).toBeCloseTo(52.59, 8)
    expect(isStopped).toBe(true)
    expect(store.getState().view.device).toBeNull()
    undo(store)
    expect(planOf(store).features).toEqual(before.features)
  })

  test('says why where there is none', async () => {
    const watchPosition = (_: unknown, onFault: (reason: string) => void) => {
      setTimeout(() => onFault('The browser may not give the position.'))
      return () => {}
    }
    const { user, card } = openStation({ watchPosition })
    await user.click(within(card()).getByText('Place and shape'))
    await user.click(within(card()).getByRole('button', { name: 'Where this device is' }))
    expect(await within(card()).findByText('The browser may not give the position.')).toBeVisible()
  })
})

test('a station is put so far along a row and so far to its side', async () => {
  const { store, user, card } = openStation()
  const row = planOf(store).features[0]!
  if (row.geometry.type !== 'LineString') throw new TypeError('the first is no row')
  const plane = planeAt(row.geometry.coordinates[0]!)
  const end = plane.toMetres(row.geometry.coordinates.at(-1)!)
  const length = Math.hypot(end.x, end.y)
  await user.click(within(card()).getByText('Place and shape'))
  const group = within(card()).getByRole('group', { name: 'By a distance along a row' })
  await user.type(within(group).getByLabelText('From its start'), '12{Enter}')
  const aside = within(group).getByLabelText(/^To its /)
  await user.clear(aside)
  await user.type(aside, '2{Enter}')
  await user.click(within(group).getByRole('button', { name: 'Put it there' }))
  const at = plane.toMetres(planOf(store).features[1]!.geometry.coordinates as [number, number])
  // Along, and to the right: by scalar products with the row's direction. Two planes some metres apart differ by less than a millimetre.
  expect((at.x * end.x + at.y * end.y) / length).toBeCloseTo(12, 3)
  expect((at.x * end.y - at.y * end.x) / length).toBeCloseTo(2, 3)
})
