import type { ReactNode } from 'react'
import type { RecordFault } from '#geo/plan/record-faults'
import { faultText } from './visit-draft'

type Props = {
  readonly faults: readonly RecordFault[]
  /** Of the station. */
  readonly name: string
  readonly isBoxed?: boolean
  readonly children?: ReactNode
}

/** Why counts cannot be kept as they are, and what there is to mend it; nothing where they can. */
export function RecordFaults({ faults, name, isBoxed = false, children }: Props) {
  if (faults.length === 0) return null
  return (
    <div role="alert" {...(isBoxed && { className: 'call-box' })}>
      {faults.map(fault => (
        <p key={fault.code} className="field-fault">
          {faultText(fault, name)}
        </p>
      ))}
      {children}
    </div>
  )
}
