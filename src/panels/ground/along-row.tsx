import { useState } from 'react'
import type { Row, Windbreak } from '#geo/plan/plan'
import { placeAlong } from '#geo/space/along'
import type { LngLat } from '#geo/space/plane'
import { bearing, lineLength } from '#geo/space/shape'
import { ChoiceField } from '../../parts/choice-field'
import { NumberField } from '../../parts/number-field'
import { lengthText } from '../../text/units'
import { compassWord } from '../../text/words'
import { useHome, usePlan } from '../hooks'
import { titleOf } from '../titles'

const far = { low: -20_000, high: 20_000 } as const

type Props = { readonly words: string; readonly onTake: (at: LngLat) => void }

/** A place so many metres along a row and to its side: "12 m along Row 3, 2 m to its east". */
export function AlongRow({ words, onTake }: Props) {
  const plan = usePlan()
  const home = useHome()
  const lines = plan.features.filter((feature): feature is Row | Windbreak => feature.geometry.type === 'LineString')
  const [lineId, setLineId] = useState('')
  const [along, setAlong] = useState<number | null>(null)
  const [aside, setAside] = useState<number | null>(0)
  const [fault, setFault] = useState('')
  const line = lines.find(each => each.id === lineId) ?? lines[0]
  if (line === undefined) return null
  const metres = line.geometry.coordinates.map(at => home.toMetres(at))
  const towards = bearing(metres[0]!, metres.at(-1)!)
  const put = () => {
    if (along === null) return
    const at = placeAlong(metres, along, aside ?? 0)
    if (at === null) return setFault(`${titleOf(line)} has no length to count along.`)
    setFault('')
    onTake(home.toLngLat(at))
  }
  return (
    <fieldset className="stack">
      <legend>By a distance along a row</legend>
      <div className="fields">
        <ChoiceField
          label="Row"
          value={line.id}
          choices={lines.map(each => ({ value: each.id, name: titleOf(each) }))}
          onCommit={setLineId}
          note={`${lengthText(lineLength(metres), plan.units)} long`}
        />
        <NumberField
          label="From its start"
          quantity="length"
          value={along}
          limit={far}
          onCommit={setAlong}
          note={`its ${compassWord((towards + 180) % 360)} end`}
        />
        <NumberField
          label={`To its ${compassWord((towards + 90) % 360)} (− other side)`}
          quantity="length"
          value={aside}
          limit={far}
          onCommit={setAside}
        />
      </div>
      {fault === '' ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <div>
        <button type="button" disabled={along === null} onClick={put}>
          {words}
        </button>
      </div>
    </fieldset>
  )
}
