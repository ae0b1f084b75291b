import type { Plan } from './plan'
import type { ReportProblem } from './report-problem'

/** What keeps an address from leading to map pictures; null where it can. */
export type AddressFault = { readonly why: 'start' } | { readonly why: 'parts'; readonly missing: string }

export function addressFault(url: string): AddressFault | null {
  if (!/^https?:\/\/[^\s]+$/.test(url)) return { why: 'start' }
  const missing = ['{z}', '{x}', '{y}'].filter(part => !url.includes(part))
  return missing.length === 0 ? null : { why: 'parts', missing: missing.join(', ') }
}

export function checkTiles({ tiles }: Plan, report: ReportProblem): void {
  const fault = tiles === undefined ? null : addressFault(tiles.url)
  if (fault === null) return
  report('note', 'tiles-address', 'plan.tiles', { missing: fault.why === 'parts' ? fault.missing : '' })
}
