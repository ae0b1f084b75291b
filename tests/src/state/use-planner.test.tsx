import { act, cleanup, render, screen } from '@testing-library/react'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { setPlanMembers } from '#geo/plan/edits-settings'
import { edit, openPlan, setPage } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { PlannerProvider, usePlanner, usePlannerStore } from '../../../src/state/use-planner'
import { smallPlan } from '../../support/builders'

afterEach(cleanup)

type Told = { readonly told: (value: unknown) => void }

function Name({ told }: Told) {
  const name = usePlanner(state => state.document.plan?.name)
  told(name)
  return <p>{name}</p>
}

function Store({ told }: Told) {
  told(usePlannerStore())
  return null
}

describe('reading the state in React', () => {
  it('follows what is read, and nothing else', () => {
    const store = createPlannerStore(2026)
    openPlan(store, smallPlan(), 'plan-1')
    const told = vi.fn()
    render(
      <PlannerProvider store={store}>
        <Name told={told} />
      </PlannerProvider>,
    )
    expect(screen.getByText('Small orchard')).toBeInTheDocument()
    act(() => setPage(store, 'coverage'))
    expect(told).toHaveBeenCalledTimes(1)
    act(() => edit(store, setPlanMembers({ name: 'Hill' })))
    expect(screen.getByText('Hill')).toBeInTheDocument()
  })

  it('gives the store itself, and says when there is none', () => {
    const store = createPlannerStore(2026)
    const told = vi.fn()
    render(
      <PlannerProvider store={store}>
        <Store told={told} />
      </PlannerProvider>,
    )
    expect(told).toHaveBeenCalledWith(store)
    expect(() => render(<Store told={told} />)).toThrow('PlannerProvider')
  })
})
