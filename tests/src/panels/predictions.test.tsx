import { screen, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { type Season, seasonOf, type WeatherDay } from '#geo/plan/plan'
import { addDays } from '#geo/time/day'
import { appleBloom, smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

/** Days alike from 1 February to the end of May. */
const mild = (year: number, maximum: number): readonly WeatherDay[] =>
  Array.from({ length: 120 }, (_, i) => [addDays(`${year}-02-01`, i), 2, maximum, 0, null])

test('a crop is predicted by the heat that the grower’s own sighting took, and the date is taken over', async () => {
  const seasons: Season[] = [
    { year: 2025, bloom: { apple: { ...appleBloom(2025), observed: ['full'] } }, weather: { days: mild(2025, 12) } },
    { year: 2026, bloom: { apple: appleBloom(2026) }, weather: { days: mild(2026, 16) } },
  ]
  const { store, user } = renderApp({ plan: smallPlan({ seasons }) })
  await user.click(screen.getByRole('button', { name: 'Bloom and flight' }))
  const apple = within(screen.getByRole('region', { name: 'Apple' }))
  expect(apple.getByText(/set by what you saw: full bloom on 24 April 2025/)).toBeVisible()
  await user.click(apple.getByRole('button', { name: 'Use this date' }))
  // Warmer days reach the same total sooner: 7 degrees a day above 2 degC instead of 5.
  expect(seasonOf(planOf(store), 2026)!.bloom!.apple!.full < '2026-04-10').toBe(true)
  expect(apple.getByText(/^These are the predicted dates/)).toBeVisible()
})
