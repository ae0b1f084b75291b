import { createContext, createElement, type ReactElement, type ReactNode, use } from 'react'
import { useStore } from 'zustand'
import type { PlannerState, PlannerStore } from './store'

const StoreContext = createContext<PlannerStore | null>(null)

export function PlannerProvider(props: { readonly store: PlannerStore; readonly children?: ReactNode }): ReactElement {
  return createElement(StoreContext, { value: props.store }, props.children)
}

/** The store itself, for actions and for subscriptions outside of React. */
export function usePlannerStore(): PlannerStore {
  const store = use(StoreContext)
  if (store === null) throw new TypeError('usePlannerStore needs a PlannerProvider above it')
  return store
}

/** A value of the state; `selector` must give stored references, primitives or what selectors.ts remembers. */
export function usePlanner<T>(selector: (state: PlannerState) => T): T {
  return useStore(usePlannerStore(), selector)
}
