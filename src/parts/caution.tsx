import type { CautionKey } from '#geo/wording/cautions'
import { cautionIn } from '../text/cautions'
import { useUnits } from './units-context'

/** A caution where the risky act is planned: short, with the longer text behind it. */
export function Caution({ about }: { readonly about: CautionKey }) {
  const { title, short, long } = cautionIn(about, useUnits())
  return (
    <aside className="caution" aria-label={title}>
      <p>{short}</p>
      <details>
        <summary>More on this</summary>
        <p>{long}</p>
      </details>
    </aside>
  )
}
