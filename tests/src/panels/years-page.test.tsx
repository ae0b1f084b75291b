import { act, fireEvent, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import type { Plan } from '#geo/plan/plan'
import { yearRecord } from '#geo/seasons/year'
import { setPage } from '../../../src/state/actions'
import { smallPlan, smallSeason, stationFeature } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const two = smallPlan({
  features: [
    ...smallPlan().features.filter(({ id }) => !id.startsWith('station')),
    stationFeature('station-1', { name: 'Gate' }),
    stationFeature('station-2', { name: 'Shed' }, [8, 1]),
  ],
  seasons: [{ ...smallSeason(2026), stations: { 'station-1': { tubes: 40 }, 'station-2': { tubes: 30 } } }],
})

function openYears(plan: Plan = two) {
  const app = renderApp({ plan })
  return { ...app, go: () => app.user.click(screen.getByRole('button', { name: 'Years' })) }
}

function openTask(name: RegExp, plan: Plan = two) {
  const app = openYears(plan)
  const go = async () => {
    await app.go()
    await app.user.click(screen.getByRole('button', { name }))
  }
  return { ...app, go }
}

function recordsOf(plan: Plan) {
  return plan.seasons.find(({ year }) => year === 2026)?.records
}

const press = (name: string | RegExp) => screen.getByRole('button', { name })

describe('the page Years', () => {
  test('says that nothing was counted, which is not zero', async () => {
    const { go } = openYears()
    await go()
    expect(screen.getByText('No capped tubes have been counted in 2026 yet.')).toBeVisible()
  })

  test('without a station in use leads to where one is taken into use', async () => {
    const { go, user, store } = openYears(smallPlan({ seasons: [{ year: 2026 }] }))
    await go()
    expect(screen.getByText(/^No nest station is in use in 2026/)).toBeVisible()
    await user.click(press('Go to Bloom and flight'))
    expect(store.getState().view.page).toBe('bloom')
  })
})

describe('a station round', () => {
  test('goes from station to station with the day of the clock, one step of undo each', async () => {
    const { go, user, store } = openTask(/^Station round/)
    await go()
    expect(screen.getByText('0 of 2 stations visited on 20 May 2026.')).toBeVisible()
    expect(screen.getByRole('combobox', { name: 'Station' })).toHaveDisplayValue('Gate')
    await user.click(press('Ten more: Capped tubes'))
    await user.click(press('One more: Capped tubes'))
    await user.click(screen.getByRole('radio', { name: 'Wet' }))
    await user.click(press('Save, next station'))
    expect(screen.getByRole('combobox', { name: 'Station' })).toHaveDisplayValue('Shed')
    expect(store.getState().view.selection).toEqual(['station-2'])
    await user.type(screen.getByLabelText('Note'), 'wasps')
    await user.click(press('Save'))
    expect(recordsOf(planOf(store))).toEqual({
      'station-1': { visits: [{ date: '2026-05-20', capped: 11, mudWet: true }] },
      'station-2': { visits: [{ date: '2026-05-20', note: 'wasps' }] },
    })
    expect(store.getState().document.past).toHaveLength(2)
    expect(screen.getByText('The round of 20 May 2026 is complete: 2 stations.')).toBeVisible()
    await user.click(press('Finish the round'))
    expect(
      screen.getByText(
        'In 2026, 11 tubes were capped at the last count, at 1 of 2 stations; the others were not counted.',
      ),
    ).toBeVisible()
  })

  const before: Plan = {
    ...two,
    seasons: [
      {
        ...two.seasons[0]!,
        records: {
          'station-1': {
            visits: [
              { date: '2026-05-06', capped: 8, damage: 'birds' },
              { date: '2026-05-13', capped: 22 },
            ],
          },
        },
      },
    ],
  }

  test('counts on from the last count, or takes it as it is', async () => {
    const { go, user, store } = openTask(/^Station round/, before)
    await go()
    expect(screen.getByText('22 on 13 May; 40 tubes here')).toBeVisible()
    await user.click(press('One more: Capped tubes'))
    expect(screen.getByLabelText('Capped tubes')).toHaveValue('23')
    await user.click(press(/^Not counted/))
    expect(screen.getByLabelText('Capped tubes')).toHaveValue('')
    await user.click(press(/^Still 22/))
    await user.click(press('Save, next station'))
    expect(recordsOf(planOf(store))?.['station-1']?.visits?.at(-1)).toEqual({ date: '2026-05-20', capped: 22 })
  })

  test('stops more capped tubes than there are, and lets the tubes be put right', async () => {
    const { go, user, store } = openTask(/^Station round/)
    await go()
    fireEvent.change(screen.getByLabelText('Capped tubes'), { target: { value: '41' } })
    expect(screen.getByRole('alert')).toHaveTextContent('Gate has 40 tubes, so 41 cannot be capped.')
    expect(press('Save, next station')).toBeDisabled()
    const tubes = screen.getByLabelText('Tubes at Gate')
    await user.clear(tubes)
    await user.type(tubes, '60{Enter}')
    await user.click(press('Save, next station'))
    expect(recordsOf(planOf(store))?.['station-1']?.visits).toEqual([{ date: '2026-05-20', capped: 41 }])
  })

  test('stops a count that fell, unless damage explains it', async () => {
    const { go, user, store } = openTask(/^Station round/, before)
    await go()
    fireEvent.change(screen.getByLabelText('Capped tubes'), { target: { value: '9' } })
    expect(screen.getByRole('alert')).toHaveTextContent('9 capped, after 22 on an earlier day.')
    expect(press('Save, next station')).toBeDisabled()
    await user.type(screen.getByLabelText('Damage'), 'woodpecker')
    await user.click(press('Save, next station'))
    expect(recordsOf(planOf(store))?.['station-1']?.visits?.at(-1)).toMatchObject({ capped: 9, damage: 'woodpecker' })
  })

  test('changes and deletes visits of the past', async () => {
    const { go, user, store } = openTask(/^Station round/, before)
    await go()
    const visits = within(screen.getByRole('region', { name: 'Visits to Gate' }))
    await user.click(visits.getByRole('button', { name: /^Change the visit of 6 May/ }))
    expect(screen.getByLabelText('Capped tubes')).toHaveValue('8')
    await user.clear(screen.getByLabelText('Damage'))
    await user.click(press(/^Not counted/))
    await user.click(screen.getByRole('radio', { name: 'Dry' }))
    await user.click(press(/^Save the change/))
    expect(recordsOf(planOf(store))?.['station-1']?.visits?.[0]).toEqual({ date: '2026-05-06', mudWet: false })
    fireEvent.change(screen.getByRole('combobox', { name: 'Station' }), { target: { value: 'station-1' } })
    await user.click(screen.getByRole('button', { name: /^Delete the visit of 13 May/ }))
    expect(recordsOf(planOf(store))?.['station-1']?.visits).toHaveLength(1)
    expect(store.getState().view.notice).toBe('The visit of 13 May 2026 was deleted. Undo brings it back.')
  })

  test('keeps what was typed while another page is looked at', async () => {
    const { go, user, store } = openTask(/^Station round/)
    await go()
    await user.click(press('Ten more: Capped tubes'))
    await user.click(press('Ground'))
    await user.click(press('Years'))
    expect(screen.getByLabelText('Capped tubes')).toHaveValue('10')
    expect(planOf(store)).toBe(two)
    await user.click(press('Save, next station'))
  })
})

describe('taking in', () => {
  test('is written down for all stations in one step, and for one alone', async () => {
    const { go, user, store } = openTask(/^Taking in/)
    await go()
    fireEvent.change(screen.getByLabelText('Gate'), { target: { value: '2026-06-20' } })
    fireEvent.change(screen.getByLabelText('Taken in on'), { target: { value: '2026-06-27' } })
    await user.click(press('For the other 1 station'))
    expect(recordsOf(planOf(store))).toEqual({
      'station-1': { takenIn: '2026-06-20' },
      'station-2': { takenIn: '2026-06-27' },
    })
    expect(store.getState().document.past).toHaveLength(2)
  })

  test('too soon after new caps is told', async () => {
    const plan: Plan = {
      ...two,
      seasons: [{ ...two.seasons[0]!, records: { 'station-1': { visits: [{ date: '2026-06-13', capped: 8 }] } } }],
    }
    const { go, store } = openTask(/^Taking in/, plan)
    await go()
    fireEvent.change(screen.getByLabelText('Gate'), { target: { value: '2026-06-20' } })
    expect(screen.getByText(/^New caps were still counted on 13 June/)).toBeVisible()
    expect(recordsOf(planOf(store))?.['station-1']?.takenIn).toBe('2026-06-20')
    setPage(store, 'ground')
  })
})

function withRecord(record: NonNullable<ReturnType<typeof recordsOf>>[string]): Plan {
  return { ...two, seasons: [{ ...two.seasons[0]!, records: { 'station-1': record } }] }
}

const type = (label: string, value: number) => fireEvent.change(screen.getByLabelText(label), { target: { value } })

describe('opening day', () => {
  test('keeps what was counted and leaves out what was not', async () => {
    const { go, user, store } = openTask(/^Opening day/, withRecord({ visits: [{ date: '2026-05-13', capped: 22 }] }))
    await go()
    expect(screen.getByRole('complementary', { name: 'Dust and mould' })).toBeVisible()
    expect(screen.getByRole('complementary', { name: 'Cleaning agents' })).toBeVisible()
    await user.click(press(/^All 22 capped/))
    type('Cells', 30)
    type('Healthy female cocoons', 10)
    type('Pollen mites', 2)
    expect(screen.getByText('18 of 30 cells are not accounted for yet.')).toBeVisible()
    await user.click(press('Save the opening of Gate'))
    expect(recordsOf(planOf(store))?.['station-1']?.opening).toEqual({
      date: '2026-05-20',
      tubesOpened: 22,
      cells: 30,
      females: 10,
      losses: { mite: 2 },
    })
  })

  test('stops more cocoons and losses than cells', async () => {
    const { go } = openTask(/^Opening day/)
    await go()
    type('Cells', 10)
    type('Healthy female cocoons', 6)
    type('Healthy male cocoons', 5)
    expect(screen.getByRole('alert')).toHaveTextContent('Cocoons and losses come to 11, more than the 10 cells.')
    expect(press('Save the opening of Gate')).toBeDisabled()
  })

  test('goes tube by tube, each saved by itself; from two tubes on it says how sure the losses are', async () => {
    const { go, user, store } = openTask(/^Opening day/, withRecord({ visits: [{ date: '2026-05-13', capped: 22 }] }))
    await go()
    await user.click(press('Tube by tube'))
    for (const [cells, lost] of [
      [8, 1],
      [6, 3],
      [7, 0],
    ] as const) {
      type('Cells', cells)
      type('Mould', lost)
      await user.click(press(/^Save tube \d, next tube/))
    }
    expect(recordsOf(planOf(store))?.['station-1']?.opening).toEqual({
      date: '2026-05-20',
      tubesOpened: 3,
      tubes: [
        { cells: 8, losses: { mould: 1 } },
        { cells: 6, losses: { mould: 3 } },
        { cells: 7, losses: { mould: 0 } },
      ],
    })
    expect(store.getState().document.past).toHaveLength(3)
    const found = within(screen.getByRole('region', { name: 'What the opened tubes say' }))
    expect(found.getByText(/^19% of 21 cells were lost; over all tubes .* 19 times in 20/)).toBeVisible()
    expect(found.getByText(/^Open about \d+ tubes more for that, of 19 left/)).toBeVisible()
    await user.click(press('Delete tube 2'))
    expect(recordsOf(planOf(store))?.['station-1']?.opening?.tubes).toHaveLength(2)
  })
})

describe('lots and share-out', () => {
  const opened = withRecord({
    visits: [{ date: '2026-06-13', capped: 10 }],
    opening: { date: '2026-10-10', tubesOpened: 10, cells: 110, females: 40, males: 60, losses: { mite: 10 } },
  })

  test('a lot of the season’s own cocoons is made of what was found', async () => {
    const { go, user, store } = openTask(/^Cocoon lots/, opened)
    await go()
    await user.click(press(/^Add “own 2026”: 100 cocoons found in 2026, 40% females/))
    expect(planOf(store).lots).toEqual([
      { id: 'own 2026', origin: 'own nests', count: 100, season: 2026, femaleShare: 0.4 },
    ])
    expect(screen.getByText('own 2026: 100 cocoons')).toBeVisible()
  })

  test('shares go out to the last cocoon and penny, by the rule', async () => {
    const { go, user, store } = openTask(/^Share-out/, opened)
    await go()
    await user.type(screen.getByLabelText('Cocoons to give away'), '50{Enter}')
    await user.selectOptions(screen.getByLabelText('Rule'), 'By hours worked')
    fireEvent.change(screen.getByLabelText(/^Who gets a share/), { target: { value: 'Ann; 3\nBob; 2\nCy' } })
    expect(screen.getByText(/^The figure behind Cy is missing/)).toBeVisible()
    fireEvent.change(screen.getByLabelText(/^Who gets a share/), { target: { value: 'Ann; 3\nBob; 2\nCy; 1' } })
    await user.type(screen.getByLabelText('Costs to share out too, in your money'), '10{Enter}')
    expect(screen.getByText(/Costs: 1 pay 1\.67, 1 pay 3\.33 and 1 pay 5\.00/)).toBeVisible()
    await user.click(press('Save the share-out'))
    expect(planOf(store).seasons[0]?.shareOut).toEqual({
      rule: 'hours',
      shares: [
        { to: 'Ann', measure: 3, cocoons: 25 },
        { to: 'Bob', measure: 2, cocoons: 17 },
        { to: 'Cy', measure: 1, cocoons: 8 },
      ],
    })
    expect(screen.getByText('100 cocoons were found in 2026; 50 stay as stock.')).toBeVisible()
  })

  test('numbered plots need no typing', async () => {
    const { go, user } = openTask(/^Share-out/, opened)
    await go()
    await user.type(screen.getByLabelText('How many'), '38{Enter}')
    await user.click(press('Add Plot 1 to 38'))
    await user.type(screen.getByLabelText('Costs to share out too, in your money'), '322{Enter}')
    expect(screen.getByText(/Costs: 24 pay 8\.47 and 14 pay 8\.48/)).toBeVisible()
  })
})

describe('fruit counts', () => {
  test('of flowers are kept until the fruit can be counted', async () => {
    const { go, user, store } = openTask(/^Fruit counts/)
    await go()
    await user.selectOptions(screen.getByLabelText('Planting'), 'Row 1')
    type('Flowers', 200)
    await user.click(press('Save the count of Row 1'))
    expect(planOf(store).seasons[0]?.fruitSet).toEqual({ 'row-1': { flowers: 200 } })
    expect(screen.getByText(/200 flowers; fruit not counted yet/)).toBeVisible()
    type('Fruit on the same branches', 300)
    expect(screen.getByRole('alert')).toHaveTextContent('300 fruit cannot come of 200 flowers.')
    type('Fruit on the same branches', 31)
    await user.click(press('Save the count of Row 1'))
    expect(screen.getByText(/31 fruit of 200 flowers, 16%/)).toBeVisible()
  })
})

describe('what a year says', () => {
  const told: Plan = {
    ...two,
    seasons: [
      {
        ...two.seasons[0]!,
        stations: {
          'station-1': { tubes: 40, releases: [{ date: '2026-04-06', females: 20 }] },
          'station-2': { tubes: 30, releases: [{ date: '2026-04-06', females: 20 }] },
        },
        records: {
          'station-1': {
            visits: [{ date: '2026-06-13', capped: 10 }],
            opening: {
              date: '2026-10-10',
              tubesOpened: 10,
              cells: 100,
              females: 30,
              males: 40,
              losses: { mite: 20, mould: 10 },
            },
          },
        },
      },
    ],
  }

  test('begins with the answer, and leaves uncounted stations out', async () => {
    const { go } = openYears(told)
    await go()
    expect(
      screen.getByText(
        /^About \d+ females nested in 2026 at the 1 of 2 stations that were counted.*each female set out left 1\.5 daughters at the 1 station opened\.$/,
      ),
    ).toBeVisible()
    expect(screen.getByText(/^1 of 2 stations counted, 1 opened\./)).toBeVisible()
    const shed = within(screen.getByRole('region', { name: 'Shed' }))
    expect(shed.getByText('Nothing can be said: it was not counted')).toBeVisible()
  })

  test('says what to do with a station and why, and opens the working of every figure', async () => {
    const { go, user, container } = openYears(told)
    await go()
    const gate = within(screen.getByRole('region', { name: 'Gate' }))
    expect(gate.getByText('Clean it, with new tubes')).toBeVisible()
    expect(gate.getByText(/^30% of its cells were lost in 2026; over 25% is taken for many\.$/)).toBeVisible()
    const figures = [...container.querySelectorAll<HTMLButtonElement>('.years button.figure')]
    expect(figures.length).toBeGreaterThan(15)
    for (const figure of figures) {
      await user.click(figure)
      expect(screen.getByRole('region', { name: 'The rule in words' })).toBeVisible()
    }
  })

  test('puts coverage as found beside coverage as planned', async () => {
    const { go, store } = openYears(told)
    await go()
    const { plan, revision } = store.getState().document
    const outcome = yearRecord(plan!, 2026)
    if (!outcome.ok) throw new Error('not computed')
    const value = { plan: plan!, year: 2026, prices: null, record: outcome.value }
    act(() =>
      store.setState(({ results }) => ({ results: { ...results, found: { status: 'ready', value, revision } } })),
    )
    const found = within(screen.getByRole('region', { name: 'What 2026 says' }))
    expect(found.getByText('Coverage as planned')).toBeVisible()
    expect(found.getByText('Coverage as found')).toBeVisible()
    expect(found.getByText(/^Type your four prices under/)).toBeVisible()
  })
})
