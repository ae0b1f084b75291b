import { screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import { evaluate } from '#geo/report/evaluate'
import { coverageSentence } from '../../../src/panels/coverage/coverage-sentence'
import { rules } from '../../../src/panels/working/rules'
import { setPage } from '../../../src/state/actions'
import { percent } from '../../../src/text/words'
import { smallPlan, smallSeason } from '../../support/builders'
import { planOf, renderApp } from './render-app'

function openCoverage(plan = smallPlan()) {
  const app = renderApp({ plan })
  app.compute()
  return { ...app, go: () => app.user.click(screen.getByRole('button', { name: 'Coverage' })) }
}

function resultOf(id: string) {
  const outcome = evaluate(smallPlan(), 2026)
  if (!outcome.ok) throw new RangeError('the small plan has a report')
  return outcome.value.plantings.find(planting => planting.id === id)!
}

describe('the sentence', () => {
  const planting = { ...resultOf('row-1'), coverage: 0.95, shortBy: 1 }
  test.each([
    [[], 'Nothing stands there that asks for bees.'],
    [[{ ...planting, coverage: null, shortBy: null }], 'Nothing can be counted yet: no planting has bloom dates.'],
    [[planting], 'Enough bees for Row 1.'],
    [[{ ...planting, coverage: 0.4, shortBy: 38 }], 'Not enough bees for Row 1: about 38 females short.'],
    [[{ ...planting, coverage: 0.4, shortBy: 0.8 }], 'Not enough bees for Row 1: about 1 female short.'],
    [[planting, planting], 'All 2 plantings get enough bees.'],
    [
      [planting, { ...planting, name: 'Late apple', coverage: 0.4, shortBy: 38 }],
      '1 of 2 plantings gets enough bees; furthest from enough: Late apple, about 38 females short.',
    ],
  ])('%#', (plantings, sentence) => {
    expect(coverageSentence({ plantings })).toBe(sentence)
  })
})

describe('the coverage page', () => {
  test('gives each planting three verdicts in words with their figures', async () => {
    const { go } = openCoverage()
    await go()
    const { reach, timingMatch, coverage } = resultOf('row-1')
    const entry = screen.getByRole('button', { name: 'Row 1' }).closest('li')!
    expect(within(entry).getByText('In reach').nextSibling).toHaveTextContent(`yes, ${percent(reach!)}`)
    expect(within(entry).getByText('In time').nextSibling).toHaveTextContent(`partly, ${percent(timingMatch!)}`)
    expect(within(entry).getByText('In number').nextSibling).toHaveTextContent(percent(coverage!))
  })

  test('says what holds a planting back, what each remedy gains, and what to do', async () => {
    const season = smallSeason(2026)
    const poor = { ...season, stations: { 'station-1': { releases: [{ date: '2026-04-06', females: 12 }] } } }
    const { go } = openCoverage(
      smallPlan({ seasons: [poor], features: smallPlan().features.slice(0, 3), parameters: { backgroundBlossom: 0 } }),
    )
    await go()
    const entry = screen.getByRole('button', { name: 'Row 1' }).closest('li')!
    expect(within(entry).getByText(/^Short by about .*; too few bees$/)).toBeVisible()
    expect(within(entry).getByText(/Set out more cocoons/)).toBeInTheDocument()
    expect(within(entry).getByText('twice the bees').nextSibling).toHaveTextContent(/^\+\d+ points?$/)
  })

  test('tells the busiest day as the least that is needed, not as what to stock for', async () => {
    const { go } = openCoverage()
    await go()
    expect(screen.getByText(/Most are wanted at once on 24 April 2026/)).toHaveTextContent(
      /the least needed at once.*added up overstate.*single release date more than that are needed.*Coverage tells/,
    )
    expect([...rules.busiestDay].join(' ')).toMatch(/the least that is needed at once.*told by coverage/)
  })

  test('says where no single change is enough', async () => {
    const { go, store } = openCoverage()
    const { report } = store.getState().results
    if (report.status !== 'ready') throw new TypeError('computed above')
    const plantings = report.value.report.plantings.map(planting => ({
      ...planting,
      ...(planting.id === 'row-1' ? { coverage: 0.01, limit: 'none' as const } : {}),
    }))
    const value = { ...report.value, report: { ...report.value.report, plantings } }
    store.setState(({ results }) => ({ results: { ...results, report: { ...report, value } } }))
    await go()
    const entry = screen.getByRole('button', { name: 'Row 1' }).closest('li')!
    expect(within(entry).getByText(/^Short by .*; no single change is enough$/)).toBeVisible()
    expect(entry).toHaveTextContent(
      /No single change is enough.*\. It takes far more bees, or several changes together\./,
    )
  })

  test('never promises a crop', async () => {
    const { go } = openCoverage()
    await go()
    expect(screen.getByText(/Enough bees do not make a crop by themselves/)).toBeVisible()
  })

  test('shows tubes wanted against tubes there, and cocoons of both sexes', async () => {
    const { go } = openCoverage()
    await go()
    const entry = screen.getByRole('button', { name: 'North gate' }).closest('li')!
    expect(entry).toHaveTextContent(/60 female, \d+ male/)
    expect(entry).toHaveTextContent(/\d+ wanted, 120 there/)
  })

  test('puts both rules of thumb side by side', async () => {
    const { go } = openCoverage()
    await go()
    const table = screen.getByRole('table', { name: /by two rules of thumb/ })
    expect(within(table).getByRole('row', { name: /^Apple/ })).toHaveTextContent(/\d+ to \d+/)
  })

  test('keeps the figures of an older plan in sight, greyed, until new ones come', async () => {
    const { go, store, container } = openCoverage()
    await go()
    expect(container.querySelector('.page .stale')).toBeNull()
    const { results, document } = store.getState()
    if (results.report.status !== 'ready') throw new TypeError('computed above')
    const last = results.report.value
    store.setState({ results: { ...results, report: { status: 'running', last, revision: document.revision } } })
    expect(await screen.findByRole('button', { name: 'Row 1' })).toBeVisible()
    expect(container.querySelector('.page .stale')).toHaveAttribute('aria-busy', 'true')
  })

  test('says why nothing can be worked out', async () => {
    const { store } = renderApp({ plan: smallPlan() })
    const report = { status: 'failed', reason: 'The plan has no season 2026.', last: null } as const
    store.setState({ results: { ...store.getState().results, report } })
    setPage(store, 'coverage')
    expect(await screen.findByRole('alert')).toHaveTextContent('The plan has no season 2026.')
  })
})

describe('how a figure was worked out', () => {
  test('opens from the figure with rule, range, inputs and source, and closes again', async () => {
    const { go, user } = openCoverage()
    await go()
    await user.click(screen.getByRole('button', { name: /nesting females at North gate/ }))
    const working = within(screen.getByRole('region', { name: 'How was this worked out?' }))
    // 60 cocoons x 0.9 emerge x 0.5 stay, the table's figures for this bee.
    expect(working.getByText('27 females')).toBeVisible()
    expect(working.getByText(/^Between [\d.]+ and [\d.]+: each figure/)).toBeVisible()
    expect(working.getByText(/Female cocoons set out times the share that emerges/)).toBeVisible()
    expect(working.getByLabelText('Establishment')).toHaveAccessibleDescription('Default 50%, 20% to 70%')
    expect(working.getByText(/Of the females released 65 % nested/)).toBeInTheDocument()
    await user.click(working.getByRole('button', { name: 'Close' }))
    expect(screen.queryByRole('region', { name: 'How was this worked out?' })).toBeNull()
  })

  test('takes an own value for an input, and the default again', async () => {
    const { go, user, store, compute } = openCoverage()
    await go()
    await user.click(screen.getByRole('button', { name: /nesting females at North gate/ }))
    const working = within(screen.getByRole('region', { name: 'How was this worked out?' }))
    await user.type(working.getByLabelText('Establishment'), '40{Enter}')
    expect(planOf(store).parameters).toEqual({ 'osmia-lignaria': { establishment: 0.4 } })
    compute()
    expect(working.getByText('21.6 females')).toBeVisible()
    await user.click(working.getByRole('button', { name: 'Use the default again' }))
    expect(planOf(store).parameters).toEqual({})
  })

  test('says that the limits of a verdict are assumed', async () => {
    const { go, user } = openCoverage()
    await go()
    const entry = within(screen.getByRole('button', { name: 'Row 1' }).closest('li')!)
    await user.click(entry.getByRole('button', { name: /In number/ }))
    expect(screen.getByText(/From 90% on the verdict is “yes”, from 50% on “partly”.*our own choice/)).toBeVisible()
  })

  test('tells what the orchard’s coverage hangs on for the orchard, and not for a planting', async () => {
    const { go, user } = openCoverage()
    await go()
    const influences = () => screen.queryByRole('table', { name: /What the orchard’s coverage hangs on most/ })
    await user.click(
      within(screen.getByRole('button', { name: 'Row 1' }).closest('li')!).getByRole('button', { name: /In number/ }),
    )
    expect(influences()).toBeNull()
    await user.click(
      within(screen.getByRole('region', { name: 'The orchard' })).getByRole('button', { name: /In number/ }),
    )
    expect(influences()).toBeVisible()
  })

  test.each([/In reach/, /In time/, /females short at Row 1/])(
    'gives the range of %s where there is one',
    async name => {
      const { go, user, store } = openCoverage()
      const { ranges } = store.getState().results
      if (ranges.status !== 'ready') throw new TypeError('computed above')
      const of = { low: 0.2, high: 0.6 }
      const plantings = { ...ranges.value.plantings }
      plantings['row-1'] = { ...plantings['row-1']!, reach: of, timingMatch: of, shortBy: { low: 20, high: 60 } }
      store.setState(({ results }) => ({
        results: { ...results, ranges: { ...ranges, value: { ...ranges.value, plantings } } },
      }))
      await go()
      await user.click(
        within(screen.getByRole('button', { name: 'Row 1' }).closest('li')!).getByRole('button', { name }),
      )
      const working = within(screen.getByRole('region', { name: 'How was this worked out?' }))
      expect(working.getByText(/^Between 20%? and 60%?: each figure/)).toBeVisible()
    },
  )

  test('changes a crop’s figure for this plan only', async () => {
    const { go, user, store } = openCoverage()
    await go()
    await user.click(screen.getByRole('button', { name: /females wanted in all/ }))
    const working = within(screen.getByRole('region', { name: 'How was this worked out?' }))
    await user.type(working.getByLabelText('Stocking rate'), '700{Enter}')
    expect(planOf(store).crops).toEqual({ apple: { stockingRate: 700 } })
    await user.click(working.getByRole('button', { name: 'Use the default again' }))
    expect(planOf(store).crops).toEqual({})
  })
})
