import { CropField } from '../../parts/crop-field'
import { usePlan } from '../hooks'

type Props = { readonly value: string; readonly onCommit: (crop: string) => void }

export function CropChoice({ value, onCommit }: Props) {
  return <CropField plan={usePlan()} value={value} onCommit={onCommit} />
}
