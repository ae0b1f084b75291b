import { useState } from 'react'
import { setShareOut } from '#geo/plan/edits-records'
import { counted as countedLimit } from '#geo/plan/limits'
import type { ShareOut as Shared } from '#geo/plan/plan'
import { stationYears } from '#geo/seasons/record'
import { listed } from '#geo/wording/plain'
import { ChoiceField } from '../../parts/choice-field'
import { NumberField } from '../../parts/number-field'
import { Table } from '../../parts/table'
import { notify } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted, grouped } from '../../text/words'
import { useEdit, usePlan, useSeason, useYear } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'
import { useKeptDraft } from './kept-draft'
import { divided, readShareLines, shareFault, shareLinesText } from './share-lines'
import { Words } from './words-field'

const rules = [
  { value: 'equal', name: 'Equal shares' },
  { value: 'area', name: 'By fruit area' },
  { value: 'hours', name: 'By hours worked' },
  { value: 'other', name: 'By another figure' },
] as const satisfies readonly { value: Shared['rule']; name: string }[]

const measureNames: Readonly<Record<Shared['rule'], string>> = {
  equal: '',
  area: 'm² of fruit',
  hours: 'hours',
  other: 'your own figure',
}

type Draft = {
  readonly rule: Shared['rule']
  readonly text: string
  readonly total: number | null
  readonly money: number | null
}

/** Cocoons given away out of a season's harvest, by a rule that is told, to the last cocoon. */
export function ShareOut() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const planId = usePlanner(state => state.document.planId)
  const saved = season?.shareOut
  const found = foundIn(stationYears(plan, year))
  const [kept, setDraft, forget] = useKeptDraft<Draft | null>(`share ${planId} ${year}`, () => null)
  const draft: Draft = kept ?? {
    rule: saved?.rule ?? 'equal',
    text: saved ? shareLinesText(saved) : '',
    total: saved ? givenIn(saved) : null,
    money: null,
  }
  const change = (patch: Partial<Draft>) => setDraft({ ...draft, ...patch })
  const { rule, text, total, money } = draft
  const read = readShareLines(text)
  const fault = read.ok ? shareFault(read.lines, rule) : read.why
  const lines = read.ok && fault === null ? read.lines : []
  const cocoons = total === null || lines.length === 0 ? null : divided(total, lines, rule)
  const pennies = money === null || lines.length === 0 ? null : divided(Math.round(money * 100), lines, rule)
  const isOver = found !== null && total !== null && total > found
  const save = () => {
    const shares = lines.map(({ to, measure }, i) => ({
      to,
      ...(measure !== null && { measure }),
      ...(cocoons !== null && { cocoons: cocoons[i]! }),
    }))
    edit(setShareOut(year, { rule, shares }))
    notify(store, `The share-out of ${year} is saved.`)
    forget()
  }
  return (
    <>
      <p>
        {found === null
          ? `No cocoons of ${year} were counted, so what is given away has nothing to be held against yet.`
          : `${counted(found, 'cocoon')} were found in ${year}${total === null ? '' : `; ${grouped(Math.max(0, found - total))} stay as stock`}.`}
      </p>
      <NumberField
        label="Cocoons to give away"
        value={total}
        limit={fieldLimit(countedLimit('number of cocoons'))}
        onCommit={next => change({ total: next })}
      />
      {isOver ? <p className="field-fault">More than the {grouped(found)} that were found.</p> : null}
      <ChoiceField label="Rule" value={rule} choices={rules} onCommit={next => change({ rule: next })} />
      <Words
        label={
          rule === 'equal' ? 'Who gets a share, one on each line' : `Who gets a share: name; ${measureNames[rule]}`
        }
        value={text}
        onChange={next => change({ text: next })}
        isLong
        rows={6}
        placeholder={rule === 'equal' ? 'Plot 1' : 'Plot 1; 24'}
      />
      <Numbered onAdd={names => change({ text: [text.trimEnd(), ...names].filter(Boolean).join('\n') })} />
      <NumberField
        label="Costs to share out too, in your money"
        value={money}
        limit={{ low: 0, high: 1e6 }}
        onCommit={next => change({ money: next })}
        note="Worked out here by the same rule; not kept in the plan."
      />
      {fault !== null ? (
        <p className="field-note" role="status">
          {fault}
        </p>
      ) : (
        <>
          <p role="status">{sharesText(cocoons, pennies)}</p>
          <Table
            caption={`Shares of ${year}, ${rules.find(({ value }) => value === rule)!.name.toLowerCase()}; what is left over goes one by one to the largest remainders, among equal ones to the first in the list`}
            columns={[
              { key: 'to', head: 'To', cell: row => row.to },
              ...(rule === 'equal'
                ? []
                : [
                    {
                      key: 'measure',
                      head: measureNames[rule],
                      cell: (row: Row) => grouped(row.measure!),
                      isFigure: true as const,
                    },
                  ]),
              ...(cocoons === null
                ? []
                : [
                    {
                      key: 'cocoons',
                      head: 'Cocoons',
                      cell: (row: Row) => grouped(cocoons[row.at]!),
                      isFigure: true as const,
                    },
                  ]),
              ...(pennies === null
                ? []
                : [
                    {
                      key: 'money',
                      head: 'Pays',
                      cell: (row: Row) => moneyText(pennies[row.at]!),
                      isFigure: true as const,
                    },
                  ]),
            ]}
            rows={lines.map((line, at): Row => ({ ...line, at }))}
            keyOf={({ at }) => String(at)}
          />
        </>
      )}
      <div className="save-bar">
        <button type="button" className="first" disabled={fault !== null || total === null} onClick={save}>
          Save the share-out
        </button>
      </div>
      {saved === undefined ? null : (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            edit(setShareOut(year, null))
            setDraft(null)
            notify(store, `The share-out of ${year} was deleted. Undo brings it back.`)
          }}
        >
          Delete the share-out of {year}
        </button>
      )}
    </>
  )
}

type Row = { readonly to: string; readonly measure: number | null; readonly at: number }

/** A run of plots by number, so that nobody types 38 lines. */
function Numbered({ onAdd }: { readonly onAdd: (names: readonly string[]) => void }) {
  const [word, setWord] = useState('Plot')
  const [many, setMany] = useState<number | null>(null)
  const isReady = many !== null && word.trim() !== ''
  return (
    <div className="fields">
      <Words label="Or add numbered: word" value={word} onChange={setWord} />
      <NumberField label="How many" value={many} limit={{ low: 1, high: 500, isWhole: true }} onCommit={setMany} />
      <button
        type="button"
        disabled={!isReady}
        onClick={() => {
          if (many === null) return
          onAdd(Array.from({ length: many }, (_, i) => `${word.trim()} ${i + 1}`))
          setMany(null)
        }}
      >
        {isReady ? `Add ${word.trim()} 1 to ${many}` : 'Add lines'}
      </button>
    </div>
  )
}

function foundIn(stations: ReturnType<typeof stationYears>): number | null {
  const known = stations.filter(({ daughters, sons }) => daughters !== null || sons !== null)
  if (known.length === 0) return null
  return Math.round(known.reduce((sum, { daughters, sons }) => sum + (daughters?.count ?? 0) + (sons?.count ?? 0), 0))
}

function givenIn({ shares }: Shared): number | null {
  const known = shares.flatMap(({ cocoons }) => (typeof cocoons === 'number' ? [cocoons] : []))
  return known.length === 0 ? null : known.reduce((sum, each) => sum + each, 0)
}

function moneyText(pennies: number): string {
  return (pennies / 100).toFixed(2)
}

/** "24 get 9 and 14 get 10 cocoons; 24 pay 8.47 and 14 pay 8.48". */
function sharesText(cocoons: readonly number[] | null, pennies: readonly number[] | null): string {
  const parts = (shares: readonly number[], verb: string, word: (share: number) => string) => {
    const sizes = [...new Set(shares)].toSorted((a, b) => a - b)
    if (sizes.length > 3) return `from ${word(sizes[0]!)} to ${word(sizes.at(-1)!)}`
    return listed(sizes.map(size => `${shares.filter(share => share === size).length} ${verb} ${word(size)}`))
  }
  const told = [
    cocoons === null ? '' : `Cocoons: ${parts(cocoons, 'get', grouped)}`,
    pennies === null ? '' : `Costs: ${parts(pennies, 'pay', moneyText)}`,
  ].filter(Boolean)
  return told.length === 0 ? 'Say how many cocoons there are to give away.' : `${told.join('. ')}.`
}
