// Small things the browser remembers between visits. Where it forbids that, they are forgotten and nothing else happens.

const lastPlanKey = 'nestreach.last-plan'

/** The plan that was open last; null where none is remembered. */
export function lastPlanId(): string | null {
  return remembered(lastPlanKey)
}

export function rememberPlanId(id: string | null): void {
  remember(lastPlanKey, id)
}

export function remembered(key: string): string | null {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}

export function remember(key: string, value: string | null): void {
  try {
    if (value === null) localStorage.removeItem(key)
    else localStorage.setItem(key, value)
  } catch {
    // A private window may forbid it; the plan itself is not kept this way.
  }
}
