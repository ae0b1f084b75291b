import { screen, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { settingsFor } from '#geo/data/settings'
import { setReleases } from '#geo/plan/edits-seasons'
import { dayAndMonth } from '#geo/time/date-text'
import { dateOfDay, dayOfSeason } from '#geo/time/day'
import { comingBatches } from '../../../src/panels/bloom/coming-out-batches'
import { smallPlan } from '../../support/builders'
import { renderApp } from './render-app'

const twice = setReleases(2026, 'station-1', [
  { date: '2026-04-06', females: 60, males: 108 },
  { date: '2026-04-20', females: 40, males: 0 },
]).apply(smallPlan())

test('each batch is shown as males, females and nesting, with the same dates in a table', async () => {
  const { user } = renderApp({ plan: twice })
  await user.click(screen.getByRole('button', { name: 'Bloom and flight' }))
  await user.click(screen.getByText(/^Males, females and nesting: 2 batches/))
  const picture = screen.getByRole('img', { name: /coming out and nesting in 2026/ })
  expect(within(picture).getByText('Males, 6 Apr')).toBeVisible()
  expect(within(picture).getByText('Nesting, 20 Apr')).toBeVisible()
  // No male cocoons, no males.
  expect(within(picture).queryByText('Males, 20 Apr')).toBeNull()
  const table = within(screen.getByRole('table', { name: /who is out when/ }))
  const rows = table.getAllByRole('row').slice(1)
  expect(rows.map(row => row.textContent?.match(/Males out|Females out|Females at work/)?.[0])).toEqual([
    'Males out',
    'Females out',
    'Females at work',
    'Females out',
    'Females at work',
  ])
  const [batch] = comingBatches(twice, 2026, 'cold')
  expect(rows[0]).toHaveTextContent(dayAndMonth(dateOfDay(batch!.males.half.value, 2026)))
  expect(screen.getByText(/^An estimate\. From a cold store/)).toBeVisible()
})

test('a winter outdoors brings the males out sooner and spreads all', async () => {
  const { user } = renderApp({ plan: twice })
  await user.click(screen.getByRole('button', { name: 'Bloom and flight' }))
  await user.click(screen.getByText(/^Males, females and nesting: 2 batches/))
  await user.selectOptions(screen.getByLabelText('The cocoons wintered'), 'outdoors')
  expect(screen.getByText(/^An estimate\. After a winter outdoors it takes longer/)).toBeVisible()
  const [cold, outdoors] = (['cold', 'outdoors'] as const).map(each => comingBatches(twice, 2026, each)[0]!)
  expect(outdoors!.males.half.value).toBeLessThan(cold!.males.half.value)
  expect(outdoors!.females.last - outdoors!.females.first).toBeGreaterThan(cold!.females.last - cold!.females.first)
  expect(outdoors!.nesting).toEqual(cold!.nesting)
})

test('cocoons of several stations on one day are one batch; males not said are not none', () => {
  const plan = setReleases(2026, 'station-1', [
    { date: '2026-04-06', females: 60 },
    { date: '2026-04-06', females: 20, males: 30 },
    { date: '2026-04-10', females: 5 },
  ]).apply(smallPlan())
  const batches = comingBatches(plan, 2026, 'cold')
  expect(batches.map(({ date, femaleCocoons, maleCocoons }) => [date, femaleCocoons, maleCocoons])).toEqual([
    ['2026-04-06', 80, 30],
    ['2026-04-10', 5, null],
  ])
  const { lag } = settingsFor(plan).bees['osmia-lignaria']
  expect(batches[0]!.nesting.start).toBe(dayOfSeason('2026-04-06', 2026))
  expect(batches[0]!.females.half.value).toBeLessThan(batches[0]!.day + lag)
})
