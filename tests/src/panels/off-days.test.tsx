import { act, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import { setBloom } from '#geo/plan/edits-seasons'
import { dateText } from '#geo/time/date-text'
import { bestReleaseAt } from '../../../src/panels/bloom/best-release'
import { edit, select, setPage } from '../../../src/state/actions'
import { rowFeature, smallPlan, stationFeature } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const bloom = { first: '2026-05-01', full: '2026-05-09', end: '2026-05-20' }
const batch = (date: string) => ({ date, females: 60 })
const station = stationFeature('station-1', { name: 'North gate' })

function planWith(date: string, patch = {}) {
  return smallPlan({
    features: [rowFeature('row-1', { name: 'Row 1' }), station],
    seasons: [{ year: 2026, bloom: { apple: bloom }, stations: { 'station-1': { releases: [batch(date)] } } }],
    ...patch,
  })
}

const datesOf = (plan: ReturnType<typeof planOf>) =>
  plan.seasons[0]?.stations?.['station-1']?.releases?.map(({ date }) => date)

describe('batches far from their best day', () => {
  test('are the first thing that Coverage says, and one press mends them', async () => {
    const { store, user, compute, container } = renderApp({ plan: planWith('2026-04-01') })
    act(() => setPage(store, 'coverage'))
    compute()
    const best = bestReleaseAt(planOf(store), 2026, station)!.date
    const said = screen.getByText(/^Bees are set out about (four|five|six) weeks too early: North gate on 1 April 2026/)
    expect(said).toHaveTextContent(`best about ${dateText(best)}`)
    const lead = container.querySelector('.page > .lead')!
    expect(said.compareDocumentPosition(lead)).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
    await user.click(screen.getByRole('button', { name: `Set them out on ${dateText(best)}` }))
    expect(datesOf(planOf(store))).toEqual([best])
    expect(store.getState().document.past).toHaveLength(1)
    expect(lead).toHaveFocus()
    compute()
    expect(screen.queryByText(/too early/)).toBeNull()
  })

  test('that stand on the guess are told as soon as bloom is typed, before anything is counted', () => {
    const { store } = renderApp({
      plan: planWith('2026-04-01', {
        seasons: [{ year: 2026, stations: { 'station-1': { releases: [batch('2026-04-01')] } } }],
      }),
    })
    act(() => setPage(store, 'bloom'))
    expect(screen.queryByText(/was a guess from before/)).toBeNull()
    act(() => edit(store, setBloom(2026, 'apple', bloom)))
    expect(screen.getAllByText(/1 April 2026 was a guess from before bloom was known/)[0]).toBeVisible()
  })

  test('are left alone where another bloom near is open, and where they are near their best', () => {
    const plum = { first: '2026-04-02', full: '2026-04-07', end: '2026-04-16' }
    const seasons = [
      {
        year: 2026,
        bloom: { apple: bloom, 'plum-european': plum },
        stations: { 'station-1': { releases: [batch('2026-04-01'), batch('2026-04-26')] } },
      },
    ]
    const features = [
      rowFeature('row-1', {}, [0, 0], [20, 0]),
      rowFeature('row-2', { crop: 'plum-european' }, [0, 1], [8, 1]),
      station,
    ]
    const { store, compute } = renderApp({ plan: smallPlan({ features, seasons }) })
    act(() => setPage(store, 'coverage'))
    compute()
    expect(screen.queryByText(/^Bees are set out/)).toBeNull()
  })

  test('of a planting whose bees fly outside its bloom, wild blossom is not blamed without the date', () => {
    const { store, compute } = renderApp({ plan: planWith('2026-04-01') })
    act(() => setPage(store, 'coverage'))
    compute()
    const entry = screen.getByRole('button', { name: 'Row 1' }).closest('li')!
    expect(entry).toHaveTextContent(/out of time/)
    expect(entry).toHaveTextContent(/Set a batch out so that its flight meets this bloom/)
    expect(entry).not.toHaveTextContent(/rival/)
  })
})

describe('a station before any bloom is known', () => {
  const plan = planWith('2026-04-01', { seasons: [{ year: 2026, stations: { 'station-1': {} } }] })

  test('stands below the bloom that is asked for', async () => {
    const { store, user, container } = renderApp({ plan })
    act(() => {
      setPage(store, 'bloom')
      select(store, ['station-1'])
    })
    const card = screen.getByRole('region', { name: 'Selected: North gate' })
    const fill = screen.getByRole('button', { name: 'Fill in 1 bloom' })
    expect(fill.compareDocumentPosition(card)).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
    await user.click(fill)
    expect(container.querySelector('.page > .lead')).toHaveFocus()
    expect(screen.queryByRole('button', { name: 'Fill in 1 bloom' })).toBeNull()
  })

  test('leads to the fields of a batch that is added', async () => {
    const { store, user } = renderApp({ plan })
    act(() => {
      setPage(store, 'bloom')
      select(store, ['station-1'])
    })
    const card = within(screen.getByRole('region', { name: 'Selected: North gate' }))
    await user.click(card.getByRole('button', { name: 'Add a batch of cocoons' }))
    expect(card.getByLabelText('Set out on')).toHaveFocus()
    await user.click(card.getByRole('button', { name: 'Add another batch' }))
    expect(within(card.getByRole('group', { name: 'Batch 2' })).getByLabelText('Set out on')).toHaveFocus()
  })
})
