import { describe, expect, it } from 'vitest'
import { select, setView } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { keepPreferences } from '../../../src/storage/preferences'
import { remember } from '../../../src/storage/recent'
import { freshDevice } from './device'

freshDevice()

function visit() {
  const store = createPlannerStore(2026)
  keepPreferences(store)
  return store
}

describe('preferences', () => {
  it('are found again on the next visit, and only those', () => {
    const store = visit()
    const ground = { kind: 'own', url: 'https://tiles.example/{z}/{x}/{y}.png' } as const
    setView(store, {
      theme: 'sun',
      shading: false,
      panelFolded: true,
      toolsFolded: true,
      ground,
      page: 'coverage',
      year: 1999,
    })
    select(store, ['row-1'])
    const { view } = visit().getState()
    expect(view).toMatchObject({
      theme: 'sun',
      shading: false,
      panelFolded: true,
      toolsFolded: true,
      ground,
      stripFolded: false,
    })
    expect(view).toMatchObject({ page: 'ground', year: 2026, selection: [] })
  })

  it('that cannot be understood are passed over', () => {
    const untouched = createPlannerStore(2026).getState().view
    for (const text of ['{', '7', 'null', '{"theme":"neon","shading":"yes","ground":{"kind":"own"}}']) {
      remember('nestreach.view', text)
      expect(visit().getState().view).toEqual(untouched)
    }
  })
})
