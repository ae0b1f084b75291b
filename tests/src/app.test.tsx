import { cleanup, fireEvent, screen } from '@testing-library/react'
import axe from 'axe-core'
import { expect, test } from 'vitest'
import { OnDrawDesk } from '../../src/parts/draw-desk'
import { explain, setPage } from '../../src/state/actions'
import { smallPlan } from '../support/builders'
import { renderApp } from './panels/render-app'

/** What axe finds fault with; colours need a real browser. */
async function faultsOf(container: Element): Promise<readonly string[]> {
  const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } })
  return violations.flatMap(({ id, nodes }) => nodes.map(node => `${id}: ${node.html}`))
}

test('the first screen is without fault to axe', async () => {
  const { container } = renderApp()
  expect(await faultsOf(container)).toEqual([])
})

test.each(['ground', 'bloom', 'coverage'] as const)('the page %s is without fault to axe', async page => {
  const { container, store, compute } = renderApp({ plan: smallPlan() })
  compute()
  setPage(store, page)
  expect(await screen.findByRole('navigation', { name: 'Pages' })).toBeVisible()
  expect(await faultsOf(container)).toEqual([])
})

test('the working of a figure is without fault to axe, and has the focus', async () => {
  const { container, store, compute } = renderApp({ plan: smallPlan() })
  compute()
  explain(store, { figure: 'coverage', id: 'row-1' })
  expect(await screen.findByRole('heading', { name: 'How was this worked out?' })).toHaveFocus()
  expect(await faultsOf(container)).toEqual([])
})

test('F6 goes from the map to the page and back', async () => {
  renderApp({ plan: smallPlan(), map: <div className="map" tabIndex={-1} data-testid="map" /> })
  const page = await screen.findByRole('button', { name: 'Ground' })
  fireEvent.keyDown(document.body, { key: 'F6' })
  expect(screen.getByTestId('map')).toHaveFocus()
  fireEvent.keyDown(screen.getByTestId('map'), { key: 'F6' })
  expect(page).toHaveFocus()
})

test('what is typed while drawing stands on the desk beside the map where that is asked for, else in its place', async () => {
  const bar = (isBeside: boolean) => <OnDrawDesk isBeside={isBeside}>figures</OnDrawDesk>
  renderApp({ plan: smallPlan(), map: bar(true) })
  const desk = await screen.findByRole('region', { name: 'What is being drawn' })
  expect(desk).toHaveTextContent('figures')
  expect(desk.closest('.panel')).not.toBeNull()
  cleanup()
  renderApp({ plan: smallPlan(), map: bar(false) })
  expect(await screen.findByText('figures')).toBe(screen.getByRole('main').firstElementChild)
})
