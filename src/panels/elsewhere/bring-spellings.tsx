import type { Spelling } from '#geo/file/spelling'
import { ChoiceField } from '../../parts/choice-field'

type Props = {
  readonly spellings: readonly Spelling[]
  /** Names chosen, by the spelling they were gathered under. */
  readonly cultivars: Readonly<Record<string, string>>
  readonly onChange: (cultivars: Readonly<Record<string, string>>) => void
}

/** Cultivars that are written in several ways: one name for each. */
export function SpellingChoices({ spellings, cultivars, onChange }: Props) {
  const several = spellings.filter(({ written }) => written.length > 1)
  if (several.length === 0) return null
  const commonest = () => onChange(Object.fromEntries(several.map(({ used, written }) => [used, written[0]!.text])))
  return (
    <section className="bring-group stack" aria-label="Cultivars written in several ways">
      <h3>Cultivars written in several ways</h3>
      <p className="aside-note">Each is brought in under one name.</p>
      <div className="columns">
        {several.map(({ used, written, isTie }) => (
          <ChoiceField
            key={used}
            label={written.map(({ text, count }) => `${text} (${count})`).join(', ')}
            value={Object.hasOwn(cultivars, used) ? cultivars[used]! : used}
            choices={[...new Set([used, ...written.map(({ text }) => text)])].map(name => ({ value: name, name }))}
            onCommit={name => onChange({ ...cultivars, [used]: name })}
            note={isTie && !Object.hasOwn(cultivars, used) ? 'As often one way as another: choose the right one.' : ''}
          />
        ))}
      </div>
      <button type="button" onClick={commonest}>
        Use the commonest spelling of each
      </button>
    </section>
  )
}
