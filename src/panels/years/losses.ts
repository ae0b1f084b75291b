/** Causes of lost cells that have a line of their own; others that a file names are kept and shown by their own word. */
export const lossCauses = ['mite', 'fly', 'wasp', 'mould', 'chalk', 'dead', 'other'] as const

const names: Readonly<Record<string, string>> = {
  mite: 'Pollen mites',
  fly: 'Nest-robber flies',
  wasp: 'Parasitic wasps',
  mould: 'Mould',
  chalk: 'Chalk disease',
  dead: 'Dead, cause not seen',
  other: 'Other losses',
}

export function causeName(cause: string): string {
  return Object.hasOwn(names, cause) ? names[cause]! : cause
}
