import { act, fireEvent, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import { setProperties } from '#geo/plan/edits-features'
import type { Plan } from '#geo/plan/plan'
import { defaultForCrop } from '../../../src/panels/bloom/bloom-defaults'
import { edit, setPage } from '../../../src/state/actions'
import { blockFeature, smallPlan, stationFeature } from '../../support/builders'
import { planOf, renderApp } from './render-app'

function seasonIn(plan: Plan, year = 2026) {
  return plan.seasons.find(season => season.year === year)
}

function openBloom(plan: Plan = smallPlan()) {
  const app = renderApp({ plan })
  return { ...app, go: () => app.user.click(screen.getByRole('button', { name: 'Bloom and flight' })) }
}

const withPear = smallPlan({
  features: [...smallPlan().features, blockFeature('block-1', { name: 'Pears', crop: 'pear-european' })],
})

describe('bloom dates of crops', () => {
  test('that are missing are called for, and all defaults are set in one step', async () => {
    const { store, user, go } = openBloom(withPear)
    await go()
    expect(
      screen.getByText(/^European pear has no bloom dates for 2026, so nothing can be counted for it\./),
    ).toBeVisible()
    expect(screen.getByText(/^1 of 2 crops has bloom dates/)).toBeVisible()
    await user.click(screen.getByRole('button', { name: 'Fill in 1 bloom' }))
    const byDefault = defaultForCrop(planOf(store), 2026, 'pear-european')
    expect(seasonIn(planOf(store))?.bloom?.['pear-european']).toEqual(byDefault?.bloom)
    expect(store.getState().document.past).toHaveLength(1)
    expect(screen.getByText(/^All 2 crops have their bloom dates/)).toBeVisible()
  })

  test('that are the defaults are called so, with how far they may be off', async () => {
    const { user, go } = openBloom(withPear)
    await go()
    await user.click(screen.getByRole('button', { name: 'Fill in 1 bloom' }))
    const pear = within(screen.getByRole('region', { name: 'European pear' }))
    expect(
      pear.getByText(/^These are the default dates: full bloom .* could be \d+ days earlier or \d+ days later/),
    ).toBeVisible()
  })

  test('are changed date by date', async () => {
    const { store, go } = openBloom()
    await go()
    const apple = within(screen.getByRole('region', { name: 'Apple' }))
    fireEvent.change(apple.getByLabelText('Full bloom'), { target: { value: '2026-04-26' } })
    expect(seasonIn(planOf(store))?.bloom?.apple).toEqual({
      first: '2026-04-17',
      full: '2026-04-26',
      end: '2026-05-06',
    })
    expect(apple.getByText('26 April 2026')).toBeVisible()
  })

  test('that run past estimates take those along, and say so', async () => {
    const { store, go } = openBloom()
    await go()
    const apple = within(screen.getByRole('region', { name: 'Apple' }))
    fireEvent.change(apple.getByLabelText('First bloom'), { target: { value: '2026-04-30' } })
    expect(seasonIn(planOf(store))?.bloom?.apple).toEqual({
      first: '2026-04-30',
      full: '2026-05-07',
      end: '2026-05-19',
    })
    expect(apple.getByText(/^Full bloom and end of bloom moved along, 13 days later/)).toBeVisible()
    expect(store.getState().document.past).toHaveLength(1)
  })

  test('out of order with a date that was seen are kept in the fields, told, and not used', async () => {
    const { store, user, go } = openBloom()
    await go()
    const apple = within(screen.getByRole('region', { name: 'Apple' }))
    await user.click(apple.getByLabelText('Seen by you: full bloom'))
    expect(seasonIn(planOf(store))?.bloom?.apple?.observed).toEqual(['full'])
    expect(apple.getByText('✓ 24 April 2026, seen')).toBeVisible()
    fireEvent.change(apple.getByLabelText('First bloom'), { target: { value: '2026-04-30' } })
    expect(apple.getByText(/Full bloom should come after first bloom/)).toBeVisible()
    expect(seasonIn(planOf(store))?.bloom?.apple?.first).toBe('2026-04-17')
    fireEvent.change(apple.getByLabelText('Full bloom'), { target: { value: '2026-05-02' } })
    expect(seasonIn(planOf(store))?.bloom?.apple).toEqual({
      first: '2026-04-30',
      full: '2026-05-02',
      end: '2026-05-06',
      observed: ['full'],
    })
    await user.click(apple.getByLabelText('Seen by you: full bloom'))
    expect(seasonIn(planOf(store))?.bloom?.apple).not.toHaveProperty('observed')
  })

  test('are called for only once somebody has left them half done', async () => {
    const { user, go } = openBloom(withPear)
    await go()
    const pear = within(screen.getByRole('region', { name: 'European pear' }))
    await user.click(pear.getByLabelText('First bloom'))
    fireEvent.change(pear.getByLabelText('First bloom'), { target: { value: '2026-04-12' } })
    await user.tab()
    expect(pear.queryByText(/All three dates are needed/)).toBeNull()
    act(() => (document.activeElement as HTMLElement).blur())
    expect(pear.getByText(/All three dates are needed; missing: full bloom, end of bloom/)).toBeVisible()
  })

  test('of a half-typed year are not used', async () => {
    const { store, go } = openBloom()
    await go()
    const apple = within(screen.getByRole('region', { name: 'Apple' }))
    fireEvent.change(apple.getByLabelText('Full bloom'), { target: { value: '0202-04-26' } })
    expect(apple.getByRole('alert')).toHaveTextContent(/far from the season 2026/)
    expect(seasonIn(planOf(store))?.bloom?.apple?.full).toBe('2026-04-24')
  })
})

describe('the calendar from an apple date', () => {
  const missing = smallPlan({
    features: [
      ...smallPlan().features,
      blockFeature('block-1', { crop: 'pear-european' }),
      blockFeature('block-2', { crop: 'cherry-sweet' }),
    ],
    seasons: [{ year: 2026 }],
  })

  test('of last year fills in every crop, with how far it may be off, and goes with one undo', async () => {
    const { store, user, go } = openBloom(missing)
    await go()
    fireEvent.change(screen.getByLabelText('Apple in full bloom, if you know it'), { target: { value: '2025-05-02' } })
    const table = screen.getByRole('table', { name: 'Full bloom in 2026, as it would be' })
    // Southern England: pear 11 days before apple; years spread 12 days before and 18 after, pear 6 and 6.
    expect(within(table).getByRole('row', { name: /^European pear/ })).toHaveTextContent(
      'European pear21 April8 April and 10 May',
    )
    await user.click(screen.getByRole('button', { name: 'Fill in 3 blooms' }))
    const season = seasonIn(planOf(store))
    expect(season?.appleFullBloom).toBe('2025-05-02')
    expect(season?.bloom?.apple?.full).toBe('2026-05-02')
    expect(season?.bloom?.['cherry-sweet']?.full).toBe('2026-04-24')
    expect(store.getState().document.past).toHaveLength(1)
    await user.click(screen.getByRole('button', { name: /^Undo: fill in bloom/ }))
    expect(seasonIn(planOf(store))).toEqual({ year: 2026 })
  })

  test('moves typed dates along with apple, and leaves what was seen', async () => {
    const typed = smallPlan()
    const bloom = {
      apple: { first: '2026-04-17', full: '2026-04-24', end: '2026-05-06' },
      'row-2': { first: '2026-04-19', full: '2026-04-26', end: '2026-05-08', observed: ['first'] },
    }
    const { store, user, go } = openBloom({ ...typed, seasons: [{ year: 2026, bloom }] })
    await go()
    await user.click(screen.getByText('Move the whole calendar: region and apple date'))
    fireEvent.change(screen.getByLabelText('Apple in full bloom, if you know it'), { target: { value: '2026-04-29' } })
    expect(screen.getByLabelText(/^Dates typed in, not marked as seen: Apple/)).toHaveDisplayValue(
      'move along with apple, 5 days later',
    )
    await user.click(screen.getByRole('button', { name: 'Fill in 1 bloom' }))
    expect(seasonIn(planOf(store))?.bloom).toEqual({
      apple: { first: '2026-04-22', full: '2026-04-29', end: '2026-05-11' },
      'row-2': bloom['row-2'],
    })
  })
})

describe('bloom against the season before', () => {
  test('is told for what it is, stage by stage', async () => {
    const plan = smallPlan({
      seasons: [
        { year: 2024, bloom: { apple: { first: '2024-04-17', full: '2024-04-23', end: '2024-05-08' } } },
        { year: 2026, bloom: { apple: { first: '2026-04-29', full: '2026-05-05', end: '2026-05-19' } } },
      ],
    })
    const { user, go } = openBloom(plan)
    await go()
    expect(screen.getByText('Apple opens 12 days later than in 2024.')).toBeVisible()
    await user.click(screen.getByText('Against 2024, stage by stage'))
    const table = screen.getByRole('table', { name: /^Days later/ })
    expect(within(table).getByRole('row', { name: /^Apple/ })).toHaveTextContent('Apple+12+12+11')
  })
})

describe('bloom of one planting', () => {
  test('starts from its crop’s dates and goes back to them', async () => {
    const { store, user, go } = openBloom()
    await user.click(screen.getByRole('button', { name: /^Row 2/ }))
    await go()
    const card = within(screen.getByRole('region', { name: 'Selected: Row 2' }))
    expect(card.getByLabelText(/^Same as Apple: 17 April to 6 May 2026/)).toBeChecked()
    await user.click(card.getByLabelText('Dates of its own'))
    expect(seasonIn(planOf(store))?.bloom?.['row-2']).toEqual(seasonIn(planOf(store))?.bloom?.apple)
    fireEvent.change(card.getByLabelText('End of bloom'), { target: { value: '2026-05-12' } })
    expect(seasonIn(planOf(store))?.bloom?.['row-2']?.end).toBe('2026-05-12')
    await user.click(card.getByLabelText(/^Same as Apple/))
    expect(seasonIn(planOf(store))?.bloom?.['row-2']).toBeUndefined()
  })

  test('is moved by what is published of its cultivar', async () => {
    const { store, user, go } = openBloom()
    act(() => edit(store, setProperties('row-2', { cultivar: 'Boskoop' })))
    await user.click(screen.getByRole('button', { name: /^Row 2/ }))
    await go()
    const card = within(screen.getByRole('region', { name: 'Selected: Row 2' }))
    // Klein-Altendorf, means of many years: Boskoop 2.2 days before the median of apples. The apples here are full on 24 April.
    expect(card.getByText(/^Boskoop is in full bloom about 2 days before Apple/)).toHaveTextContent('22 April 2026')
    await user.click(card.getByRole('button', { name: 'Use these dates' }))
    expect(seasonIn(planOf(store))?.bloom?.['row-2']?.full).toBe('2026-04-22')
    expect(card.queryByRole('button', { name: 'Use these dates' })).toBeNull()
  })
})

describe('forage', () => {
  test('is filled in from a plant, dates and flowers in one step', async () => {
    const { store, user, go } = openBloom()
    await go()
    const bank = within(screen.getByRole('region', { name: 'Clover bank' }))
    const choice = bank.getByLabelText('Fill in from a plant')
    const [, plant] = within(choice).getAllByRole<HTMLOptionElement>('option')
    await user.selectOptions(choice, plant!.value)
    await user.click(bank.getByRole('button', { name: 'Use its dates, flowers and appeal' }))
    expect(seasonIn(planOf(store))?.bloom?.['forage-1']?.full).not.toBe('2026-05-01')
    expect(store.getState().document.past).toHaveLength(1)
  })
})

describe('stations in the season', () => {
  test('are taken into use and out of it', async () => {
    const { store, user, go } = openBloom()
    await go()
    const station = within(screen.getByRole('region', { name: 'Unnamed nest station' }))
    await user.click(station.getByLabelText('In use in 2026'))
    expect(seasonIn(planOf(store))?.stations?.['station-2']).toEqual({})
    await user.click(station.getByLabelText('In use in 2026'))
    expect(seasonIn(planOf(store))?.stations?.['station-2']).toBeUndefined()
  })

  test('get batches of cocoons, with males by default and a caution', async () => {
    const { store, user, go } = openBloom()
    await user.click(screen.getByRole('button', { name: 'North gate' }))
    await go()
    const card = within(screen.getByRole('region', { name: 'Selected: North gate' }))
    await user.click(card.getByRole('button', { name: 'Add another batch' }))
    const batch = within(card.getByRole('group', { name: 'Batch 2' }))
    await user.clear(batch.getByLabelText('Female cocoons'))
    await user.type(batch.getByLabelText('Female cocoons'), '100{Enter}')
    // 100 females times 1.8 males per female, the table's figure for this bee.
    expect(batch.getByLabelText('Male cocoons')).toHaveAccessibleDescription('180 by default')
    expect(seasonIn(planOf(store))?.stations?.['station-1']?.releases?.[1]).toMatchObject({ females: 100 })
    expect(seasonIn(planOf(store))?.stations?.['station-1']?.releases?.[1]).not.toHaveProperty('males')
    expect(card.getByText(/Use stock raised near you/)).toBeVisible()
    expect(card.getByText(/rarely sting, but can when squeezed/)).toBeVisible()
    await user.click(batch.getByRole('button', { name: 'Remove batch 2' }))
    expect(seasonIn(planOf(store))?.stations?.['station-1']?.releases).toHaveLength(1)
  })

  test.each([
    [52, '2026-04-01'],
    [-43, '2026-10-01'],
  ])('start a batch in spring where nothing is known to bloom, at latitude %d', async (latitude, date) => {
    const season = { ...smallPlan().seasons[0]!, year: 2026, bloom: {}, stations: { 'station-1': {} } }
    const features = [
      {
        ...stationFeature('station-1', { name: 'North gate' }),
        geometry: { type: 'Point' as const, coordinates: [5, latitude] as const },
      },
    ]
    const { store, user, go } = openBloom(smallPlan({ seasons: [season], features }))
    await user.click(screen.getByRole('button', { name: 'North gate' }))
    await go()
    const card = within(screen.getByRole('region', { name: 'Selected: North gate' }))
    expect(card.getByText(/^No bloom dates are known, so a new batch starts from 1 (April|October) 2026/)).toBeVisible()
    await user.click(card.getByRole('button', { name: 'Add a batch of cocoons' }))
    expect(seasonIn(planOf(store))?.stations?.['station-1']?.releases?.[0]?.date).toBe(date)
  })

  test('warn of another species where one is chosen', async () => {
    const { store, user, go } = openBloom()
    await user.click(screen.getByRole('button', { name: 'North gate' }))
    await go()
    const card = within(screen.getByRole('region', { name: 'Selected: North gate' }))
    await user.selectOptions(card.getByLabelText('Bee'), 'Red mason bee (Osmia bicornis)')
    expect(seasonIn(planOf(store))?.stations?.['station-1']?.bee).toBe('osmia-bicornis')
    expect(card.getByText(/Release only bees that are native where you are/)).toBeVisible()
  })
})

describe('the picture of the season', () => {
  test('has its dates as a table too', async () => {
    const { user, go } = openBloom()
    await go()
    expect(
      screen.getAllByRole('img', { name: /Bloom and flight in 2026.*Apple blooms 17 April to 6 May/ })[0],
    ).toBeVisible()
    await user.click(screen.getByText('The same as a table'))
    const table = screen.getByRole('table', { name: 'Bloom and flight in 2026, by date' })
    const row = within(table).getByRole('row', { name: /^Apple, bloom/ })
    expect(
      within(row)
        .getAllByRole('cell')
        .map(cell => cell.textContent),
    ).toEqual(['17 April 2026', '24 April 2026', '6 May 2026'])
    expect(within(table).getByRole('row', { name: /^North gate, flight/ })).toHaveTextContent(/about \d+ females/)
  })

  test('is read day by day with the keyboard, along the foot of the window', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    setPage(store, 'ground')
    const slider = screen.getByRole('slider', { name: 'Day of the season' })
    slider.focus()
    await user.keyboard('{Home}{ArrowRight}')
    const first = slider.getAttribute('aria-valuetext')
    await user.keyboard('{PageUp}{PageUp}{PageUp}')
    expect(slider.getAttribute('aria-valuetext')).not.toBe(first)
    const at = Number(slider.getAttribute('aria-valuenow'))
    // 24 April is day 114 of 2026: both rows stand in full bloom.
    await user.keyboard('{ArrowRight}'.repeat(Math.max(0, 114 - at)) + '{ArrowLeft}'.repeat(Math.max(0, at - 114)))
    expect(slider).toHaveAttribute(
      'aria-valuetext',
      expect.stringMatching(/^24 April 2026: .*Apple in full bloom.*; about \d+ females at work\.$/),
    )
  })
})
