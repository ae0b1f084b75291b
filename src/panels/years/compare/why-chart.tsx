import { useId } from 'react'
import { useWidth } from '../../../parts/use-width'
import { changeText } from './compare-words'

export type Part = { readonly key: string; readonly text: string; readonly change: number }

const rowHeight = 20
const labelWidth = 92

/** One bar for each part, to the right for a gain, to the left and hatched for a loss. The table has the same figures. */
export function WhyChart({ parts, title }: { readonly parts: readonly Part[]; readonly title: string }) {
  const [frame, width] = useWidth<HTMLDivElement>(340)
  const id = useId()
  const most = Math.max(0.01, ...parts.map(({ change }) => Math.abs(change)))
  const hasLoss = parts.some(({ change }) => change < 0)
  const hasGain = parts.some(({ change }) => change >= 0)
  const plot = width - labelWidth
  const zero = hasLoss ? (hasGain ? labelWidth + plot / 2 : width - 1) : labelWidth
  const scale = (hasLoss && hasGain ? plot / 2 : plot) - 2
  const height = parts.length * rowHeight
  return (
    <div ref={frame} className="chart">
      <svg role="img" aria-labelledby={`${id}-title`} viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
        <title id={`${id}-title`}>{title}</title>
        <defs>
          <pattern id={`${id}-hatch`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0v5" className="change-hatch" />
          </pattern>
        </defs>
        {parts.map(({ key, change }, i) => {
          const length = Math.max(1, (Math.abs(change) / most) * scale)
          const x = change < 0 ? zero - length : zero
          const box = { x, y: i * rowHeight + 3, width: length, height: rowHeight - 6 }
          return (
            <g key={key}>
              <text className="chart-label" x="0" y={i * rowHeight + 14}>
                {changeText(change)}
              </text>
              <rect {...box} className={change < 0 ? 'change-loss' : 'change-gain'} />
              {change < 0 ? <rect {...box} fill={`url(#${id}-hatch)`} /> : null}
            </g>
          )
        })}
        <path className="change-zero" d={`M${zero} 0V${height}`} />
      </svg>
    </div>
  )
}
