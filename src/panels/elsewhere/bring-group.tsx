import { type ImportChoice, needsCrop } from '#geo/file/import-things'
import type { ShownGroup } from '#geo/file/open-import'
import type { FeatureKind, Plan } from '#geo/plan/plan'
import { listed } from '#geo/wording/plain'
import { ChoiceField } from '../../parts/choice-field'
import { cropChoices } from '../../parts/crop-field'
import { kindNames } from '../../text/names'
import { lengthText } from '../../text/units'
import { counted } from '../../text/words'
import { usePlan } from '../hooks'
import { cropOf, lacksCrop } from './kept-choices'

const shapes = {
  point: ['point', 'points'],
  points: ['set of points', 'sets of points'],
  line: ['line', 'lines'],
  ring: ['outline', 'outlines'],
} as const

type Props = {
  readonly group: ShownGroup
  readonly choice: ImportChoice | null
  readonly onChange: (choice: ImportChoice | null) => void
}

/** What things that are alike are brought in as, or that they stay out. */
export function GroupChoice({ group, choice, onChange }: Props) {
  const plan = usePlan()
  const [one, many] = shapes[group.shape]
  const isBare = group.label === '' && group.name === ''
  const bare = needsCrop(group.kind) && group.crop === null ? 'no crop given' : ''
  const said = isBare ? bare : [group.label, group.name].filter(text => text !== '').join(', ')
  const title = `${counted(group.count, one, many)}${said === '' ? '' : `: ${said}`}`
  const setKind = (kind: FeatureKind | 'out') => {
    if (kind === 'out') return onChange(null)
    const isKept = choice?.walked !== undefined && (choice.walked !== 'rows' || isLine(kind))
    const walked = isKept ? { walked: choice.walked } : {}
    const inRows = kind === 'plant' && choice?.inRows ? { inRows: true as const } : {}
    onChange({ kind, ...(needsCrop(kind) ? { crop: choice?.crop ?? cropOf(group) } : {}), ...walked, ...inRows })
  }
  return (
    <section className="bring-group" aria-label={title} data-lacks-crop={lacksCrop(choice)}>
      <h3>{title}</h3>
      <div className="columns">
        <ChoiceField<FeatureKind | 'out'>
          label="Bring in as"
          value={choice?.kind ?? 'out'}
          choices={[
            ...group.kinds.map(kind => ({ value: kind, name: kindNames[kind].one })),
            { value: 'out', name: 'leave out' },
          ]}
          onCommit={setKind}
        />
        {choice !== null && needsCrop(choice.kind) ? (
          <ChoiceField
            label="Crop"
            value={choice.crop ?? ''}
            choices={[...(choice.crop ? [] : [{ value: '', name: 'choose a crop' }]), ...cropChoices(plan)]}
            onCommit={crop => onChange({ ...choice, crop })}
            note={guessWords(group, choice.crop)}
          />
        ) : null}
        {choice?.kind === 'plant' && group.rowFit !== null ? (
          <ChoiceField
            label="Trees in rows"
            value={choice.inRows ? 'rows' : 'single'}
            choices={[
              { value: 'rows', name: `as ${counted(group.rowFit.rows, 'row')}` },
              { value: 'single', name: 'each by itself' },
            ]}
            onCommit={way => {
              const { inRows: _, ...others } = choice
              onChange(way === 'rows' ? { ...others, inRows: true } : others)
            }}
            note={fitWords(group.rowFit, plan.units)}
          />
        ) : null}
        {choice !== null && group.lines !== null ? (
          <ChoiceField
            label={group.lines === 'walked' ? 'As it was walked' : 'As it was drawn'}
            value={choice.walked ?? 'as-walked'}
            choices={[
              { value: 'as-walked', name: 'every point kept' },
              { value: 'cleaned', name: 'pauses and stray points taken out' },
              ...(isLine(choice.kind) ? [{ value: 'rows' as const, name: 'also cut into straight rows' }] : []),
            ]}
            onCommit={walked => onChange({ ...choice, walked })}
            note={cutWords(group.cut, choice.walked ?? 'as-walked')}
          />
        ) : null}
      </div>
    </section>
  )
}

/** What was found on the way and is taken out of it, or stays. */
function cutWords({ pauses, strays }: ShownGroup['cut'], walked: NonNullable<ImportChoice['walked']>): string {
  const found = [pauses > 0 ? counted(pauses, 'pause') : '', strays > 0 ? counted(strays, 'stray point') : ''].filter(
    Boolean,
  )
  if (found.length === 0) return 'No pauses and no stray points were found.'
  return `${listed(found)} ${walked === 'as-walked' ? 'left in' : 'taken out'}.`
}

/** That a crop was guessed from what was written. */
function guessWords({ likely }: ShownGroup, crop: string | undefined): string | undefined {
  return likely === null || crop !== likely.crop ? undefined : `Likely, from “${likely.from}”: see that it is right.`
}

/** How well trees stand in rows, so that nobody has to take it on trust. */
function fitWords({ rows, trees, others, worst }: NonNullable<ShownGroup['rowFit']>, units: Plan['units']): string {
  const left = others === 0 ? '' : ` ${counted(others, 'tree')} stand in no even row and stay single.`
  return `${counted(trees, 'tree')} stand in ${counted(rows, 'row')} at even spacing, none more than ${lengthText(Math.max(0.1, Math.ceil(10 * worst) / 10), units)} off.${left}`
}

function isLine(kind: FeatureKind): boolean {
  return kind === 'row' || kind === 'windbreak'
}
