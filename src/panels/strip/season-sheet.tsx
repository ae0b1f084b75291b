import { useMemo, useState } from 'react'
import { Dialog } from '../../parts/dialog'
import { type Column, Table } from '../../parts/table'
import { useMedia } from '../../parts/use-media'
import { useWidth } from '../../parts/use-width'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { usePlan, useYear } from '../hooks'
import { bandsSummary } from '../season-bands'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { groupedFlights } from './flight-groups'
import { noWeather, type SeasonPicture, seasonPicture } from './season-days'
import { dayRows, rowHeads, rowsText, type SeasonRow, seasonCsv, weekRows } from './season-rows'
import { StripAxis, StripPicture, wholeOf } from './strip-picture'
import { WhoWorks } from './who-works'

/** The season's picture with the same figures as a table: to read, copy, save or print. */
export function SeasonSheet({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const isNarrow = useMedia('(max-width: 700px)')
  const [isByWeek, setByWeek] = useState(isNarrow)
  const { copyText, saveTable } = useServices()
  const bands = useMemo(() => seasonPicture(plan, year), [plan, year])
  const rows = useMemo(() => (isByWeek ? weekRows : dayRows)(bands, year), [isByWeek, bands, year])
  const tell = async (act: () => Promise<string | null>, what: string) => {
    try {
      const words = await act()
      if (words !== null) notify(store, words)
    } catch (error) {
      notify(store, `The table was not ${what}: ${reasonOf(error)}`)
    }
  }
  const copy = async () => {
    await copyText(rowsText(rows))
    return 'The table is copied.'
  }
  return (
    <Dialog title={`Season ${year}: ${plan.name}`} onClose={onClose}>
      <div className="season-sheet stack">
        <SheetPicture bands={bands} year={year} />
        <WhoWorks />
        <div className="actions season-sheet-tools">
          <fieldset className="strip-choice">
            <legend className="unseen">Lines of the table</legend>
            {([false, true] as const).map(byWeek => (
              <label className="option" key={String(byWeek)}>
                <input type="radio" name="lines" checked={isByWeek === byWeek} onChange={() => setByWeek(byWeek)} />
                {byWeek ? 'Week by week' : 'Day by day'}
              </label>
            ))}
          </fieldset>
          <button type="button" onClick={() => tell(copy, 'copied')}>
            Copy the table
          </button>
          <button
            type="button"
            onClick={() => tell(() => saveTable(`${plan.name} season ${year}`, seasonCsv(bands, year)), 'saved')}
          >
            Save as CSV
          </button>
          <button type="button" onClick={() => globalThis.print()}>
            Print
          </button>
        </div>
        <Table
          caption={isByWeek ? `The season week by week: the most of each week` : 'The season day by day'}
          columns={[
            { key: 'when', head: rowHeads.when, cell: (row: SeasonRow) => row.when },
            { key: 'open', head: rowHeads.open, cell: row => row.open },
            { key: 'females', head: rowHeads.females, cell: row => row.females, isFigure: true },
            ...(bands.flying.length === 0 ? [] : [flyingColumn, frostColumn]),
          ]}
          rows={rows}
          keyOf={row => row.when}
        />
      </div>
    </Dialog>
  )
}

const flyingColumn: Column<SeasonRow> = {
  key: 'flying',
  head: rowHeads.flying,
  cell: row => row.flying,
  isFigure: true,
}

const frostColumn: Column<SeasonRow> = { key: 'frost', head: rowHeads.frost, cell: row => row.frost }

const labelWidth = 132
const bandHeight = 18

/** All bands, every flight that differs, over the whole season: on paper nothing can be scrolled or unfolded. */
function SheetPicture({ bands, year }: { readonly bands: SeasonPicture; readonly year: number }) {
  const [frame, width] = useWidth<HTMLDivElement>(640)
  const grouped = groupedFlights(bands)
  const whole = wholeOf(grouped)
  const hasDoubt = grouped.blooms.some(({ doubt }) => doubt !== null)
  return (
    <div ref={frame} className="chart season-sheet-picture">
      <StripPicture
        title={`Season ${year}`}
        summary={bandsSummary(bands, year)}
        bands={[...grouped.flying, ...grouped.flights, ...grouped.blooms]}
        stretch={whole}
        year={year}
        frosts={bands.frosts}
        width={width}
        labelWidth={labelWidth}
        bandHeight={bandHeight}
        day={null}
        pointed={null}
      />
      <StripAxis stretch={whole} year={year} width={width} labelWidth={labelWidth} />
      <p className="aside-note">
        Hatched: females on the wing, against that band’s own peak. Filled: how far a bloom is open.
        {grouped.flying.length === 0
          ? ` ${noWeather}`
          : ' Bars: flying hours by the weather, estimated; dashed at a typical day’s; a dot where the weather is not known.'}
        {bands.frosts.length === 0
          ? ''
          : ' A wedge: frost that kills a tenth of that crop’s flowers, filled: nine tenths. More bees cannot make up for frosted flowers.'}
        {hasDoubt ? ' Dashed: how far it could be open if default dates are off by as much as they may be.' : ''}
      </p>
    </div>
  )
}
