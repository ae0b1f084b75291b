import type { Wording } from './wording'

const nothing = 'Nothing of it was read.'

/** Sentences for files of other programs that are being read; `item` and `row` count from 1 as the file has them. */
export const importingWording = {
  'text-encoding': v =>
    `The file does not say how its letters are written; it was read as ${v.encoding}. Check that accents came through.`,
  'text-broken': v =>
    `${v.count === 1 ? '1 letter' : `${v.count} letters`} could not be read as ${v.encoding}, though the rest could. Each is shown as \uFFFD; the file may be damaged.`,
  'text-binary': () => `This is not a text file. ${nothing} Check that the right file was chosen.`,
  'import-too-large': v => `The file holds ${v.megabytes} MB; ${v.limit} MB can be read at most. ${nothing}`,
  'import-too-many': v =>
    `The file holds more than ${v.most} ${v.what}. ${nothing} Split it, or leave out what is not needed.`,
  'import-unknown': () =>
    `This is no GPX, KML, KMZ or GeoJSON file. ${nothing} Tables of trees and stations are brought in as CSV.`,
  'import-not-xml': v =>
    `The file breaks off from the rules of XML at line ${v.line}. ${nothing} It may be damaged or cut short.`,
  'import-doctype': v =>
    `Line ${v.line} holds a document type, which can make a short file endless. ${nothing} Map files need none; have the other program write it again.`,
  'import-too-deep': v => `Elements stand within elements more than ${v.limit} deep at line ${v.line}. ${nothing}`,
  'import-wrong-root': v => `The file should begin with ${v.expected}, but begins with “${v.found}”. ${nothing}`,
  'import-zip-broken': () => `The file should be a zip archive, but cannot be unpacked. ${nothing} It may be damaged.`,
  'import-zip-large': v => `Unpacked, the file holds more than ${v.limit} MB. ${nothing}`,
  'import-zip-no-kml': () => `The archive holds no KML file. ${nothing}`,
  'import-crs': v =>
    `The positions of the file are in “${v.found}”, not in degrees of longitude and latitude. ${nothing} Save it in WGS 84.`,
  'import-empty': () => `Nothing that could be drawn was found in the file.`,
  'import-position': v => `${v.name}: ${v.found} is no longitude and latitude in degrees. It is left out.`,
  'import-swapped': v =>
    `${v.name}: ${v.found} would lie on earth if longitude and latitude were exchanged. It is left out; mend the order in the other program.`,
  'import-far-swapped': v =>
    `${v.name} lies ${v.kilometres} km from the plan, but within it if longitude and latitude were exchanged. Check where it is shown before it is brought in.`,
  'import-points-left': v =>
    `${v.name}: ${v.count === 1 ? '1 point' : `${v.count} points`} without a place on earth ${v.count === 1 ? 'is' : 'are'} left out, such as ${v.found}.`,
  'import-no-shape': v =>
    `${v.name} is left out: ${v.isRing ? 'an outline needs three corners and an area' : 'a line needs two different points'}.`,
  'import-link': v =>
    `The file points to another, “${v.found}”. What is not in the same archive is never fetched, so what that one holds is left out.`,
  'import-unplaced': v => `${v.name} has no point, line or outline, so it is left out.`,
  'import-property': v =>
    `${v.name}: its ${v.property} “${v.found}” is left out${v.allowed ? `; it should be ${v.allowed}` : ''}.`,
  'import-crop-unknown': v =>
    `“${v.found}” is no crop that the plan knows (${v.count === 1 ? 'once' : `${v.count} times`}). Choose a crop for it.`,
  'import-cultivar-spellings': v => `${v.written} are taken for one cultivar and brought in as “${v.used}”.`,
  'import-table-empty': () => `The table holds no line that could be read.`,
  'import-table-no-places': v =>
    `No columns were found that say where ${v.what} stand: ${v.wanted}. Choose them by hand.`,
  'import-row-number': v =>
    `Row ${v.row}: the ${v.label} “${v.found}” is no number${v.isLeftOut ? '. The row is left out' : '; it is left out'}.`,
  'import-row-blank': v => `Row ${v.row} does not say its ${v.label}, so it is left out.`,
  'import-row-position': v =>
    `Row ${v.row}: ${v.found} is no place on earth${v.isSwapped ? ', unless longitude and latitude are exchanged' : ''}. The row is left out.`,
  'import-row-shape': v =>
    `Row ${v.row}: its geometry is no well-known text of a kind that can stand here (WKT, as POINT (-1.7 52.2)). The row is left out.`,
  'import-row-repeated': v =>
    `Row ${v.row}: row ${v.line}, tree ${v.tree} is there already. The first is kept, this one is left out.`,
  'import-row-figure': v => `Row ${v.row}: the ${v.label} “${v.found}” should be ${v.allowed}; it is left out.`,
} as const satisfies Record<string, Wording>
