import type { Wording } from './wording'

const untouched = 'Nothing was opened; the file is as it was.'

/** Sentences for what can be wrong with a plan file before its meaning is looked at. */
export const readingWording = {
  'file-too-large': v =>
    `The file holds ${v.megabytes} MB; a plan file may hold ${v.limit} MB at most. ${untouched} Check that it is a plan file, or split the plan.`,
  'file-empty': () => `The file is empty. Choose a file whose name ends in .plan.geojson.`,
  'not-json': v =>
    `The file breaks off from the rules of JSON at line ${v.line}, column ${v.column}. ${untouched} If it was edited by hand, look there for a missing comma, quote or bracket; otherwise the file may be damaged, so use an older copy.`,
  'too-deep': v =>
    `${v.path} holds lists within lists more than ${v.limit} deep, which no plan needs. ${untouched} The file may be damaged; use an older copy.`,
  'forbidden-key': v =>
    `${v.path} uses the name “${v.key}”, which is kept for the program itself. ${untouched} Give it another name in the file.`,
  'number-too-large': v => `${v.path} holds a number too large to count with. ${untouched} Correct it in the file.`,
  'not-a-feature-collection': v =>
    `This is not a plan file: it should be a GeoJSON FeatureCollection, but it is ${v.found}. ${untouched} Choose a file whose name ends in .plan.geojson.`,
  'no-plan': () =>
    `This is a map file without a plan: its member “plan” is missing. ${untouched} A mapping program may have dropped it on saving; open the file that was saved here.`,
  'no-version': v =>
    `The plan does not say which version of the file format it is in (found: ${v.found}). ${untouched} Plan files carry "version": ${v.known}.`,
  'newer-version': v =>
    `The file is in version ${v.version} of the plan format; this program knows versions up to ${v.known}. ${untouched} Open it with a newer version of the program.`,
  'member-missing': v => `${v.path} is missing; it should be ${v.expected}. ${untouched} Add it in the file.`,
  'wrong-type': v => `${v.path} should be ${v.expected}, but is ${v.found}. ${untouched} Correct it in the file.`,
  'wrong-value': v => `${v.path} should be ${v.allowed}, but is ${v.found}. ${untouched} Correct it in the file.`,
  'unknown-bee': v =>
    `${v.path} names a bee that the program has no figures for: ${v.found}. It knows ${v.known}. Correct it in the file or choose another bee.`,
  'too-many-faults': v => `${v.path} holds more faults than can be listed. ${untouched} Use an older copy of the file.`,
  'wrong-geometry': v =>
    `${v.name} is a ${v.kind}, which is drawn as ${v.expected}; the file has ${v.found}. ${untouched} Correct ${v.path} in the file.`,
  'more-problems': v => `${v.count} more problems of this kind were found and are not listed.`,
  'default-used': v =>
    `The file does not name its ${v.member}; ${v.used} is used. Choose another in the plan's settings if it is not right.`,
  'features-kept': v =>
    `${v.count} drawn ${v.count === 1 ? 'thing' : 'things'} of a kind this version does not know (${v.kind}) ${v.count === 1 ? 'is' : 'are'} not shown or counted, but kept in the file.`,
  'feature-unplaced': v =>
    `${v.name} has no place on the map, so it is not shown or counted; it is kept in the file. Draw it anew if it is still wanted.`,
} as const satisfies Record<string, Wording>
