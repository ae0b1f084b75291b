import { useMemo, useState } from 'react'
import { useMedia } from '../../parts/use-media'
import { useWidth } from '../../parts/use-width'
import { setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { usePlan, useYear } from '../hooks'
import { bandsSummary } from '../season-bands'
import { useShell } from '../shell'
import { bloomLanes, bloomsByCrop, fewLanes } from './bloom-lanes'
import { DaySlider } from './day-slider'
import { workSentence } from './day-work'
import { groupedFlights, mergedFlights } from './flight-groups'
import { dayInWords, noWeather, type SeasonPicture, seasonPicture } from './season-days'
import { isWhole, type Stretch, showing, within } from './stretch'
import { StripAxis, StripPicture, wholeOf } from './strip-picture'
import { StripTools } from './strip-tools'
import { usePlay } from './use-play'
import './strip.css'

/** Room for the bands, and how high one of them may be, px. */
const room = 64
const highest = 18
const lowest = 13
/** With more bands than this the stations share one and blooms follow each other on a line, unless all are asked for. */
const mostBands = 5
/** Narrower than this the names beside the hills have no room. */
const narrow = 520

/** Where the strip begins folded, so that it leaves a map. */
const small = '(max-width: 700px), (max-height: 560px)'

/** Bloom and flight over the season along the foot of the map. A day of it is read in words, and chosen for the map. */
export function SeasonStrip() {
  const plan = usePlan()
  const year = useYear()
  const { isFolded, fold } = useFolded()
  const bands = useMemo(() => groupedFlights(seasonPicture(plan, year)), [plan, year])
  const isEmpty = bands.blooms.length + bands.flights.length === 0
  return (
    <section className="strip" data-folded={isFolded} aria-label="Bloom and flight over the season">
      {isFolded || isEmpty ? (
        <>
          <div className="strip-head">
            <h2>Season {year}</h2>
            <FoldButton isFolded={isFolded} fold={fold} />
          </div>
          {isFolded ? null : (
            <p className="aside-note">Bloom and flight appear here once there are bloom dates and cocoons set out.</p>
          )}
        </>
      ) : (
        <Season key={year} bands={bands} year={year} foldButton={<FoldButton isFolded={isFolded} fold={fold} />} />
      )}
    </section>
  )
}

type SeasonProps = { readonly bands: SeasonPicture; readonly year: number; readonly foldButton: React.ReactNode }

function Season({ bands, year, foldButton }: SeasonProps) {
  const store = usePlannerStore()
  const { showDialog } = useShell()
  const day = usePlanner(state => state.view.day)
  const [pointed, setPointed] = useState<number | null>(null)
  const [isAll, setAll] = useState(false)
  const [wish, setWish] = useState<Stretch | null>(null)
  const [frame, width] = useWidth<HTMLDivElement>(600)
  const whole = useMemo(() => wholeOf(bands), [bands])
  const play = usePlay(whole)
  const stretch = wish === null ? whole : within(wish, whole)
  const labelWidth = width < narrow ? 88 : 132
  const isCrowded = bands.flying.length + bands.flights.length + bands.blooms.length > mostBands
  const isMerged = isCrowded && !isAll
  const shown = useMemo(() => (isMerged ? mergedFlights(bands) : bands), [bands, isMerged])
  const all = useMemo(() => {
    const others = [...shown.flying, ...shown.flights]
    if (!isMerged || width < narrow) return [...others, ...shown.blooms]
    const inLanes = (blooms: SeasonPicture['blooms']) =>
      bloomLanes(blooms, shown.frosts, { whole, plot: width - labelWidth, labelWidth })
    const lanes = inLanes(shown.blooms)
    const most = Math.max(2, mostBands - others.length)
    return [...others, ...(lanes.length <= most ? lanes : fewLanes(inLanes(bloomsByCrop(shown.blooms)), most))]
  }, [shown, isMerged, whole, width, labelWidth])
  const summary = useMemo(() => bandsSummary(shown, year), [shown, year])
  const read = pointed ?? day
  const words = read === null ? null : dayInWords(bands, read, year)
  const work = usePlanner(({ view, results }) => workSentence(view.day, results.day))
  const show = (next: Stretch) => setWish(isWhole(next, whole) ? null : next)
  const choose = (next: number | null) => {
    play.stop()
    if (next !== null) show(showing(stretch, whole, next))
    setView(store, { day: next })
  }
  // The days that pass by themselves stay in view too.
  const seen = play.isPlaying && day !== null ? showing(stretch, whole, day) : stretch
  return (
    <>
      <div className="strip-head">
        <h2>Season {year}</h2>
        {day === null ? null : (
          <button type="button" onClick={() => choose(null)}>
            Whole season
          </button>
        )}
        {isCrowded ? (
          <button type="button" className="strip-each" aria-pressed={isAll} onClick={() => setAll(!isAll)}>
            Each by itself
          </button>
        ) : null}
        <StripTools
          whole={whole}
          stretch={seen}
          day={day}
          play={play}
          onDay={choose}
          onStretch={show}
          onTable={() => showDialog('days')}
        />
        {foldButton}
      </div>
      <p className="strip-words">
        {words === null
          ? `Point at a day to read it; press on it, or use the arrow keys, to see who works where.${bands.flying.length === 0 ? ` ${noWeather}` : ''}`
          : pointed === null && work !== null
            ? `${words} ${work}`
            : words}
      </p>
      <DaySlider
        whole={whole}
        stretch={seen}
        year={year}
        labelWidth={labelWidth}
        day={day}
        words={day === null ? null : dayInWords(bands, day, year)}
        onDay={choose}
        onPoint={setPointed}
        onStretch={show}
      >
        <div ref={frame} className="chart">
          <StripPicture
            title={`Season ${year}`}
            summary={summary}
            bands={all}
            stretch={seen}
            year={year}
            frosts={bands.frosts}
            width={width}
            labelWidth={labelWidth}
            bandHeight={Math.max(lowest, Math.min(highest, Math.floor(room / all.length)))}
            day={day}
            pointed={pointed}
          />
        </div>
      </DaySlider>
      <StripAxis stretch={seen} year={year} width={width} labelWidth={labelWidth} />
    </>
  )
}

function FoldButton({ isFolded, fold }: { readonly isFolded: boolean; readonly fold: () => void }) {
  return (
    <button
      type="button"
      className="quiet fold"
      aria-expanded={!isFolded}
      aria-label={`${isFolded ? 'Unfold' : 'Fold'} the season`}
      onClick={fold}
    >
      {isFolded ? 'Unfold' : 'Fold'}
    </button>
  )
}

/** Folded as last left; on a small screen folded at first, and not remembered. */
function useFolded(): { readonly isFolded: boolean; readonly fold: () => void } {
  const store = usePlannerStore()
  const isSmall = useMedia(small)
  const isLeftFolded = usePlanner(state => state.view.stripFolded)
  const [isSmallFolded, setSmallFolded] = useState(true)
  if (!isSmall) return { isFolded: isLeftFolded, fold: () => setView(store, { stripFolded: !isLeftFolded }) }
  return {
    isFolded: isSmallFolded,
    fold: () => {
      // The days are read together with the map: it needs some height beside the strip.
      if (isSmallFolded && store.getState().view.sheet !== 'third') setView(store, { sheet: 'third' })
      setSmallFolded(!isSmallFolded)
    },
  }
}
