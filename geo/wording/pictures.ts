import type { Wording } from './wording'

/** Sentences about what lies under the map. */
export const pictureWording = {
  'picture-repeated': v => `${v.name} has the id of another picture; only the first of them is shown.`,
  'picture-unplaced': v =>
    `${v.name} is not shown: its corners leave it no area, turn it over or lie off the map. Place it again on the page Ground.`,
  'picture-not-shown': v =>
    v.fault === 'size'
      ? `${v.name} is kept but not shown: it is larger than ${v.megabytes} million characters. Choose it again, and it is made smaller.`
      : `${v.name} is kept but not shown: the file should hold it as JPEG, PNG or WebP written out, and addresses are never fetched.`,
  'tiles-address': v =>
    v.missing === ''
      ? 'The plan’s address of map pictures leads nowhere: it should begin with https://.'
      : `The plan’s address of map pictures leads nowhere: it lacks ${v.missing}.`,
} as const satisfies Record<string, Wording>
