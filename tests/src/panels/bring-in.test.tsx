import { screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { smallPlan } from '../../support/builders'
import { planOf, renderApp } from './render-app'

const wait = { timeout: 15_000 }

async function chosen(name: string, text: string, services = {}) {
  const app = renderApp({ plan: smallPlan(), services })
  await app.user.click(screen.getByRole('button', { name: 'Menu' }))
  await app.user.click(screen.getByRole('button', { name: 'Bring in from another program' }))
  const dialog = within(await screen.findByRole('region', { name: 'Bring in' }, wait))
  const file = new File([text], name)
  // jsdom's files do not hand out their bytes.
  file.arrayBuffer = async () => new TextEncoder().encode(text).buffer as ArrayBuffer
  await app.user.upload(await dialog.findByLabelText('Choose a file', {}, wait), file)
  const added = () => planOf(app.store).features.slice(smallPlan().features.length)
  return { ...app, dialog, added }
}

const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="x">
<wpt lat="52.2" lon="-1.7"><name>&lt;img src=x onerror=alert(1)&gt;</name></wpt>
<trk><name>Hedge</name><trkseg>
<trkpt lat="52.2" lon="-1.7"><time>2026-04-01T10:00:00Z</time></trkpt>
<trkpt lat="52.2005" lon="-1.7"><time>2026-04-01T10:01:00Z</time></trkpt>
</trkseg></trk></gpx>`

describe('bringing in', () => {
  test('drawn things come by group, each as what it is chosen to be, in one step after a restore point', async () => {
    const keepRestorePoint = vi.fn(async () => {})
    const { store, user, dialog, added } = await chosen('walk.gpx', gpx, { keepRestorePoint })
    const line = within(await dialog.findByRole('region', { name: /^1 line/ }))
    await user.selectOptions(line.getByLabelText('Bring in as'), 'windbreak')
    await user.selectOptions(line.getByLabelText('As it was walked'), 'pauses and stray points taken out')
    expect(line.getByLabelText('As it was walked')).toHaveAccessibleDescription(
      'No pauses and no stray points were found.',
    )
    const point = within(dialog.getByRole('region', { name: /^1 point/ }))
    await user.selectOptions(point.getByLabelText('Bring in as'), 'nest station')
    await user.click(dialog.getByRole('button', { name: 'Bring in 2 things' }))
    expect(keepRestorePoint).toHaveBeenCalledWith('plan-1', smallPlan(), 'before things from a file were brought in')
    expect(added().map(({ properties }) => [properties.kind, properties.name])).toEqual([
      ['station', '<img src=x onerror=alert(1)>'],
      ['windbreak', 'Hedge'],
    ])
    expect(document.querySelector('img')).toBeNull()
    expect(store.getState().document.past).toHaveLength(1)
    await user.click(screen.getByRole('button', { name: /^Undo/ }))
    expect(planOf(store)).toEqual(smallPlan())
  })

  test('a group can be left out, and plantings wait for their crop', async () => {
    const { user, dialog, added } = await chosen('walk.gpx', gpx)
    const line = within(await dialog.findByRole('region', { name: /^1 line/ }))
    await user.selectOptions(line.getByLabelText('Bring in as'), 'leave out')
    const point = within(dialog.getByRole('region', { name: /^1 point/ }))
    await user.selectOptions(point.getByLabelText('Bring in as'), 'plant')
    await user.click(dialog.getByRole('button', { name: 'Choose a crop for 1 group first' }))
    // It brings nothing in, and leads to what is missing.
    expect(point.getByLabelText('Crop')).toHaveFocus()
    await user.selectOptions(point.getByLabelText('Crop'), 'apple')
    await user.click(dialog.getByRole('button', { name: 'Bring in 1 thing' }))
    expect(added().map(({ properties }) => properties)).toMatchObject([{ kind: 'plant', crop: 'apple' }])
  })

  test('a table of trees by number is laid out on a grid; spellings become one; faults are told by row', async () => {
    const table = ['row;tree;cultivar;width (m)', '1;1;Ambrel;2,5', '1;2;ambrel;', '2;1;Ambrel;x', ';3;Ambrel;2'].join(
      '\n',
    )
    const { user, dialog, added } = await chosen('trees.csv', table)
    expect(await dialog.findByLabelText('Decimals')).toHaveDisplayValue('comma: 4,5')
    expect(dialog.getByText(/The table does not say where things lie/)).toBeVisible()
    const type = async (label: string, text: string) => {
      await user.type(dialog.getByLabelText(label), text)
      await user.tab()
    }
    await type('Bearing along the rows', '90')
    await type('From tree to tree', '3')
    await type('From row to row', '5')
    const faults = within(await dialog.findByRole('region', { name: 'What is wrong with its rows' }))
    expect(faults.getByText(/Row 5 does not say its row/)).toBeVisible()
    await user.click(dialog.getByRole('button', { name: 'Use the commonest spelling of each' }))
    await user.selectOptions(dialog.getAllByLabelText('Crop').at(-1)!, 'apple')
    expect(dialog.getByText(/2 trees stand in 1 row at even spacing/)).toBeVisible()
    expect(await dialog.findByText('Coming in: 3 single plants; dashed on the map.')).toBeVisible()
    await user.click(dialog.getByRole('button', { name: 'Bring in 3 things' }))
    expect(added().map(({ properties }) => properties)).toEqual([
      { kind: 'plant', name: 'Row 1, tree 1', crop: 'apple', cultivar: 'Ambrel', spread: 2.5 },
      { kind: 'plant', name: 'Row 1, tree 2', crop: 'apple', cultivar: 'Ambrel' },
      { kind: 'plant', name: 'Row 2, tree 1', crop: 'apple', cultivar: 'Ambrel' },
    ])
  })

  test('a list whose trees all stand in rows comes as rows; what was chosen stays when a column is matched anew', async () => {
    const lines = Array.from({ length: 12 }, (_, i) => `${(i % 2) + 1}\t${Math.floor(i / 2) + 1}\tAmbrel\tapple`)
    const { user, dialog, added } = await chosen('trees.txt', ['row\ttree\tcultivar\tnote', ...lines].join('\n'))
    expect(await dialog.findByText(/Read as a table with tabs between its columns/)).toBeVisible()
    for (const [label, text] of [
      ['Bearing along the rows', '0'],
      ['From tree to tree', '3'],
      ['From row to row', '5'],
    ] as const) {
      await user.type(dialog.getByLabelText(label), text)
      await user.tab()
    }
    await user.selectOptions((await dialog.findAllByLabelText('Crop')).at(-1)!, 'pear-european')
    await user.selectOptions(dialog.getByLabelText('Year of planting'), 'note')
    // The year is no number, which is told; crop and rows stay as they were chosen.
    expect(await dialog.findByText(/Row 2: the year of planting “apple” is no number/)).toBeVisible()
    await user.selectOptions(dialog.getByLabelText('Year of planting'), 'not in the table')
    await user.click(await dialog.findByRole('button', { name: 'Bring in 2 things' }))
    expect(added().map(({ properties }) => properties)).toEqual(
      [1, 2].map(row => ({
        kind: 'row',
        name: `Row ${row}`,
        crop: 'pear-european',
        cultivar: 'Ambrel',
        spacing: 3,
        rowSpacing: 5,
      })),
    )
  })

  test('a guessed crop is shown as a guess, and blank ones are said to be', async () => {
    const table = 'lon,lat,crop,cultivar\n-1.7,52.2,Aple,Ambrel\n-1.7,52.201,,Ambrel\n'
    const { user, dialog } = await chosen('trees.csv', table)
    const guessed = within(await dialog.findByRole('region', { name: '1 point: Aple' }, wait))
    expect(guessed.getByLabelText('Crop')).toHaveDisplayValue('Apple')
    expect(guessed.getByLabelText('Crop')).toHaveAccessibleDescription(/^Likely, from “Aple”/)
    await user.selectOptions(guessed.getByLabelText('Crop'), 'quince')
    expect(guessed.getByLabelText('Crop')).not.toHaveAccessibleDescription()
    const bare = within(dialog.getByRole('region', { name: '1 point: no crop given' }))
    expect(bare.getByLabelText('Crop')).toHaveDisplayValue('choose a crop')
  })

  test('a table of stations is read again as stations, heights in feet', async () => {
    const { user, dialog, added } = await chosen('nests.csv', 'name,lon,lat,height\nGate,-1.7,52.2,5\n')
    expect(await dialog.findByLabelText('Each line of the table is')).toHaveDisplayValue('a nest station')
    await user.selectOptions(dialog.getByLabelText('Lengths in'), 'feet')
    await vi.waitFor(() => expect(dialog.getByRole('region', { name: /^1 point/ })).toBeVisible())
    await user.click(await dialog.findByRole('button', { name: 'Bring in 1 thing' }))
    expect(added()).toMatchObject([
      { geometry: { coordinates: [-1.7, 52.2] }, properties: { kind: 'station', name: 'Gate', height: 1.524 } },
    ])
  })

  test('cells pasted where no field has the focus are taken for a table; a word is not', async () => {
    const { store, user } = renderApp({ plan: smallPlan() })
    await user.paste('only words')
    expect(screen.getByText(/single line/)).toBeVisible()
    await user.paste('name\tlongitude\tlatitude\theight\nGate\t-1.7\t52.2\t2\n')
    const area = within(await screen.findByRole('region', { name: 'Bring in' }, wait))
    await user.click(await area.findByRole('button', { name: 'Bring in 1 thing' }, wait))
    expect(planOf(store).features.at(-1)?.properties).toEqual({ kind: 'station', name: 'Gate', height: 2 })
  })

  test('how a table is written can be put right', async () => {
    const { user, dialog } = await chosen('nests.csv', 'name;lon;lat\nGate, north;-1.7;52.2\n')
    expect(await dialog.findByText(/semicolons between its columns and decimal points, in UTF-8/)).toBeVisible()
    await user.click(dialog.getByText('It is written otherwise'))
    await user.selectOptions(dialog.getByLabelText('Between columns stand'), 'commas')
    expect(await dialog.findByText(/commas between its columns/)).toBeVisible()
    expect(dialog.getByRole('columnheader', { name: 'name;lon;lat' })).toBeVisible()
  })

  test('what cannot be read is refused in words, and another file can be chosen', async () => {
    const { user, dialog } = await chosen('bomb.gpx', '<!DOCTYPE gpx [<!ENTITY a "b">]><gpx>&a;</gpx>')
    expect(await dialog.findByRole('alert')).toHaveTextContent(/Nothing/)
    await user.click(dialog.getByRole('button', { name: 'Another file' }))
    expect(dialog.getByLabelText('Choose a file')).toBeVisible()
  })

  test('nothing comes in where no restore point can be kept', async () => {
    const keepRestorePoint = () => Promise.reject(new Error('the disk is full'))
    const { store, user, dialog } = await chosen('walk.gpx', gpx, { keepRestorePoint })
    for (const region of await dialog.findAllByRole('region', { name: /^1 (point|line)/ })) {
      const fields = within(region)
      const kind = region.getAttribute('aria-label')!.includes('line') ? 'windbreak' : 'mud point'
      await user.selectOptions(fields.getByLabelText('Bring in as'), kind)
    }
    await user.click(dialog.getByRole('button', { name: 'Bring in 2 things' }))
    expect(await dialog.findByText(/Nothing was changed.*the disk is full/)).toBeVisible()
    expect(planOf(store)).toEqual(smallPlan())
  })
})
