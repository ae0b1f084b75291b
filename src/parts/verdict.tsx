import type { VerdictWord } from '../text/verdict'

/** Full, half or empty disc; a dash where nothing can be said. The word beside it says the same. */
export function Disc({ word }: { readonly word: VerdictWord }) {
  return (
    <svg className="disc" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      {word === 'unknown' ? (
        <path d="M3 8h10" stroke="currentColor" strokeWidth="2" />
      ) : (
        <circle
          cx="8"
          cy="8"
          r="6"
          fill={word === 'yes' ? 'currentColor' : 'none'}
          stroke="currentColor"
          strokeWidth="2"
        />
      )}
      {word === 'partly' ? <path d="M8 2a6 6 0 0 1 0 12z" fill="currentColor" /> : null}
    </svg>
  )
}

const spoken: Readonly<Record<VerdictWord, string>> = {
  yes: 'yes',
  partly: 'partly',
  no: 'no',
  unknown: 'not known',
}

/** A verdict: shape, word and figure, never a colour alone. */
export function Verdict({ word, figure }: { readonly word: VerdictWord; readonly figure: string | null }) {
  return (
    <span className={`verdict verdict-${word}`}>
      <Disc word={word} />
      <span className="verdict-word">{spoken[word]}</span>
      {figure === null ? null : (
        <>
          <span className="unseen">, </span>
          <span className="verdict-figure">{figure}</span>
        </>
      )}
    </span>
  )
}
