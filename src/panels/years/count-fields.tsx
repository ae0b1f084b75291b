import { Stepper } from '../../parts/stepper'
import { causeName } from './losses'
import { accountText, type CountsDraft } from './opening-draft'

type Props = {
  readonly draft: CountsDraft
  readonly onChange: (draft: CountsDraft) => void
  readonly hasTens: boolean
}

/** Cells, cocoons and losses by cause: of one tube, or of all that were opened. */
export function CountFields({ draft, onChange, hasTens }: Props) {
  const { losses } = draft
  const account = accountText(draft)
  const isOpen = Object.values(losses).some(lost => lost === null)
  return (
    <>
      <Stepper
        label="Cells"
        value={draft.cells}
        hasTens={hasTens}
        onChange={cells => onChange({ ...draft, cells })}
        note="all chambers, full or failed"
      />
      <Stepper
        label="Healthy female cocoons"
        value={draft.females}
        hasTens={hasTens}
        onChange={females => onChange({ ...draft, females })}
        note="larger, at the back"
      />
      <Stepper
        label="Healthy male cocoons"
        value={draft.males}
        hasTens={hasTens}
        onChange={males => onChange({ ...draft, males })}
        note="smaller, near the entrance"
      />
      <fieldset className="loss-fields">
        <legend>Cells lost, by cause</legend>
        {Object.entries(losses).map(([cause, lost]) => (
          <Stepper
            key={cause}
            label={causeName(cause)}
            isCompact
            value={lost}
            onChange={value => onChange({ ...draft, losses: { ...losses, [cause]: value } })}
          />
        ))}
        {isOpen ? (
          <button
            type="button"
            onClick={() =>
              onChange({
                ...draft,
                losses: Object.fromEntries(Object.entries(losses).map(([cause, lost]) => [cause, lost ?? 0])),
              })
            }
          >
            None of the causes left empty
          </button>
        ) : null}
      </fieldset>
      {account === null ? null : <p role="status">{account}</p>}
    </>
  )
}
