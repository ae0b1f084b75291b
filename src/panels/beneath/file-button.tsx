import { useRef } from 'react'

type FileButtonProps = {
  readonly words: string
  readonly isCamera?: boolean
  readonly onFile: (file: File) => void
}

/** A button that asks the device for an image. */
export function FileButton({ words, isCamera = false, onFile }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {words}
      </button>
      <input
        ref={input}
        hidden
        type="file"
        aria-label={words}
        accept="image/*"
        {...(isCamera ? { capture: 'environment' as const } : {})}
        onChange={event => {
          const file = event.target.files?.[0]
          // The same file may be chosen again.
          event.target.value = ''
          if (file) onFile(file)
        }}
      />
    </>
  )
}
