import { useMedia } from '../../parts/use-media'
import { closer, farther, isWhole, panned, type Stretch, zoomed } from './stretch'
import type { Play } from './use-play'

type Props = {
  readonly whole: Stretch
  readonly stretch: Stretch
  readonly day: number | null
  readonly play: Play
  readonly onDay: (day: number) => void
  readonly onStretch: (stretch: Stretch) => void
  readonly onTable: () => void
}

/** What can be done with the days by pressing: step, play, look closer, move along, and the table. */
export function StripTools({ whole, stretch, day, play, onDay, onStretch, onTable }: Props) {
  const isStill = useMedia('(prefers-reduced-motion: reduce)')
  const [first, last] = [Math.ceil(whole.from), Math.floor(whole.to)]
  const middle = day ?? (stretch.from + stretch.to) / 2
  const isAll = isWhole(stretch, whole)
  const move = (share: number) => onStretch(panned(stretch, whole, share * (stretch.to - stretch.from)))
  const tool = (mark: string, name: string, action: () => void, isOff = false) => (
    <button type="button" aria-label={name} title={name} disabled={isOff} onClick={action}>
      <span aria-hidden="true">{mark}</span>
    </button>
  )
  return (
    <div className="strip-tools" role="toolbar" aria-label="Days of the season">
      {tool('‹', 'The day before', () => onDay((day ?? first) - 1), day === null || day <= first)}
      {tool('›', 'The next day', () => onDay(day === null ? first : day + 1), day !== null && day >= last)}
      {isStill ? null : (
        <button type="button" onClick={play.isPlaying ? play.stop : play.start}>
          {play.isPlaying ? 'Pause' : 'Play'}
        </button>
      )}
      {tool('+', 'Show fewer days', () => onStretch(zoomed(stretch, whole, closer, middle)))}
      {tool('−', 'Show more days', () => onStretch(zoomed(stretch, whole, farther, middle)), isAll)}
      {isAll ? null : (
        <>
          {tool('«', 'Earlier days', () => move(-0.5), stretch.from <= whole.from)}
          {tool('»', 'Later days', () => move(0.5), stretch.to >= whole.to)}
        </>
      )}
      <button type="button" onClick={onTable}>
        Table
      </button>
    </div>
  )
}
