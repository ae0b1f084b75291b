import { useLayoutEffect, useRef } from 'react'
import { DrawDesk } from '../../parts/draw-desk'
import { ErrorBoundary } from '../../parts/error-boundary'
import { setPage, setView } from '../../state/actions'
import type { Page, ViewState } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { BloomPage } from '../bloom/bloom-page'
import { BloomFirst } from '../bloom/calendar'
import { BoxesPage } from '../boxes/boxes-page'
import { CoveragePage } from '../coverage/coverage-page'
import { GroundPage } from '../ground/ground-page'
import { ProblemBadge } from '../problem-badge'
import { SelectedCard } from '../selected/selected-card'
import { YearsPage } from '../years/years-page'

const pages: readonly { readonly page: Page; readonly name: string }[] = [
  { page: 'ground', name: 'Ground' },
  { page: 'bloom', name: 'Bloom and flight' },
  { page: 'coverage', name: 'Coverage' },
  { page: 'boxes', name: 'More boxes' },
  { page: 'years', name: 'Years' },
]

const sheets: readonly { readonly sheet: ViewState['sheet']; readonly name: string; readonly share: number }[] = [
  { sheet: 'third', name: 'Small panel, large map', share: 1 / 3 },
  { sheet: 'half', name: 'Panel half of the height', share: 1 / 2 },
  { sheet: 'full', name: 'Panel over the whole map', share: 1 },
]

/** The work panel: on wide screens beside the map, on a phone a sheet below it. */
export function WorkPanel() {
  const store = usePlannerStore()
  const page = usePlanner(state => state.view.page)
  const isFolded = usePlanner(state => state.view.panelFolded)
  const sheet = usePlanner(state => state.view.sheet)
  const body = useScrollToTop()
  return (
    <section className={`panel sheet-${sheet}`} data-folded={isFolded} aria-label="Work panel">
      <fieldset className="sheet-sizes">
        <legend className="unseen">Height of the panel</legend>
        {sheets.map(({ sheet: size, name, share }) => (
          <button
            type="button"
            key={size}
            className="quiet"
            aria-label={name}
            aria-pressed={sheet === size}
            onClick={() => setView(store, { sheet: size })}
          >
            <SheetMark share={share} />
          </button>
        ))}
      </fieldset>
      <div className="panel-head">
        <nav className="tabs" aria-label="Pages">
          {pages.map(({ page: each, name }) => (
            <button
              type="button"
              key={each}
              className="tab"
              aria-current={page === each ? 'page' : undefined}
              onClick={() => setPage(store, each)}
            >
              {name}
            </button>
          ))}
        </nav>
        <button
          type="button"
          className="quiet fold"
          aria-expanded={!isFolded}
          onClick={() => setView(store, { panelFolded: !isFolded })}
        >
          <span aria-hidden="true">{isFolded ? '»' : '«'}</span>
          <span className="unseen">{isFolded ? 'Unfold' : 'Fold'} the panel</span>
        </button>
      </div>
      <div className="panel-body" hidden={isFolded} ref={body}>
        <DrawDesk />
        <ProblemBadge />
        {page === 'bloom' ? <BloomFirst /> : null}
        <ErrorBoundary what="The card" key={`card ${page}`}>
          <SelectedCard page={page} />
        </ErrorBoundary>
        <ErrorBoundary what="This page" key={page}>
          <PageBody page={page} />
        </ErrorBoundary>
      </div>
    </section>
  )
}

/** A newly selected thing has its card at the top, and a page begins at its sentence: both are brought into sight. */
function useScrollToTop() {
  const page = usePlanner(state => state.view.page)
  const selection = usePlanner(state => state.view.selection)
  const body = useRef<HTMLDivElement>(null)
  const isSelected = selection.length > 0
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is looked at changes with these
  useLayoutEffect(() => {
    // Not away from a form that adds one thing after another.
    if (isSelected && !document.activeElement?.closest('.add-form')) body.current?.scrollTo?.({ top: 0 })
  }, [selection])
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is looked at changes with this
  useLayoutEffect(() => body.current?.scrollTo?.({ top: 0 }), [page])
  return body
}

/** A phone with its lower part filled: how much of it the panel takes. */
function SheetMark({ share }: { readonly share: number }) {
  return (
    <svg viewBox="0 0 16 22" width="16" height="22" aria-hidden="true">
      <rect x="1" y="1" width="14" height="20" rx="2.5" fill="none" stroke="currentColor" strokeWidth="1.5" />
      <rect x="3" y={3 + 16 * (1 - share)} width="10" height={16 * share} fill="currentColor" />
    </svg>
  )
}

function PageBody({ page }: { readonly page: Page }) {
  switch (page) {
    case 'ground':
      return <GroundPage />
    case 'bloom':
      return <BloomPage />
    case 'coverage':
      return <CoveragePage />
    case 'boxes':
      return <BoxesPage />
    case 'years':
      return <YearsPage />
    default:
      return page satisfies never
  }
}
