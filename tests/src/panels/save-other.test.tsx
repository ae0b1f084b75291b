import { screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { planTable } from '#geo/file/csv-tables'
import { readMapFile } from '#geo/file/map-file'
import { isStation } from '#geo/plan/plan'
import { smallPlan } from '../../support/builders'
import { renderApp } from './render-app'

const opened = async (options: Parameters<typeof renderApp>[0] = {}) => {
  const page = renderApp({ plan: smallPlan(), ...options })
  await page.user.click(screen.getByRole('button', { name: 'Menu' }))
  await page.user.click(screen.getByRole('button', { name: 'Save for other programs' }))
  const dialog = await screen.findByRole('dialog', { name: 'Save for other programs' }, { timeout: 15_000 })
  const press = (name: string) => page.user.click(within(dialog).getByRole('button', { name }))
  return { ...page, press }
}

describe('saving for other programs', () => {
  test.each(['GPX', 'KML', 'GeoJSON'])('%s holds every thing that is drawn, under its own ending', async name => {
    const saveOther = vi.fn(async (_name: string, _format: string, _text: string) => 'Saved as it was asked.')
    const { press } = await opened({ services: { saveOther } })
    await press(name)
    const [title, format, text] = saveOther.mock.calls[0]!
    expect([title, format]).toEqual([smallPlan().name, name.toLowerCase()])
    const read = readMapFile(new TextEncoder().encode(text))
    expect(read.ok && read.value.items.length).toBe(smallPlan().features.length)
    expect(screen.getByText('Saved as it was asked.')).toBeVisible()
    expect(screen.queryByRole('dialog')).toBeNull()
  })

  test.each(['plantings', 'stations', 'plants'] as const)(
    'the table of %s is named after what it holds',
    async table => {
      const saveTable = vi.fn(async (_name: string, _text: string) => 'Saved.')
      const { press } = await opened({ services: { saveTable } })
      await press(`Table of ${table}`)
      expect(saveTable).toHaveBeenCalledWith(`${smallPlan().name} ${table}`, planTable(smallPlan(), table))
      const lines = saveTable.mock.calls[0]![1].trim().split('\n').length - 1
      if (table === 'stations') expect(lines).toBe(smallPlan().features.filter(isStation).length)
    },
  )

  test('called off, the dialog stays; a picture that fails says why', async () => {
    const saveMapPicture = vi.fn(async (): Promise<string | null> => null)
    const { press } = await opened({ services: { saveMapPicture } })
    await press('Picture of the map')
    expect(screen.getByRole('dialog')).toBeVisible()
    saveMapPicture.mockRejectedValueOnce(new Error('the map is not in sight.'))
    await press('Picture of the map')
    expect(screen.getByText('Picture of the map: nothing was saved, the map is not in sight.')).toBeVisible()
  })
})
