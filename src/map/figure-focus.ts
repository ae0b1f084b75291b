/** Names the form of typed figures, for the keys of the map. */
export const figuresClass = 'draw-figures'

/** From the map into the first field of typed figures, with what it holds selected; whether there is one. */
export function focusFigures(): boolean {
  const field = document.querySelector<HTMLInputElement>(`.${figuresClass} input`)
  field?.focus()
  field?.select()
  return field !== null
}

/** Back to the map, where keys draw. */
export function focusMap(): void {
  document.querySelector<HTMLElement>('.map')?.focus()
}
