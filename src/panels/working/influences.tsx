import { beeLimits, cropLimits, siteLimits } from '#geo/plan/limits'
import { Table } from '../../parts/table'
import { capitalised, percent, rangeText } from '../../text/words'
import { useRanges } from '../coverage/figures'

/** How many of the figures that move coverage most are shown. */
const shown = 5

/** Which uncertain figures move the orchard's coverage most, and from where to where. */
export function Influences() {
  const ranges = useRanges()
  if (ranges === null) return <p className="aside-note">The range is being worked out.</p>
  const strongest = ranges.influences.slice(0, shown)
  if (strongest.length === 0) return null
  return (
    <Table
      caption="What the orchard’s coverage hangs on most: from the low to the high end of each figure’s range"
      columns={[
        { key: 'figure', head: 'Figure', cell: line => influenceLabel(line.parameter) },
        { key: 'moves', head: 'Coverage', cell: line => rangeText(line.low, line.high, percent), isFigure: true },
      ]}
      rows={strongest}
      keyOf={line => line.parameter}
    />
  )
}

function influenceLabel(parameter: string): string {
  const [scope, name = parameter] = parameter.split('.')
  const limits: Readonly<Record<string, { readonly label: string }>> =
    scope === 'bee' ? beeLimits : scope === 'crop' ? cropLimits : siteLimits
  return capitalised(limits[name]?.label ?? name)
}
