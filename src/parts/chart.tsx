import { useId } from 'react'
import type { DailyCurve } from '#geo/time/curve'
import { shortDate } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import { useWidth } from './use-width'

/** One band over the season: how far a bloom is open, or the share of a station's bees at work; 1 = its own peak. */
export type Band = {
  readonly id: string
  readonly label: string
  readonly kind: 'bloom' | 'flight'
  /** Values from 0 to 1. */
  readonly curve: DailyCurve
  /** How far it could be, were its dates off by as much as they may be; drawn dashed around it. */
  readonly around?: DailyCurve | null
}

type Props = {
  readonly title: string
  /** The picture in a sentence or two, for those who do not see it. */
  readonly summary: string
  readonly bands: readonly Band[]
  /** Days of season at the left and right edge. */
  readonly from: number
  readonly to: number
  readonly year: number
  readonly bandHeight?: number
  /** Width kept free at the left for the bands' names. */
  readonly labelWidth?: number
}

const axisHeight = 18

/**
 * Bands over the days of a season: bloom as a filled hill, flight as a hatched one with a firm outline, so that they
 * tell apart without colour. A table beside it must give the same dates.
 */
export function Chart(props: Props) {
  const { title, summary, bands, from, to, year, bandHeight = 26, labelWidth = 124 } = props
  const [frame, width] = useWidth<HTMLDivElement>(340)
  const id = useId()
  const height = bands.length * bandHeight + axisHeight
  const plot = Math.max(40, width - labelWidth)
  const x = (at: number) => labelWidth + ((at - from) / Math.max(1, to - from)) * plot
  return (
    <div ref={frame} className="chart">
      <svg
        role="img"
        aria-labelledby={`${id}-title ${id}-summary`}
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-summary`}>{summary}</desc>
        <defs>
          <pattern id={`${id}-hatch`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0v5" className="chart-hatch" />
          </pattern>
        </defs>
        {ticksOf(from, to, year).map(tick => (
          <g key={tick.day}>
            <path className="chart-tick" d={`M${x(tick.day)} 0V${height - axisHeight + 4}`} />
            <text className="chart-date" x={x(tick.day)} y={height - 3} textAnchor="middle">
              {tick.text}
            </text>
          </g>
        ))}
        {bands.map((band, i) => (
          <g key={band.id} transform={`translate(0 ${i * bandHeight})`}>
            {band.around ? <path className="chart-around" d={hill(band.around, x, bandHeight)} /> : null}
            <path
              className={`chart-${band.kind}`}
              d={hill(band.curve, x, bandHeight)}
              fill={band.kind === 'flight' ? `url(#${id}-hatch)` : undefined}
            />
            <text className="chart-label" x="0" y={bandHeight - Math.max(3, Math.round(bandHeight / 4))}>
              {shortened(band.label, labelWidth)}
            </text>
            <path className="chart-line" d={`M0 ${bandHeight - 0.5}H${width}`} />
          </g>
        ))}
      </svg>
    </div>
  )
}

/** Outline of a band's curve standing on its base line. */
export function hill(curve: DailyCurve, x: (day: number) => number, height: number): string {
  const base = height - 1
  const top = 3
  const parts = [`M${x(curve.start - 1).toFixed(1)} ${base}`]
  curve.values.forEach((value, i) => {
    parts.push(`L${x(curve.start + i).toFixed(1)} ${(base - Math.min(1, value) * (base - top)).toFixed(1)}`)
  })
  parts.push(`L${x(curve.start + curve.values.length).toFixed(1)} ${base}Z`)
  return parts.join('')
}

/** The first of each month, and the middle of it where there is room. */
function ticksOf(from: number, to: number, year: number): readonly { day: number; text: string }[] {
  const wanted = to - from > 75 ? ['01'] : ['01', '15']
  const ticks: { day: number; text: string }[] = []
  for (let day = from + 2; day <= to - 2; day += 1) {
    const date = dateOfDay(day, year)
    if (wanted.includes(date.slice(8, 10))) ticks.push({ day, text: shortDate(date) })
  }
  return ticks
}

/** Of a letter at the chart's size of type, about, px. */
export const letterWidth = 6.4

/** Cut to what fits. */
export function shortened(label: string, width: number): string {
  const letters = Math.floor((width - 8) / letterWidth)
  return label.length <= letters ? label : `${label.slice(0, letters - 1)}…`
}
