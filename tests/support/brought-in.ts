import type { Import, ImportOptions } from '#geo/file/import'
import { importEdit } from '#geo/file/import-edit'
import { importThings } from '#geo/file/import-things'
import { readMapFile } from '#geo/file/map-file'
import { packedThings, unpackedThings } from '#geo/file/packed-things'
import { tidyName } from '#geo/file/spelling'
import type { Feature } from '#geo/plan/plan'
import type { Outcome, Problem } from '#geo/problem'
import { woundRight } from '#geo/space/ring'
import { smallPlan } from './builders'

/** What comes in of a file where every suggested kind and crop is taken, and what was told. */
export function broughtIn(bytes: Uint8Array, options: ImportOptions = {}): BroughtIn {
  return broughtInFrom(readMapFile(bytes, options))
}

type BroughtIn = { readonly features: readonly Feature[]; readonly problems: readonly Problem[] }

/** The same of what any reader found. */
export function broughtInFrom(outcome: Outcome<Import>): BroughtIn {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  const { groups, spellings } = outcome.value
  const choices = Object.fromEntries(
    groups.map(({ key, kind, crop }) => [key, { kind, ...(crop === null ? {} : { crop }) }]),
  )
  // Spellings are gathered on purpose; here each stays as it was.
  const asWritten = {
    ...outcome.value,
    spellings: spellings.flatMap(({ written: texts }) =>
      texts.map(one => ({ used: one.text, written: [one], isTie: false })),
    ),
  }
  let last = 0
  const newId = () => {
    last += 1
    return `new-${last}`
  }
  const edit = importEdit(unpackedThings(packedThings(importThings(asWritten, choices))), newId)
  return { features: edit.apply(smallPlan({ features: [] })).features, problems: outcome.problems }
}

/** What must be the same again: ids are new, names are on one line, texts that say nothing are not there. */
export function essence(features: readonly Pick<Feature, 'geometry' | 'properties'>[]): readonly string[] {
  return features
    .map(({ geometry, properties }) => {
      const said = Object.entries(properties)
        .map(([key, value]) => [key, typeof value === 'string' ? tidyName(value) : value] as const)
        .filter(([, value]) => value !== '')
        .sort(([a], [b]) => (a < b ? -1 : 1))
      const { type, coordinates } = geometry
      return JSON.stringify([type, type === 'Polygon' ? woundRight(coordinates) : coordinates, said])
    })
    .sort()
}
