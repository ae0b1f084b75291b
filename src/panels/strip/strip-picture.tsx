import { Fragment, memo, useId } from 'react'
import { type DailyCurve, endOf } from '#geo/time/curve'
import { hill, shortened } from '../../parts/chart'
import type { BloomBand, FlightBand } from '../season-bands'
import { type BloomLane, laneGap, reachOf } from './bloom-lanes'
import { doubtCurve } from './season-days'
import { type Frost, isFrostOf } from './season-frost'
import { ticksOf } from './season-ticks'
import type { FlyingBand } from './season-weather'
import type { Stretch } from './stretch'

const axisHeight = 18

export type PictureBand = BloomBand | FlightBand | FlyingBand | BloomLane

type Props = {
  readonly title: string
  /** The picture in a sentence or two, for those who do not see it. */
  readonly summary: string
  readonly bands: readonly PictureBand[]
  readonly stretch: Stretch
  readonly year: number
  readonly frosts: readonly Frost[]
  readonly width: number
  readonly labelWidth: number
  readonly bandHeight: number
  /** Day that is looked at, and day that is pointed at. */
  readonly day: number | null
  readonly pointed: number | null
}

/**
 * The season's bands over a stretch of days: bloom as a filled hill, dashed beyond it as far as default dates may be off;
 * flight as a hatched hill with a firm outline; flying time as bars. They tell apart without colour.
 */
export function StripPicture(props: Props) {
  const { title, summary, bands, stretch, width, labelWidth, bandHeight, day, pointed } = props
  const id = useId()
  const { from, to } = stretch
  const height = bands.length * bandHeight
  const plot = Math.max(40, width - labelWidth)
  const x = (at: number) => labelWidth + ((at - from) / Math.max(1, to - from)) * plot
  const isShown = (at: number | null): at is number => at !== null && at >= from && at <= to
  return (
    <svg
      role="img"
      aria-labelledby={`${id}-title ${id}-summary`}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-summary`}>{summary}</desc>
      <Bands {...{ bands, stretch, year: props.year, frosts: props.frosts, width, labelWidth, bandHeight }} />
      {isShown(pointed) && pointed !== day ? <path className="strip-pointed" d={`M${x(pointed)} 0V${height}`} /> : null}
      {isShown(day) ? <path className="chart-day" d={`M${x(day)} 0V${height}`} /> : null}
    </svg>
  )
}

type BandsProps = Omit<Props, 'title' | 'summary' | 'day' | 'pointed'>

/** All of the picture that stays as it is while days are run through. */
const Bands = memo(function Bands({ bands, stretch, year, frosts, width, labelWidth, bandHeight }: BandsProps) {
  const id = useId()
  const { from, to } = stretch
  const height = bands.length * bandHeight
  const plot = Math.max(40, width - labelWidth)
  const x = (at: number) => labelWidth + ((at - from) / Math.max(1, to - from)) * plot
  return (
    <>
      <defs>
        <pattern id={`${id}-hatch`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0v5" className="chart-hatch" />
        </pattern>
        <clipPath id={`${id}-plot`}>
          <rect x={labelWidth} y="0" width={plot} height={height} />
        </clipPath>
      </defs>
      <g clipPath={`url(#${id}-plot)`}>
        {ticksOf(stretch, year, plot).map(tick => (
          <path key={tick.day} className="chart-tick" d={`M${x(tick.day)} 0V${height}`} />
        ))}
        {bands.map((band, i) => (
          <g key={band.kind + band.id} transform={`translate(0 ${i * bandHeight})`}>
            <BandShape band={band} x={x} height={bandHeight} hatch={`${id}-hatch`} />
            {bloomsIn(band).map(({ id: key }) => (
              <Frosts key={key} frosts={frosts} id={key} x={x} />
            ))}
          </g>
        ))}
      </g>
      {bands.map((band, i) => (
        <g key={band.kind + band.id} transform={`translate(0 ${i * bandHeight})`}>
          {band.kind === 'lane' && band.label === null ? (
            <LaneNames {...{ lane: band, frosts, x, width, labelWidth, height: bandHeight }} />
          ) : (
            <text className="chart-label" x="0" y={bandHeight - Math.max(2, Math.round(bandHeight / 4))}>
              {shortened(band.label ?? '', labelWidth)}
            </text>
          )}
          <path className="chart-line" d={`M0 ${bandHeight - 0.5}H${width}`} />
        </g>
      ))}
    </>
  )
})

type ShapeProps = {
  readonly band: PictureBand
  readonly x: (day: number) => number
  readonly height: number
  readonly hatch: string
}

function BandShape({ band, x, height, hatch }: ShapeProps) {
  const path = (curve: DailyCurve) => hill(curve, x, height)
  if (band.kind === 'flying') return <FlyingBars band={band} x={x} height={height} />
  if (band.kind === 'flight') return <path className="chart-flight" d={path(band.curve)} fill={`url(#${hatch})`} />
  const isOver = band.kind === 'lane' && band.label !== null
  return bloomsIn(band).map(bloom => {
    const doubt = doubtCurve(bloom)
    return (
      <Fragment key={bloom.id}>
        {doubt === null ? null : <path className="strip-doubt" d={path(doubt)} />}
        <path className={isOver ? 'chart-bloom strip-over' : 'chart-bloom'} d={path(bloom.curve)} />
      </Fragment>
    )
  })
}

function bloomsIn(band: PictureBand): readonly BloomBand[] {
  if (band.kind === 'lane') return band.blooms.map(({ band: bloom }) => bloom)
  return band.kind === 'bloom' ? [band] : []
}

type NamesProps = Pick<ShapeProps, 'x' | 'height'> &
  Pick<Props, 'frosts' | 'width' | 'labelWidth'> & { readonly lane: BloomLane }

/** Names beside the hills of a line, since its blooms share the room for one at the left. */
function LaneNames({ lane, frosts, x, height, width, labelWidth }: NamesProps) {
  return lane.blooms.map(({ band, isNameBefore }) => {
    const { from, to } = reachOf(band, frosts)
    if (x(to) < labelWidth || x(from) > width) return null
    return (
      <text
        key={band.id}
        className="chart-label"
        x={isNameBefore ? x(from) - laneGap : x(to) + laneGap}
        y={height - Math.max(2, Math.round(height / 4))}
        textAnchor={isNameBefore ? 'end' : 'start'}
      >
        {shortened(band.label, labelWidth)}
      </text>
    )
  })
}

/** A bar for each day's hours, and a dashed line at those of a typical day; where nothing is known, a dot on the base. */
function FlyingBars({ band: { hours, known, typical }, x, height }: Omit<ShapeProps, 'hatch'> & { band: FlyingBand }) {
  const base = height - 1
  const most = Math.max(typical, ...hours.values)
  const y = (value: number) => base - (value / most) * (height - 3)
  const width = Math.max(1, 0.6 * (x(1) - x(0)))
  const bars: string[] = []
  const gaps: string[] = []
  hours.values.forEach((value, i) => {
    const left = (x(hours.start + i) - width / 2).toFixed(1)
    if (known[i] === 1) bars.push(`M${left} ${base}V${y(value).toFixed(1)}h${width.toFixed(1)}V${base}Z`)
    else gaps.push(`M${left} ${base - 2}h2v2h-2Z`)
  })
  const end = hours.start + hours.values.length - 1
  return (
    <>
      <path className="strip-flying" d={bars.join('')} />
      <path className="strip-unknown" d={gaps.join('')} />
      <path className="strip-doubt" d={`M${x(hours.start)} ${y(typical)}H${x(end)}`} />
    </>
  )
}

/** A wedge from above on every night that kills flowers of a bloom's crop or planting. */
function Frosts({
  frosts,
  id,
  x,
}: {
  readonly frosts: readonly Frost[]
  readonly id: string
  readonly x: (day: number) => number
}) {
  return frosts
    .filter(frost => isFrostOf(frost, id))
    .map(({ day, isSevere }) => (
      <path key={day} className={isSevere ? 'strip-frost-hard' : 'strip-frost'} d={`M${x(day) - 4} 1h8l-4 8Z`} />
    ))
}

type AxisProps = Pick<Props, 'stretch' | 'year' | 'width' | 'labelWidth'>

/** The dates below the bands; not read aloud, since the bands' summary has them. */
export const StripAxis = memo(function StripAxis({ stretch, year, width, labelWidth }: AxisProps) {
  const { from, to } = stretch
  const plot = Math.max(40, width - labelWidth)
  return (
    <svg
      className="strip-axis"
      aria-hidden="true"
      viewBox={`0 0 ${width} ${axisHeight}`}
      width={width}
      height={axisHeight}
    >
      {ticksOf(stretch, year, plot).map(({ day, text }) => (
        <text
          key={day}
          className="chart-date"
          x={labelWidth + ((day - from) / Math.max(1, to - from)) * plot}
          y={axisHeight - 4}
          textAnchor="middle"
        >
          {text}
        </text>
      ))}
    </svg>
  )
})

/** First and last day of everything that is drawn, doubt included. */
export function wholeOf(bands: {
  readonly from: number
  readonly to: number
  readonly blooms: readonly BloomBand[]
}): Stretch {
  const doubts = bands.blooms.flatMap(band => doubtCurve(band) ?? [])
  return {
    from: Math.min(bands.from, ...doubts.map(({ start }) => start - 1)),
    to: Math.max(bands.to, ...doubts.map(endOf)),
  }
}
