import { act, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import type { Plan } from '#geo/plan/plan'
import { compareSeasons } from '#geo/seasons/compare'
import { project } from '#geo/seasons/project'
import { compare as compareAtTerminal } from '../../../../src/cli/compare'
import { project as projectAtTerminal } from '../../../../src/cli/project'
import type { PlannerStore } from '../../../../src/state/store'
import { changeAhead, yearAgainst } from '../../../../src/state/years-actions'
import { smallPlan, smallSeason, stationFeature } from '../../../support/builders'

import { pageScenario, pageScenarioText } from '../../../support/page-scenario'
import { planOf, renderApp } from '../render-app'

/** What the worker would answer, put into the store at once. */
function answerYears(store: PlannerStore): void {
  const state = store.getState()
  const plan = planOf(store)
  const { revision } = state.document
  const { year } = state.view
  const from = yearAgainst(state)
  const { ahead } = state.years
  const options = {
    ...(ahead.shareKept !== null && { shareKept: ahead.shareKept }),
    ...(ahead.target !== null && { target: ahead.target }),
  }
  const way = (care: 'takenIn' | 'outside') => {
    const outcome = project(plan, year, ahead.seasons, { ...options, care })
    if (!outcome.ok) throw new Error('no projection')
    return outcome.value
  }
  const outcome = from === null ? null : compareSeasons(plan, from, year)
  act(() =>
    store.setState(({ results }) => ({
      results: {
        ...results,
        projection: {
          status: 'ready',
          value: { plan, from: year, ahead, ways: { takenIn: way('takenIn'), outside: way('outside') } },
          revision,
        },
        ...(outcome?.ok && {
          comparison: { status: 'ready', value: { plan, from: from!, to: year, comparison: outcome.value }, revision },
        }),
      },
    })),
  )
}

async function opened(look: RegExp, plan: Plan, year = 2025) {
  const app = renderApp({ plan, year })
  await app.user.click(screen.getByRole('button', { name: 'Years' }))
  await app.user.click(screen.getByRole('button', { name: look }))
  return { ...app, answer: () => answerYears(app.store) }
}

/** Cells of a table's rows by the row's name, without the words for the ear. */
function cellsOf(table: HTMLElement): Readonly<Record<string, readonly string[]>> {
  const plain = (cell: Element) => {
    const copy = cell.cloneNode(true) as Element
    for (const spoken of copy.querySelectorAll('.unseen')) spoken.remove()
    return (copy.textContent ?? '').trim()
  }
  return Object.fromEntries(
    [...table.querySelectorAll('tbody tr')].map(row => {
      const [name, ...cells] = [...row.children].map(plain)
      return [name!, cells]
    }),
  )
}

function startingWith(text: string): RegExp {
  return new RegExp(`^${text.replace(/[+.]/g, '\\$&')}`)
}

describe('one year beside the next', () => {
  test('answers with a sentence, its parts, and the same digits as the command line', async () => {
    const { answer } = await opened(/^One year beside the next/, pageScenario('farm'))
    expect(screen.getByText('Working out every mixture of the two seasons.')).toBeVisible()
    answer()
    expect(
      screen.getByText(/^Coverage as planned rose from 38% in 2024 to 46% in 2025; the largest part from/),
    ).toBeVisible()
    const terminal = compareAtTerminal(pageScenarioText('farm'), { isJson: false, years: [2024, 2025] }).out
    const plantings = cellsOf(screen.getByRole('region', { name: 'Coverage in 2024 and 2025' }))
    for (const [name, cells] of Object.entries(plantings)) {
      if (name === 'The orchard') continue
      const line = terminal.split('\n').find(each => each.trim().startsWith(name))!
      const figures = line.trim().slice(name.length).replaceAll('-', '−')
      expect(figures.replace(/ +/g, ' ').trim()).toMatch(startingWith(cells.join(' ')))
    }
    const parts = cellsOf(screen.getByRole('region', { name: /^Parts of the change/ }))
    for (const [text, [part]] of Object.entries(parts)) {
      if (text === 'All together') continue
      expect(terminal).toContain(`${text.charAt(0).toLowerCase()}${text.slice(1)}`)
      expect(terminal.replaceAll('-', '−')).toContain(part)
    }
  })

  test('shows what was seen at the stations that changed most', async () => {
    const { answer } = await opened(/^One year beside the next/, pageScenario('allotment'))
    answer()
    expect(
      screen.getByText(
        'Tubes filled for each female cocoon set out rose most at A3 west hedge (0.2 to 0.91) and A4 south hedge (0.37 to 1.1).',
      ),
    ).toBeVisible()
    expect(screen.getByText('2024: “Faces west into the wind; to be turned in winter.”')).toBeVisible()
    expect(screen.getByText('2024: mud dry at 2 of 6 visits that looked.')).toBeVisible()
    const headings = screen.getAllByRole('heading', { level: 2 }).map(({ textContent }) => textContent)
    expect(headings.indexOf('As planned and as found')).toBeLessThan(headings.indexOf('Why it changed'))
  })

  test('what is not there in one season is told as such, never as nought', async () => {
    const base = pageScenario('mixed-orchard')
    const plan: Plan = {
      ...base,
      features: base.features.map(each =>
        each.properties.name === 'Blueberries'
          ? ({ ...each, properties: { ...each.properties, planted: 2025 } } as typeof each)
          : each,
      ),
    }
    const { answer } = await opened(/^One year beside the next/, plan)
    answer()
    const cells = cellsOf(screen.getByRole('region', { name: 'Coverage in 2024 and 2025' }))
    expect(cells.Blueberries).toEqual(['not there', expect.stringMatching(/%$/), 'new'])
  })

  test('figures open their working, and seasons are chosen and swapped', async () => {
    const { answer, user, store } = await opened(/^One year beside the next/, pageScenario('mixed-orchard'))
    answer()
    await user.click(screen.getByRole('button', { name: /part of the change by two new stations/ }))
    const working = screen.getByRole('region', { name: 'How was this worked out?' })
    expect(within(working).getByText(/averag.* over all orders/)).toBeVisible()
    await user.click(within(working).getByRole('button', { name: 'Close' }))
    await user.click(screen.getByRole('button', { name: /^no bloom|Coverage of Plums in 2024/ }))
    expect(
      within(screen.getByRole('region', { name: 'How was this worked out?' })).getByText('Plums, 2024 and 2025'),
    ).toBeVisible()
    await user.click(screen.getByRole('button', { name: 'Swap' }))
    expect(store.getState().view.year).toBe(2024)
    expect(screen.getByLabelText('From season')).toHaveDisplayValue('2025')
    answer()
    expect(screen.getByText(/^Coverage as planned fell from 57% in 2025 to 45% in 2024/)).toBeVisible()
  })

  test('with one season alone teaches what is needed', async () => {
    await opened(/^One year beside the next/, smallPlan({ seasons: [smallSeason(2026)] }), 2026)
    expect(screen.getByText(/It takes two seasons/)).toBeVisible()
    expect(screen.getByRole('button', { name: 'Add a season' })).toBeVisible()
  })
})

describe('the seasons to come', () => {
  test('are a band with the digits of the command line, and no promise', async () => {
    const { answer, store, user } = await opened(/^The seasons to come/, pageScenario('mixed-orchard'))
    answer()
    expect(
      screen.getByText(/these bees may come to anything from 1% to 99% of what is wanted in 2030\.$/),
    ).toBeVisible()
    expect(screen.getByText(/An estimate, not a promise/)).toBeVisible()
    expect(screen.getByText(/^It begins with what was counted in 2025 at all 4 stations\./)).toBeVisible()
    const terminal = projectAtTerminal(pageScenarioText('mixed-orchard'), {
      isJson: false,
      year: 2025,
      seasons: 5,
      isOutside: false,
    }).out
    expect(terminal).toContain(screen.getByText(/^These bees alone give 90% of what is wanted from 2026/).textContent)
    for (const figure of ['Coverage', 'Nesting females', 'Cocoons', 'Filled tubes']) {
      await user.selectOptions(screen.getByLabelText('Figure'), figure)
      const rows = cellsOf(screen.getByRole('region', { name: new RegExp(`^${figure}: middle`) }))
      expect(Object.keys(rows)).toEqual(['2026', '2027', '2028', '2029', '2030'])
      for (const [year, [band]] of Object.entries(rows)) {
        expect(terminal.split('\n').find(line => line.trim().startsWith(year))).toContain(band)
      }
    }
    act(() => changeAhead(store, { care: 'outside' }))
    answer()
    const outside = projectAtTerminal(pageScenarioText('mixed-orchard'), {
      isJson: false,
      year: 2025,
      seasons: 5,
      isOutside: true,
    }).out
    const rows = cellsOf(screen.getByRole('region', { name: /^Filled tubes: middle/ }))
    expect(outside).toContain(rows['2030']![0])
  })

  test('take the grower’s question, and tell tubes to add by season', async () => {
    const { answer, user, store } = await opened(/^The seasons to come/, pageScenario('mixed-orchard'))
    answer()
    expect(screen.getByText(/^On the middle way tubes run short from 2026 on/)).toBeVisible()
    const field = screen.getByLabelText('Seasons')
    await user.clear(field)
    await user.type(field, '11{Enter}')
    expect(screen.getByText('Should be between 1 and 10.')).toBeVisible()
    await user.clear(field)
    await user.type(field, '2{Enter}')
    expect(store.getState().years.ahead.seasons).toBe(2)
    answer()
    expect(screen.getByText(/in 2027\.$/)).toBeVisible()
    await user.click(screen.getByRole('radio', { name: 'Nests left outside' }))
    expect(screen.getByText(/^With nests left outside/)).toBeVisible()
    await user.click(screen.getAllByRole('button', { name: /Coverage in 2026/ })[0]!)
    expect(
      within(screen.getByRole('region', { name: 'How was this worked out?' })).getByText('All stations after 2025'),
    ).toBeVisible()
  })

  test('say that a season without counts makes a wide band', async () => {
    const plan = smallPlan({
      features: [...smallPlan().features.filter(({ id }) => !id.startsWith('station')), stationFeature('station-1')],
      seasons: [
        {
          ...smallSeason(2026),
          stations: { 'station-1': { tubes: 40, releases: [{ date: '2026-04-10', females: 30 }] } },
        },
      ],
    })
    const { answer } = await opened(/^The seasons to come/, plan, 2026)
    answer()
    expect(screen.getByText(/^Nothing was counted in 2026, so the band is wide/)).toBeVisible()
  })
})
