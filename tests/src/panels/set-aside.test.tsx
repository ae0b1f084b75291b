import { screen, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { setProperties } from '#geo/plan/edits-features'
import { seasonOf } from '#geo/plan/plan'
import { smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

test('a field check is set aside with a reason that is kept, and can be taken back', async () => {
  const { store, user } = renderApp({ plan: setProperties('station-1', { height: 3 }).apply(smallPlan()) })
  await user.click(screen.getByRole('button', { name: /problems? to look at/ }))
  const before = screen.getAllByRole('button', { name: /^Set aside….*3 m up/ })
  await user.click(before[0]!)
  await user.type(screen.getByLabelText('Why it does not matter here'), 'Loft with its own stairs{Enter}')
  expect(seasonOf(planOf(store), 2026)?.setAside).toEqual([
    { code: 'station-high', at: 'station-1', reason: 'Loft with its own stairs' },
  ])
  expect(screen.queryByRole('button', { name: /^Set aside….*3 m up/ })).toBeNull()
  await user.click(screen.getByText('1 check set aside'))
  const aside = within(screen.getByRole('list', { name: 'Checks set aside' }))
  expect(aside.getByText(/Loft with its own stairs/)).toBeVisible()
  await user.click(aside.getByRole('button', { name: /^Take back/ }))
  expect(seasonOf(planOf(store), 2026)).not.toHaveProperty('setAside')
  expect(screen.getByRole('button', { name: /^Set aside….*3 m up/ })).toBeVisible()
})
