import { type Sample, useServices } from '../services'
import { useLoaded } from '../use-loaded'

/** Samples that come with the program; nothing where there are none. */
export function SampleList({ onOpen }: { readonly onOpen: (sample: Sample) => void }) {
  const { listSamples } = useServices()
  const [samples] = useLoaded(listSamples)
  if (samples.status === 'failed') return <p className="field-fault">The samples cannot be read: {samples.reason}</p>
  if (samples.status === 'loading' || samples.value.length === 0) return null
  return (
    <section className="stack" aria-labelledby="samples">
      <h2 id="samples">Look at a sample</h2>
      <p className="aside-note">
        Invented places with invented figures, to try things out on. Your changes are kept apart.
      </p>
      <ul className="plain-list">
        {samples.value.map(sample => (
          <li key={sample.id}>
            <button type="button" className="quiet kept-plan-open" onClick={() => onOpen(sample)}>
              <span className="kept-plan-name">{sample.name}</span>{' '}
              {sample.notes ? <span className="aside-note">{sample.notes}</span> : null}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
