import { act, fireEvent, screen, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import type { Picture } from '#geo/plan/plan'
import { setView } from '../../../src/state/actions'
import { smallPlan, step } from '../../support/builders'
import { renderApp } from './render-app'

const corners = [step([20, 10]), step([30, 10]), step([20, 0])] as unknown as Picture['corners']
const picture: Picture = { id: 'picture-1', name: 'Sketch', width: 200, height: 100, corners }

function type(field: HTMLElement, value: string) {
  fireEvent.change(field, { target: { value } })
  fireEvent.blur(field)
}

test('a picture that was laid is shown on the map, and the cross for its points goes', async () => {
  const { store, user } = renderApp({ plan: smallPlan({ pictures: [picture] }) })
  await user.click(screen.getByText('Photograph or sketch under the map'))
  expect(await screen.findAllByRole('button', { name: 'Choose a picture' })).toHaveLength(1)
  act(() => setView(store, { picture: 'picture-1', sheet: 'full' }))
  const points: readonly (readonly [string, string, string])[] = [
    ['20', '50', '0, 0'],
    ['180', '50', '40, 0'],
  ]
  for (const [index, [u, v, at]] of points.entries()) {
    const point = within(await screen.findByRole('group', { name: new RegExp(`^Point ${index + 1}`) }))
    await user.click(point.getByRole('radio'))
    type(point.getByLabelText('Pixels from the left'), u)
    type(point.getByLabelText('Pixels from the top'), v)
    type(point.getByLabelText(`Ground position of point ${index + 1}`), at)
  }
  expect(store.getState().view.isAiming).toBe(true)
  const before = store.getState().view.focusRequest
  await user.click(screen.getByRole('button', { name: 'Lay it so' }))
  expect(store.getState().view).toMatchObject({ isAiming: false, focusRequest: before + 1, sheet: 'half' })
})
