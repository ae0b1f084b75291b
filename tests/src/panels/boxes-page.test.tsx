import { act, fireEvent, screen, within } from '@testing-library/react'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { moveFeatures } from '#geo/plan/edits-features'
import { setPlanMembers } from '#geo/plan/edits-settings'
import type { SuggestOptions } from '#geo/siting/question'
import { suggest } from '#geo/siting/suggest'
import type { Suggestion } from '#geo/siting/suggestion'
import { stockFor } from '#geo/stocking/programme'
import { cocoonsToBeSure } from '#geo/stocking/sure'
import { edit, setPage, setYear, undo } from '../../../src/state/actions'
import { changeAsk } from '../../../src/state/boxes-actions'
import type { PlannerStore } from '../../../src/state/store'
import { createSitingEngine } from '../../../src/worker/siting-engine'
import { startSiting } from '../../../src/worker/siting-schedule'
import { smallPlan } from '../../support/builders'
import { fakeWorkers } from '../worker/fake-port'
import { planOf, renderApp } from './render-app'

let stop = () => {}
afterEach(() => stop())

const plan = smallPlan()

async function suggested(options: Partial<SuggestOptions> = {}): Promise<Suggestion> {
  const outcome = await suggest(plan, 2026, { question: { kind: 'stations', count: 2 }, ...options })
  if (!outcome.ok) throw new RangeError('the small plan has places')
  return outcome.value
}

function opened(services = {}) {
  const app = renderApp({ plan, services })
  const workers = fakeWorkers()
  stop = startSiting(app.store, createSitingEngine(app.store, workers.makePort))
  act(() => setPage(app.store, 'boxes'))
  const look = () => app.user.click(screen.getByRole('button', { name: 'Look for places' }))
  const answer = async (value: unknown, name: 'suggest' | 'stock' = 'suggest') => {
    await act(() => workers.of(name).at(-1)!.answer({ ok: true, value, problems: [] }))
  }
  return { ...app, workers, look, answer }
}

async function answered(options: Partial<SuggestOptions> = {}, services = {}) {
  const app = opened(services)
  await app.look()
  const suggestion = await suggested(options)
  await app.answer(suggestion)
  return { ...app, suggestion }
}

const lead = (container: HTMLElement) => container.querySelector('.lead')!.textContent

const stationsOf = (store: PlannerStore) =>
  planOf(store).features.filter(({ properties }) => properties.kind === 'station')

describe('the question', () => {
  test('goes to the engine as it is filled in', async () => {
    const { user, workers, look } = opened()
    await user.clear(screen.getByLabelText('Stations to add'))
    await user.type(screen.getByLabelText('Stations to add'), '3{Enter}')
    await user.type(screen.getByLabelText('Female cocoons in each'), '60{Enter}')
    await user.selectOptions(screen.getByLabelText('North gate'), 'may move, with its cocoons')
    await user.type(screen.getByLabelText('A tube'), '0.4{Enter}')
    await user.type(screen.getByLabelText('Mud no farther than'), '80{Enter}')
    await user.type(screen.getByLabelText('Row 2'), '2{Enter}')
    await look()
    const [asked, year, wish, proof] = workers.of('suggest')[0]!.input
    expect([asked, year, proof]).toEqual([plan, 2026, null])
    expect(wish).toMatchObject({
      question: { kind: 'stations', count: 3, cocoons: 60 },
      roles: { 'station-1': 'move' },
      prices: { station: 30, tube: 0.4 },
      weights: { 'row-2': 2 },
      setOf: 1,
      places: { mudWithin: 80 },
    })
  })

  test('leaves to the engine what is left to it, and says what that is', async () => {
    const { workers, look } = opened()
    // 50 nesting females at 0.9 that emerge and 0.5 that stay.
    expect(screen.getByLabelText('Female cocoons in each')).toHaveAttribute('placeholder', '112')
    expect(screen.getByLabelText('A station, without tubes')).toHaveAccessibleDescription('30 assumed')
    await look()
    expect(workers.of('suggest')[0]!.input[2]).toMatchObject({ question: { kind: 'stations', count: 2 }, places: {} })
  })

  test.each([
    ['Enough for every planting', 'may move, stocked anew, or be spared'],
    ['The most for so much money', 'may move, with its cocoons'],
    ['The most from so many cocoons', 'may move, with its cocoons'],
  ])('lets stations move: %s', async (kind, role) => {
    const { user, workers, look } = opened()
    await user.selectOptions(screen.getByLabelText('What is asked'), kind)
    await user.selectOptions(screen.getByLabelText('North gate'), role)
    await look()
    expect(workers.of('suggest')[0]!.input[2]).toMatchObject({ roles: { 'station-1': 'move' } })
  })

  test('may be of another bee than the plan’s', async () => {
    const { user, workers, look } = opened()
    await user.selectOptions(screen.getByLabelText('Bee of new stations'), 'osmia-bicornis')
    await look()
    expect(workers.of('suggest')[0]!.input[2]).toMatchObject({ bee: 'osmia-bicornis' })
  })

  test('may be stocked on a day of the grower’s own, in its season only', async () => {
    const { store, workers, look, answer } = opened()
    fireEvent.change(screen.getByLabelText('Or all on one day'), { target: { value: '2026-04-20' } })
    await look()
    expect(workers.of('suggest')[0]!.input[2]).toMatchObject({ releases: [{ date: '2026-04-20', share: 1 }] })
    await answer(await suggested())
    act(() => setYear(store, 2025))
    await look()
    expect(workers.of('suggest')[1]!.input[2]).not.toHaveProperty('releases')
  })

  test('may be stocked on the dates advised, unless a day is set', async () => {
    const { user, store, workers, look, answer } = opened()
    await user.selectOptions(screen.getByLabelText('Set out on'), 'advice')
    expect(screen.getByText(/on the dates advised/)).toBeInTheDocument()
    await look()
    expect(workers.of('suggest')[0]!.input[2]).toMatchObject({ dates: 'advice' })
    await answer(await suggested())
    act(() => changeAsk(store, { date: '2026-04-20' }))
    await look()
    expect(workers.of('suggest')[1]!.input[2]).not.toHaveProperty('dates')
  })

  test('asks for whole stations only, and says so', async () => {
    const { user, store } = opened()
    await user.clear(screen.getByLabelText('Stations to add'))
    await user.type(screen.getByLabelText('Stations to add'), '1.5{Enter}')
    expect(screen.getByRole('alert')).toHaveTextContent(/whole numbers/)
    expect(store.getState().boxes.ask.count).toBe(2)
  })
})

describe('while it works', () => {
  test('it tells what it is at, the best so far and the bound, and can be stopped', async () => {
    const { user, store, workers, look } = opened()
    await look()
    const tell = workers.of('suggest')[0]!.input[4] as (progress: object) => void
    expect(screen.getByText('Looking at places and what they would do.')).toHaveRole('status')
    act(() => tell({ stage: 'search', coverage: 0.731, bound: null }))
    expect(screen.getByText('Trying places against each other.')).toBeVisible()
    expect(screen.getByText('Best so far').nextSibling).toHaveTextContent('73.1%')
    expect(screen.getByText('None can exceed').nextSibling).toHaveTextContent('not known yet')
    await user.click(screen.getByRole('button', { name: 'Stop' }))
    expect(screen.queryByRole('progressbar')).toBeNull()
    expect(store.getState().results.suggestion).toEqual({ status: 'idle' })
    expect(screen.getByRole('button', { name: 'Look for places' })).toBeEnabled()
    act(() => tell({ stage: 'bound', coverage: 0.8, bound: 0.9 }))
    expect(store.getState().boxes.progress).toBeNull()
  })

  test('for a target it tells cost, not coverage', async () => {
    const { workers, look } = opened()
    await look()
    const tell = workers.of('suggest')[0]!.input[4] as (progress: object) => void
    act(() => tell({ stage: 'bound', coverage: null, bound: null, cost: 3447, costBound: 3362.55 }))
    expect(screen.getByText('Best so far').nextSibling).toHaveTextContent('3,447')
    expect(screen.getByText('None can cost less than').nextSibling).toHaveTextContent(/^3,362$/)
  })

  test('a proof that is stopped leaves the answer, with the bound as far as it came', async () => {
    const { user, store, workers, suggestion } = await answered()
    const { coverage } = suggestion.after
    const loose = { ...suggestion, bound: { coverage: coverage! + 0.1, proven: false, method: 'lagrangian' as const } }
    act(() =>
      store.setState(({ results, document }) => ({
        results: {
          ...results,
          suggestion: {
            status: 'ready',
            revision: document.revision,
            value: { plan, year: 2026, wish: { question: { kind: 'stations', count: 2 } }, suggestion: loose },
          },
        },
      })),
    )
    await user.click(screen.getByRole('button', { name: 'Prove it' }))
    const call = workers.of('suggest').at(-1)!
    expect(call.input[3]).toEqual({ timeLimit: 600 })
    act(() => (call.input[4] as (progress: object) => void)({ stage: 'proof', coverage, bound: coverage! + 0.02 }))
    await user.click(screen.getByRole('button', { name: 'Stop, and keep what is known' }))
    const job = store.getState().results.suggestion
    expect(job.status === 'ready' && job.value.suggestion.bound.coverage).toBeCloseTo(coverage! + 0.02, 12)
    expect(screen.getByText(/as far as a general solver came/)).toBeVisible()
  })
})

describe('the answer', () => {
  test('is one sentence first, then before and after by planting', async () => {
    const { container, suggestion } = await answered()
    expect(lead(container)).toMatch(
      /^Two more stations lift coverage from about \d+% to \d+%; no two on these places can/,
    )
    const table = within(screen.getByRole('table', { name: /Coverage of each planting in 2026/ }))
    for (const { name, before, after } of suggestion.plantings) {
      const row = table.getByRole('row', { name: new RegExp(`^${name}`) })
      expect(row).toHaveTextContent(`${Math.round(before! * 100)}%`)
      expect(row).toHaveTextContent(`${Math.round(after! * 100)}%`)
    }
  })

  test('every figure opens its working', async () => {
    const { user } = await answered()
    await user.click(screen.getByRole('button', { name: /coverage of The orchard as it would be/ }))
    expect(screen.getByText(/counted again with the suggested stations in it/)).toBeVisible()
    await user.click(screen.getByRole('button', { name: /cost in all/ }))
    const working = within(screen.getByRole('region', { name: 'How was this worked out?' }))
    expect(working.getByText('Stations').nextSibling).toHaveTextContent('2 at 30: 60')
    expect(working.getByText('Prices assumed')).toBeVisible()
  })

  test.each([
    { kind: 'money', amount: 300 },
    { kind: 'cocoons', cocoons: 200, stations: 1 },
  ] as const)('can be proven, what a budget buys too: $kind', async question => {
    const app = opened()
    act(() => changeAsk(app.store, question.kind === 'money' ? question : { kind: 'cocoons', cocoons: 200, spread: 1 }))
    await app.look()
    const suggestion = await suggested({ question })
    const loose = { ...suggestion.bound, coverage: 1, proven: false }
    await app.answer({ ...suggestion, bound: loose })
    await app.user.click(screen.getByRole('button', { name: 'Prove it' }))
    const [, , wish, proof] = app.workers.of('suggest').at(-1)!.input
    expect([wish, proof]).toMatchObject([{ question }, { timeLimit: 600 }])
  })

  test('goes into the plan as one step of undo', async () => {
    const { user, store } = await answered()
    await user.click(screen.getByRole('button', { name: 'Accept all' }))
    expect(stationsOf(store)).toHaveLength(4)
    expect(stationsOf(store).map(({ properties }) => properties.name)).toEqual([
      'North gate',
      undefined,
      'Nest station 3',
      'Nest station 4',
    ])
    const uses = planOf(store).seasons.find(({ year }) => year === 2026)!.stations!
    expect(uses['station-3']).toMatchObject({ tubes: expect.any(Number), releases: [{ females: 112, males: 202 }] })
    expect(store.getState().document.past).toHaveLength(1)
    act(() => undo(store))
    expect(planOf(store)).toBe(plan)
  })

  test('can be taken in part', async () => {
    const { user, store } = await answered()
    await user.click(screen.getByRole('checkbox', { name: /Take it: Nest station 3/ }))
    await user.click(screen.getByRole('button', { name: 'Accept 1 chosen station' }))
    expect(stationsOf(store).map(({ id }) => id)).toEqual(['station-1', 'station-2', 'station-4'])
  })

  test('moves a station under a name that is its own in other seasons', async () => {
    const { user, store } = await answered({
      question: { kind: 'stations', count: 1 },
      roles: { 'station-1': 'move' },
    })
    await user.click(screen.getByRole('button', { name: 'Accept all' }))
    const names = stationsOf(store).map(({ id, properties }) => [id, properties.name])
    expect(names).toContainEqual(['station-1-2026', 'North gate'])
    expect(store.getState().document.past).toHaveLength(1)
  })

  test('belongs to an older plan once the ground has changed, until that is undone', async () => {
    const { store, container } = await answered()
    act(() => edit(store, setPlanMembers({ name: 'Hill' })))
    expect(screen.getByRole('button', { name: 'Accept all' })).toBeEnabled()
    act(() => edit(store, moveFeatures(['row-1'], { lng: 1e-4, lat: 0 })))
    expect(lead(container)).toMatch(/^Of an older plan: Two more stations/)
    expect(screen.queryByRole('button', { name: 'Accept all' })).toBeNull()
    expect(screen.getByRole('button', { name: 'Look again' })).toBeVisible()
    act(() => undo(store))
    expect(screen.getByRole('button', { name: 'Accept all' })).toBeEnabled()
  })

  test('can be discarded', async () => {
    const { user, container } = await answered()
    await user.click(screen.getByRole('button', { name: 'Discard' }))
    expect(lead(container)).toBe('Where would more boxes do most good, and how many?')
  })
})

describe('a suggested station put elsewhere', () => {
  test('is tried out, told against the suggestion, and accepted where it is', async () => {
    const { user, store, workers, suggestion } = await answered()
    expect(workers.of('tryPlan')).toHaveLength(1)
    await user.click(screen.getByRole('button', { name: 'Nest station 3' }))
    await user.click(screen.getByRole('button', { name: '1 m north' }))
    const moved = store.getState().boxes.moved['station-3']!
    expect(moved[1]).toBeGreaterThan(suggestion.stations[0]!.at[1])
    await user.click(screen.getByRole('button', { name: 'Accept all' }))
    expect(stationsOf(store).find(({ id }) => id === 'station-3')!.geometry.coordinates).toEqual(moved)
  })

  test('goes back where it was suggested', async () => {
    const { user, store } = await answered()
    await user.click(screen.getByRole('button', { name: 'Nest station 3' }))
    await user.click(screen.getByRole('button', { name: '1 m east' }))
    await user.click(screen.getByRole('button', { name: 'Put it back where it was suggested' }))
    expect(store.getState().boxes.moved).toEqual({})
  })
})

describe('the shopping list', () => {
  test('adds up, and is saved as a table', async () => {
    const saved = vi.fn(async (_name: string, _text: string) => 'Saved.')
    const { user } = await answered({}, { saveTable: saved })
    const table = within(screen.getByRole('table', { name: 'What the new stations ask for' }))
    // 2 x 30 + 224 x 1 + 404 x 0.5 + 334 tubes x 0.25
    expect(table.getByRole('row', { name: /^Total/ })).toHaveTextContent('569.50')
    await user.click(screen.getByRole('button', { name: 'Save as CSV' }))
    const [name, text] = saved.mock.calls[0]!
    expect(name).toBe('Small orchard shopping list 2026')
    const lines = text.split('\r\n')
    expect(lines.slice(0, 5)).toEqual([
      'Item,Number,Price each,Sum',
      'Stations,2,30,60',
      '"Female cocoons, Osmia lignaria",224,1,224',
      '"Male cocoons, Osmia lignaria",404,0.5,202',
      expect.stringMatching(/^"Tubes, bore .* deep or more",334,0.25,83.5$/),
    ])
    expect(lines).toContain('Total,,,569.5')
    expect(lines).toContain('without a lot,Osmia lignaria,60,108')
  })

  test('is copied as plain lines', async () => {
    const copied = vi.fn(async (_text: string) => {})
    const { user } = await answered({}, { copyText: copied })
    await user.click(screen.getByRole('button', { name: 'Copy the list' }))
    expect(copied.mock.calls[0]![0]).toMatch(/^Stations: 2 at 30 = 60\n/)
    expect(await screen.findByText('The list is copied.')).toBeVisible()
  })

  test('has more cocoons for those who would be surer, and says how many and why', async () => {
    const { user } = await answered()
    // 224 cocoons at 0.9 x 0.5: 100 females, every other time.
    const sure = cocoonsToBeSure(100, 0.45, 0.9)
    const working = () => within(screen.getByRole('region', { name: 'How was this worked out?' }))
    await user.click(screen.getByRole('button', { name: /female cocoons to be surer/ }))
    expect(working().getByText('Chance that a cocoon gives one').nextSibling).toHaveTextContent('45%')
    expect(working().getByText(/binomial distribution/)).toBeVisible()
    await user.click(screen.getByRole('checkbox', { name: /nine times in ten sure/ }))
    const table = within(screen.getByRole('table', { name: 'What the new stations ask for' }))
    expect(table.getByRole('row', { name: /^Female cocoons/ })).toHaveTextContent(String(sure))
    expect(table.getByRole('row', { name: /^Male cocoons/ })).toHaveTextContent(String(Math.ceil(sure * 1.8)))
  })

  test('of a stock leaves out tubes that hang there and, on asking, cocoons that are planned', async () => {
    const { user, answer } = opened()
    await user.selectOptions(screen.getByLabelText('What is asked'), 'Stations stay: fewest cocoons')
    await user.click(screen.getByRole('button', { name: 'Work out the cocoons' }))
    const outcome = stockFor(plan, 2026, { target: 0.6, isFree: true })
    if (!outcome.ok) throw new RangeError('the small plan can be stocked')
    await answer(outcome.value, 'stock')
    const [{ femaleCocoons, tubes }] = outcome.value.stations as [(typeof outcome.value.stations)[number]]
    const hanging = plan.seasons.find(({ year }) => year === 2026)!.stations!['station-1']!.tubes ?? 0
    const table = within(screen.getByRole('table', { name: 'What the stations ask for' }))
    expect(table.getByRole('row', { name: /^Female cocoons/ })).toHaveTextContent(String(femaleCocoons))
    if (tubes > hanging) expect(table.getByRole('row', { name: /^Tubes/ })).toHaveTextContent(String(tubes - hanging))
    else expect(table.queryByRole('row', { name: /^Tubes/ })).toBeNull()
    await user.click(screen.getByRole('checkbox', { name: /Leave out the cocoons/ }))
    const left = table.queryByRole('row', { name: /^Female cocoons/ })
    if (femaleCocoons > 60) expect(left).toHaveTextContent(String(femaleCocoons - 60))
    else expect(left).toBeNull()
  })
})

test('coverage by the grower’s weights says what they were, and is not told as that of the page Coverage', async () => {
  const app = opened()
  await app.user.type(screen.getByLabelText('Row 2'), '3{Enter}')
  await app.look()
  await app.answer(await suggested({ weights: { 'row-2': 3 } }))
  await app.user.click(screen.getByRole('button', { name: /coverage of The orchard, by your weights now/ }))
  const working = within(screen.getByRole('region', { name: 'How was this worked out?' }))
  expect(working.getByText('Each female at Row 2 counts').nextSibling).toHaveTextContent('3 times')
  expect(working.getByText('Each female at any other planting counts').nextSibling).toHaveTextContent('once')
})

describe('stations stay', () => {
  test('the fewest cocoons come by station and go into the plan as one step', async () => {
    const { user, store, workers, answer, container } = opened()
    await user.selectOptions(screen.getByLabelText('What is asked'), 'Stations stay: fewest cocoons')
    await user.clear(screen.getByLabelText('Coverage wanted, percent'))
    await user.type(screen.getByLabelText('Coverage wanted, percent'), '60{Enter}')
    await user.click(screen.getByRole('button', { name: 'Work out the cocoons' }))
    expect(workers.of('stock')[0]!.input[2]).toMatchObject({ target: 0.6, setOf: 1 })
    const outcome = stockFor(plan, 2026, { target: 0.6 })
    if (!outcome.ok) throw new RangeError('the small plan can be stocked')
    await answer(outcome.value, 'stock')
    expect(lead(container)).toMatch(/female cocoons at 1 station/)
    const changes = within(screen.getByRole('table', { name: /now and with these cocoons/ }))
    for (const { name, before, coverage } of outcome.value.plantings) {
      const row = changes.getByRole('row', { name: new RegExp(`^${name}`) })
      for (const share of [before!, coverage!]) expect(row).toHaveTextContent(`${Math.round(share * 100)}%`)
    }
    const row = screen.getByRole('row', { name: /^North gate 60/ })
    expect(row).toHaveTextContent(String(outcome.value.stations[0]!.femaleCocoons))
    await user.click(screen.getByRole('button', { name: 'Accept these cocoons' }))
    const uses = planOf(store).seasons.find(({ year }) => year === 2026)!.stations!
    expect(uses['station-1']!.releases![0]!.females).toBe(outcome.value.stations[0]!.femaleCocoons)
    act(() => undo(store))
    expect(planOf(store)).toBe(plan)
  })
})

test('without bloom there is nothing to look for, and the page says where to go', () => {
  const { store } = renderApp({ plan: smallPlan({ seasons: [{ year: 2026 }] }) })
  act(() => setPage(store, 'boxes'))
  expect(screen.getByText(/No planting has bloom dates for 2026/)).toBeVisible()
  expect(screen.queryByRole('button', { name: 'Look for places' })).toBeNull()
})
