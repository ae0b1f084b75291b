import { useMemo } from 'react'
import { type RulesOfThumb, rulesOfThumb } from '#geo/report/rules'
import { Table } from '../../parts/table'
import { honest, rangeText } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { cropTitle } from '../titles'
import { Explained } from './figures'

type Line = {
  readonly crop: string
  readonly name: string
  readonly byArea: number
  readonly byPlant: { readonly low: number; readonly high: number } | null
}

/** The rate by area and the number per plant side by side, by crop: where they clash, both are shown. */
export function RulesTable() {
  const plan = usePlan()
  const year = useYear()
  const lines = useMemo(() => ruleLines(rulesOfThumb(plan, year), crop => cropTitle(plan, crop)), [plan, year])
  const doClash = lines.some(isClash)
  return (
    <div className="stack">
      <p>
        {doClash
          ? 'Growers use a rate by area and a number per plant, and here the two disagree. '
          : 'Growers use a rate by area and a number per plant. '}
        The count follows the rate by area, except where a planting has its own number per plant.{' '}
        <Explained figure="rules" id={null} label="the two rules of thumb">
          How they come about
        </Explained>
      </p>
      <Table
        caption={`Nesting females wanted in ${year} by two rules of thumb`}
        isCaptionHidden
        columns={[
          { key: 'crop', head: 'Crop', cell: line => line.name },
          { key: 'area', head: 'By area', cell: line => honest(line.byArea), isFigure: true },
          {
            key: 'plant',
            head: 'By plant',
            cell: line => (line.byPlant ? rangeText(line.byPlant.low, line.byPlant.high, honest) : 'none'),
            isFigure: true,
          },
        ]}
        rows={lines}
        keyOf={line => line.crop}
      />
    </div>
  )
}

/** Rules added up by crop, in the order in which the plan names the crops. */
function ruleLines(rules: readonly RulesOfThumb[], nameOf: (crop: string) => string): readonly Line[] {
  const lines = new Map<string, Line>()
  for (const { crop, byArea, byPlant } of rules) {
    const line = lines.get(crop) ?? { crop, name: nameOf(crop), byArea: 0, byPlant: null }
    const sum = byPlant && {
      low: (line.byPlant?.low ?? 0) + byPlant.low,
      high: (line.byPlant?.high ?? 0) + byPlant.high,
    }
    lines.set(crop, { ...line, byArea: line.byArea + byArea, byPlant: sum ?? line.byPlant })
  }
  return [...lines.values()]
}

function isClash({ byArea, byPlant }: Line): boolean {
  return byPlant !== null && (byArea < byPlant.low || byArea > byPlant.high)
}
