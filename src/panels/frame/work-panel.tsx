import { ErrorBoundary } from '../../parts/error-boundary'
import { setPage, setView } from '../../state/actions'
import type { Page, ViewState } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { BloomPage } from '../bloom/bloom-page'
import { CoveragePage } from '../coverage/coverage-page'
import { GroundPage } from '../ground/ground-page'
import { ProblemBadge } from '../problem-badge'
import { SelectedCard } from '../selected/selected-card'

const pages: readonly { readonly page: Page; readonly name: string }[] = [
  { page: 'ground', name: 'Ground' },
  { page: 'bloom', name: 'Bloom and flight' },
  { page: 'coverage', name: 'Coverage' },
]

const sheets: readonly { readonly sheet: ViewState['sheet']; readonly name: string; readonly short: string }[] = [
  { sheet: 'third', name: 'Small panel, large map', short: '⅓' },
  { sheet: 'half', name: 'Panel two thirds of the height', short: '⅔' },
  { sheet: 'full', name: 'Panel over the whole map', short: '1' },
]

/** The work panel: on wide screens beside the map, on a phone a sheet below it. */
export function WorkPanel() {
  const store = usePlannerStore()
  const page = usePlanner(state => state.view.page)
  const isFolded = usePlanner(state => state.view.panelFolded)
  const sheet = usePlanner(state => state.view.sheet)
  return (
    <section className={`panel sheet-${sheet}`} data-folded={isFolded} aria-label="Work panel">
      <fieldset className="sheet-sizes">
        <legend className="unseen">Height of the panel</legend>
        {sheets.map(({ sheet: size, name, short }) => (
          <button
            type="button"
            key={size}
            className="quiet"
            aria-label={name}
            aria-pressed={sheet === size}
            onClick={() => setView(store, { sheet: size })}
          >
            {short}
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
          {isFolded ? 'Unfold' : 'Fold'}
          <span className="unseen"> the panel</span>
        </button>
      </div>
      <div className="panel-body" hidden={isFolded}>
        <ProblemBadge />
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

function PageBody({ page }: { readonly page: Page }) {
  switch (page) {
    case 'ground':
      return <GroundPage />
    case 'bloom':
      return <BloomPage />
    case 'coverage':
      return <CoveragePage />
    default:
      return page satisfies never
  }
}
