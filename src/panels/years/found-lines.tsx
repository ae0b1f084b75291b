import { Disclosure } from '../../parts/disclosure'
import { Figure } from '../../parts/figure'
import { counted, grouped, percent } from '../../text/words'
import { useExplain } from '../hooks'
import type { causeLines, FoundLine } from './found-figures'

/** Figures of a season, each with its working; `id` null = the orchard's. */
export function FoundLines({ lines, id }: { readonly lines: readonly FoundLine[]; readonly id: string | null }) {
  const explain = useExplain()
  return (
    <dl className="numbers wide-numbers">
      {lines.map(({ figure, label, text }) => (
        <div key={figure}>
          <dt>{label}</dt>
          <dd>
            <Figure label={label} onExplain={() => explain({ figure, id })}>
              {text}
            </Figure>
          </dd>
        </div>
      ))}
    </dl>
  )
}

/** Cells lost, folded, by what took them. */
export function Causes({ causes }: { readonly causes: ReturnType<typeof causeLines> }) {
  const all = causes.reduce((sum, { cells }) => sum + cells, 0)
  return (
    <Disclosure summary={`${counted(all, 'cell')} lost, by cause`}>
      <ul className="gains">
        {causes.map(({ cause, cells }) => (
          <li key={cause}>
            <span>{cause}</span>
            <span>
              {grouped(cells)} ({percent(cells / all)})
            </span>
          </li>
        ))}
      </ul>
    </Disclosure>
  )
}
