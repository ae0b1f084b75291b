import { act, screen, within } from '@testing-library/react'
import { describe, expect, test } from 'vitest'
import { planeAt } from '#geo/space/plane'
import { newPlan } from '../../../src/panels/first/new-plan'
import { select, undo } from '../../../src/state/actions'
import { keepoutFeature, mudFeature, rowFeature, smallPlan, stationFeature } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const emptyPlan = newPlan({
  name: 'Hill',
  place: [-1.7, 52.2],
  bee: 'osmia-lignaria',
  bloomRegion: 'southern-england',
  units: 'metric',
  timeZone: 'Europe/London',
  year: 2026,
})
const plane = planeAt([-1.7, 52.2])

function metresOf(position: unknown): { x: number; y: number } {
  return plane.toMetres(position as [number, number])
}

describe('the list of the ground', () => {
  test('counts plants and ground, and tells stations in use', () => {
    renderApp({ plan: smallPlan() })
    expect(
      screen.getByText(/^2 plantings with \d+ plants on .* in 2026; 2 nest stations, 1 of them in use\.$/),
    ).toBeVisible()
  })

  test('selects a thing, and puts it down again', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: /^Row 1/ }))
    expect(store.getState().view.selection).toEqual(['row-1'])
    await user.click(screen.getByRole('button', { name: 'Deselect' }))
    expect(store.getState().view.selection).toEqual([])
  })

  test('finds by name, crop or kind once there are many', async () => {
    const plan = smallPlan()
    const rows = Array.from({ length: 9 }, (_, i) => ({ ...plan.features[0]!, id: `row-x${i}` }))
    const bare = [keepoutFeature('keepout-1', { name: 'Lane (east)' }), keepoutFeature('keepout-2', { name: '' })]
    const { user } = renderApp({ plan: { ...plan, features: [...plan.features, ...rows, ...bare] } })
    const find = async (words: string) => {
      await user.clear(screen.getByLabelText('Find by name, crop or kind'))
      await user.type(screen.getByLabelText('Find by name, crop or kind'), words)
      return screen.getByRole('button', { name: /^Select \d/ }).textContent
    }
    expect(await find('north gate')).toBe('Select 1 thing found')
    expect(screen.getByRole('button', { name: 'North gate' })).toBeVisible()
    expect(screen.queryByRole('button', { name: /^Row 1/ })).toBeNull()
    expect(await find('station')).toBe('Select 2 things found')
    expect(await find('no-station gr')).toBe('Select 2 things found')
    expect(await find('east')).toBe('Select 1 thing found')
  })
})

describe('cautions stand where the act is planned:', () => {
  test.each([
    [
      keepoutFeature('keepout-1', { name: 'Lane' }),
      [/label and the local rules, and ask a licensed adviser/, /off narrow paths and play areas/],
    ],
    [mudFeature('mud-1', { name: 'Ditch' }), [/mud trays and pits shallow and marked/]],
    [stationFeature('station-9', { name: 'Barn', height: 2.5 }), [/^Higher than 5\.9 ft means a ladder/]],
  ])('%#', async (feature, texts) => {
    const { store } = renderApp({ plan: smallPlan({ units: 'us', features: [feature], seasons: [] }) })
    act(() => select(store, [feature.id]))
    for (const text of texts) expect(screen.getByText(text)).toBeVisible()
  })
})

describe('the card of a planting', () => {
  test('changes the crop as one step of undo', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: /^Row 1/ }))
    const card = screen.getByRole('region', { name: 'Selected: Row 1' })
    await user.selectOptions(within(card).getByLabelText('Crop'), 'European pear')
    expect(planOf(store).features[0]!.properties).toMatchObject({ crop: 'pear-european' })
    expect(screen.getByRole('button', { name: /^Undo: change crop of row 1/i })).toBeEnabled()
    undo(store)
    expect(planOf(store).features[0]!.properties).toMatchObject({ crop: 'apple' })
  })

  test('shows the default spacing as a default and takes an own one', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: /^Row 1/ }))
    const field = screen.getAllByLabelText<HTMLInputElement>('Spacing in the row')[0]!
    expect(field).toHaveValue('')
    expect(field).toHaveAccessibleDescription(/by default$/)
    await user.type(field, '2,5{Enter}')
    expect(planOf(store).features[0]!.properties).toMatchObject({ spacing: 2.5 })
  })

  test('turns a row to a typed bearing and length about its start', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await addRow(user, '0, 0', '60')
    await user.click(screen.getByText('Place and shape'))
    const card = within(screen.getByRole('region', { name: /^Selected: Row 1/ }))
    await user.clear(card.getByLabelText('Bearing'))
    await user.type(card.getByLabelText('Bearing'), '90{Enter}')
    await user.clear(card.getByLabelText('Length'))
    await user.type(card.getByLabelText('Length'), '80{Enter}')
    const [start, end] = planOf(store).features[0]!.geometry.coordinates as unknown[]
    expect(metresOf(start).x).toBeCloseTo(0, 3)
    expect(metresOf(end).x).toBeCloseTo(80, 2)
    expect(metresOf(end).y).toBeCloseTo(0, 2)
  })

  test('moves by typed steps', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await addRow(user, '0, 0', '60')
    await user.click(screen.getByText('Place and shape'))
    await user.type(screen.getByLabelText('East (− west)'), '-12')
    await user.type(screen.getByLabelText('North (− south)'), '5')
    await user.click(screen.getByRole('button', { name: 'Move' }))
    const [start] = planOf(store).features[0]!.geometry.coordinates as unknown[]
    expect(metresOf(start).x).toBeCloseTo(-12, 3)
    expect(metresOf(start).y).toBeCloseTo(5, 3)
  })

  test('deletes with undo instead of a question', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: /^Row 1/ }))
    await user.click(screen.getByRole('button', { name: 'Delete' }))
    expect(planOf(store).features.map(({ id }) => id)).not.toContain('row-1')
    expect(screen.getByText('1 thing deleted. Undo brings it back.')).toBeVisible()
    await user.click(screen.getByRole('button', { name: /^Undo: remove row 1/i }))
    expect(planOf(store).features.map(({ id }) => id)).toContain('row-1')
  })

  test('a copy is selected and lies beside', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: /^Row 1/ }))
    await user.click(screen.getByRole('button', { name: 'Duplicate' }))
    const copy = planOf(store).features.at(-1)!
    expect(copy.properties.name).toBe('Row 1 copy')
    expect(store.getState().view.selection).toEqual([copy.id])
  })
})

describe('the card of a station', () => {
  test('warns of a ladder only above arm’s reach', async () => {
    const { user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'North gate' }))
    expect(screen.queryByText(/means a ladder/)).toBeNull()
    await user.type(screen.getByLabelText('Height above ground'), '2.4{Enter}')
    expect(screen.getByText(/means a ladder/)).toBeVisible()
  })

  test('tells the facing in words', async () => {
    const { user } = renderApp({ plan: smallPlan() })
    await user.click(screen.getByRole('button', { name: 'North gate' }))
    await user.type(screen.getByLabelText('Facing'), '112.5{Enter}')
    expect(screen.getByText('112.5° (east-south-east)')).toBeVisible()
  })
})

type User = ReturnType<typeof renderApp>['user']

async function addRow(user: User, start: string, length: string, rows = '1'): Promise<void> {
  await user.type(screen.getByLabelText('Start'), start)
  await user.type(screen.getByLabelText('Length'), length)
  await user.clear(screen.getByLabelText('Rows side by side'))
  await user.type(screen.getByLabelText('Rows side by side'), rows)
  await user.click(screen.getByRole('button', { name: /^Add (the row|\d+ rows)$/ }))
}

describe('adding by typing', () => {
  test('lays rows side by side at the crop’s own distance, as one step', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await addRow(user, '10, -20', '60', '3')
    expect(screen.getByText('Added 3 rows.')).toBeVisible()
    const { features } = planOf(store)
    expect(features.map(({ properties }) => properties.name)).toEqual(['Row 1', 'Row 2', 'Row 3'])
    const starts = features.map(({ geometry }) => metresOf((geometry.coordinates as unknown[])[0]))
    expect(starts[0]!.x).toBeCloseTo(10, 3)
    expect(starts[0]!.y).toBeCloseTo(-20, 3)
    expect(starts[2]!.x - starts[1]!.x).toBeCloseTo(starts[1]!.x - starts[0]!.x, 3)
    expect(starts[1]!.x - starts[0]!.x).toBeGreaterThan(1)
    expect(store.getState().document.past).toHaveLength(1)
  })

  test('takes degrees as well', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await user.selectOptions(screen.getByLabelText('What'), 'Mud point')
    await user.click(screen.getByLabelText('degrees'))
    await user.type(screen.getByLabelText('Position'), '52.2001, -1.7002')
    await user.click(screen.getByRole('button', { name: 'Add the mud point' }))
    expect(planOf(store).features[0]).toMatchObject({
      properties: { kind: 'mud', name: 'Mud point 1' },
      geometry: { type: 'Point', coordinates: [-1.7002, 52.2001] },
    })
  })

  test('draws a block from a corner, and from a list of corners', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await user.selectOptions(screen.getByLabelText('What'), 'Block')
    await user.type(screen.getByLabelText('First corner'), '0, 0')
    await user.type(screen.getByLabelText('Length along the rows'), '40')
    await user.type(screen.getByLabelText('Width, to the right of it'), '20')
    await user.click(screen.getByRole('button', { name: 'Add the block' }))
    const [ring] = planOf(store).features[0]!.geometry.coordinates as unknown[][]
    expect(ring).toHaveLength(5)
    expect(metresOf(ring![2]).x).toBeCloseTo(20, 3)
    expect(metresOf(ring![2]).y).toBeCloseTo(40, 3)
  })

  test('refuses an outline that crosses itself, and says how to list it', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await user.selectOptions(screen.getByLabelText('What'), 'Bed')
    await user.click(screen.getByLabelText('By a list of corners'))
    await user.type(screen.getByLabelText(/^Corners, one a line/), '0, 0\n10, 10\n10, 0\n0, 10')
    await user.click(screen.getByRole('button', { name: 'Add the bed' }))
    expect(screen.getByRole('alert')).toHaveTextContent('The outline crosses itself.')
    expect(planOf(store).features).toEqual([])
  })

  test('puts a new station into use in the season', async () => {
    const { store, user } = renderApp({ plan: emptyPlan })
    await user.selectOptions(screen.getByLabelText('What'), 'Nest station')
    await user.type(screen.getByLabelText('Position'), '5, 5')
    await user.click(screen.getByRole('button', { name: 'Add the nest station' }))
    const [station] = planOf(store).features
    expect(planOf(store).seasons[0]!.stations).toEqual({ [station!.id]: {} })
  })

  test('counts from the same point however much is drawn', async () => {
    const { store, user } = renderApp({ plan: { ...emptyPlan, besides: {} } })
    await addRow(user, '0, 0', '60')
    await user.selectOptions(screen.getByLabelText('What'), 'Mud point')
    await user.type(screen.getAllByLabelText('Position').at(-1)!, '0, 60')
    await user.click(screen.getByRole('button', { name: 'Add the mud point' }))
    const [row, mud] = planOf(store).features
    const [, end] = row!.geometry.coordinates as [number, number][]
    expect(mud!.geometry.coordinates[0]).toBeCloseTo(end![0], 7)
    expect(mud!.geometry.coordinates[1]).toBeCloseTo(end![1], 7)
  })
})

test('a station is added so far along a row and so far to its side', async () => {
  // Row 1 goes 10 steps east, 68.4 m.
  const { store, user } = renderApp({ plan: smallPlan({ features: [rowFeature('row-1', { name: 'Row 1' })] }) })
  await user.click(screen.getByText('Add by typing'))
  await user.selectOptions(screen.getByLabelText('What'), 'station')
  const group = within(screen.getByRole('group', { name: 'By a distance along a row' }))
  await user.type(group.getByLabelText('From its start'), '12')
  const aside = group.getByLabelText('To its south (− other side)')
  await user.clear(aside)
  await user.type(aside, '-2')
  await user.click(group.getByRole('button', { name: 'Take this place' }))
  await user.click(screen.getByRole('button', { name: 'Add the nest station' }))
  const plan = planOf(store)
  const [row, station] = plan.features
  const home = planeAt(row!.geometry.coordinates[0] as [number, number])
  const at = home.toMetres(station!.geometry.coordinates as [number, number])
  expect(at.x).toBeCloseTo(12, 2)
  expect(at.y).toBeCloseTo(2, 2)
})
