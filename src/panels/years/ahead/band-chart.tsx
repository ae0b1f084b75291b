import { useId } from 'react'
import type { Spread } from '#geo/seasons/spread'
import { useWidth } from '../../../parts/use-width'

export type BandPoint = { readonly year: number; readonly band: Spread | null }

type Props = {
  readonly title: string
  readonly points: readonly BandPoint[]
  readonly word: (value: number) => string
  /** A level to reach, drawn as a dashed line with its name. */
  readonly goal: { readonly value: number; readonly name: string } | null
  /** Upper end of the scale; null = the highest of the band. */
  readonly top: number | null
}

const height = 190
const margin = { left: 50, right: 14, top: 12, bottom: 24 }

/** Low to high as a hatched band with firm edges, the middle as a line with dots: never the line alone. */
export function BandChart({ title, points, word, goal, top }: Props) {
  const [frame, width] = useWidth<HTMLDivElement>(340)
  const id = useId()
  const known = points.filter((point): point is BandPoint & { band: Spread } => point.band !== null)
  const most = top ?? Math.max(1, ...known.map(({ band }) => band.high))
  const last = Math.max(1, points.length - 1)
  const x = (year: number) => margin.left + ((year - points[0]!.year) / last) * (width - margin.left - margin.right)
  const y = (value: number) => margin.top + (1 - value / most) * (height - margin.top - margin.bottom)
  const line = (of: (band: Spread) => number) =>
    known.map(({ year, band }, i) => `${i ? 'L' : 'M'}${x(year).toFixed(1)} ${y(of(band)).toFixed(1)}`).join('')
  const outline = `${line(band => band.high)}${known
    .toReversed()
    .map(({ year, band }) => `L${x(year).toFixed(1)} ${y(band.low).toFixed(1)}`)
    .join('')}Z`
  const every = points.length > 6 && width < 480 ? 2 : 1
  return (
    <div ref={frame} className="chart">
      <svg role="img" aria-labelledby={`${id}-title`} viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
        <title id={`${id}-title`}>{title}</title>
        <defs>
          <pattern id={`${id}-hatch`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0v6" className="chart-hatch" />
          </pattern>
        </defs>
        {[0, most / 2, most].map(value => (
          <g key={value}>
            <path className="chart-line" d={`M${margin.left} ${y(value)}H${width - margin.right}`} />
            <text className="chart-date" x={margin.left - 6} y={y(value) + 4} textAnchor="end">
              {word(value)}
            </text>
          </g>
        ))}
        <path className="ahead-band" d={outline} />
        <path d={outline} fill={`url(#${id}-hatch)`} />
        <path className="ahead-middle" d={line(band => band.mid)} />
        {known.map(({ year, band }) => (
          <g key={year}>
            <path className="ahead-span" d={`M${x(year)} ${y(band.low)}V${y(band.high)}`} />
            <circle className="ahead-dot" cx={x(year)} cy={y(band.mid)} r="4" />
          </g>
        ))}
        {goal === null || goal.value > most ? null : (
          <>
            <path className="ahead-goal" d={`M${margin.left} ${y(goal.value)}H${width - margin.right}`} />
            <text className="chart-label ahead-goal-name" x={margin.left + 6} y={y(goal.value) - 4}>
              {goal.name}
            </text>
          </>
        )}
        {points.map(({ year }, i) =>
          i % every === 0 ? (
            <text key={year} className="chart-date" x={x(year)} y={height - 6} textAnchor="middle">
              {year}
            </text>
          ) : null,
        )}
      </svg>
    </div>
  )
}
