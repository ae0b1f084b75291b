import { setView } from '../state/actions'
import type { Ground, PlannerStore, ViewState } from '../state/store'
import { remember, remembered } from './recent'

const key = 'nestreach.view'

type Kept = Pick<
  ViewState,
  'theme' | 'shading' | 'reachCircles' | 'panelFolded' | 'toolsFolded' | 'stripFolded' | 'ground'
>

/** Shows things as they were shown last time, and remembers from now on how they are shown. */
export function keepPreferences(store: PlannerStore): () => void {
  setView(store, readKept(remembered(key)))
  return store.subscribe(
    ({ view }) => JSON.stringify(keptOf(view)),
    text => remember(key, text),
  )
}

function keptOf({ theme, shading, reachCircles, panelFolded, toolsFolded, stripFolded, ground }: ViewState): Kept {
  return { theme, shading, reachCircles, panelFolded, toolsFolded, stripFolded, ground }
}

/** What is remembered may come from another version of the program: only what is understood is taken. */
function readKept(text: string | null): Partial<Kept> {
  let value: unknown
  try {
    value = JSON.parse(text ?? '')
  } catch {
    return {}
  }
  if (typeof value !== 'object' || value === null) return {}
  const kept: { -readonly [K in keyof Kept]?: Kept[K] } = {}
  const members = value as Record<string, unknown>
  const { theme } = members
  if (theme === 'paper' || theme === 'dark' || theme === 'sun') kept.theme = theme
  for (const name of ['shading', 'reachCircles', 'panelFolded', 'toolsFolded', 'stripFolded'] as const) {
    const flag = members[name]
    if (typeof flag === 'boolean') kept[name] = flag
  }
  const ground = groundOf(members.ground)
  if (ground) kept.ground = ground
  return kept
}

function groundOf(value: unknown): Ground | null {
  const { kind, url } = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>
  if (kind === 'grid' || kind === 'osm') return { kind }
  return kind === 'own' && typeof url === 'string' ? { kind, url } : null
}
