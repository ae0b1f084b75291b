import { imageFault } from '#geo/plan/pictures'
import type { Picture, Plan } from '#geo/plan/plan'
import { planDatabase } from './database'
import { storageError } from './storage-error'
import type { Writing } from './writing'

/** An image made ready to be laid under the map. */
export type Image = { readonly bytes: ArrayBuffer; readonly type: string }

/** A picture nobody names is left alone for this long: the plan that will name it may not be saved yet; ms. */
const grace = 3_600_000

/** Keeps an image on the device under its picture's id; what lies under an id never changes. */
export async function keepImage(id: string, { bytes, type }: Image): Promise<void> {
  try {
    const database = await planDatabase()
    await database.put('pictures', { id, bytes, type, at: Date.now() })
  } catch (error) {
    throw storageError(error)
  }
}

/** A picture's image: from the plan itself, or else from the device; null where neither has it or it cannot be shown. */
export async function imageOf({ id, image }: Picture): Promise<Image | null> {
  if (image !== undefined) return imageFault(image) === null ? decoded(image) : null
  try {
    return (await (await planDatabase()).get('pictures', id)) ?? null
  } catch (error) {
    throw storageError(error)
  }
}

/**
 * A plan from a file with its images put away on the device, so that every saving and every step of undo stays small.
 * What cannot be put away, or is no image, stays in the plan as it was.
 */
export async function withImagesKept(plan: Plan): Promise<Plan> {
  if (plan.pictures === undefined) return plan
  const pictures = await Promise.all(
    plan.pictures.map(async (picture): Promise<Picture> => {
      const { image, ...rest } = picture
      const found = image === undefined ? null : imageFault(image) === null ? decoded(image) : null
      if (found === null) return picture
      try {
        const here = await imageOf(rest)
        // Another image under the same id stays what other plans know it as: this one stays in its plan.
        if (here !== null && !isSame(here, found)) return picture
        if (here === null) await keepImage(picture.id, found)
      } catch {
        return picture
      }
      return { ...rest, isInFile: true }
    }),
  )
  return { ...plan, pictures }
}

/** A plan as it goes into a file: with the images of the pictures that are to travel with it. `missing` lists those that are not here. */
export async function withImagesInFile(
  plan: Plan,
): Promise<{ readonly plan: Plan; readonly missing: readonly string[] }> {
  const missing: string[] = []
  if (plan.pictures === undefined) return { plan, missing }
  const pictures = await Promise.all(
    plan.pictures.map(async (picture): Promise<Picture> => {
      if (picture.image !== undefined || picture.isInFile !== true) return picture
      const found = await imageOf(picture)
      if (found !== null) return { ...picture, image: encoded(found) }
      missing.push(picture.name || picture.id)
      return picture
    }),
  )
  return { plan: { ...plan, pictures }, missing }
}

/** Takes images off the device that no kept plan, restore point or parting names any more. */
export async function sweepImages(writing: Writing): Promise<void> {
  const rows = writing.objectStore('pictures')
  const plans = await writing.objectStore('plans').getAll()
  const points = await writing.objectStore('restorePoints').getAll()
  const partings = await writing.objectStore('partings').getAll()
  const texts = [...plans, ...points, ...partings.map(({ row }) => row)].map(({ text }) => text)
  let cursor = await rows.openCursor()
  while (cursor !== null) {
    const { id, at } = cursor.value
    const name = JSON.stringify(id)
    if (Date.now() - at > grace && !texts.some(text => text.includes(name))) await cursor.delete()
    cursor = await cursor.continue()
  }
}

function isSame(a: Image, b: Image): boolean {
  const [left, right] = [new Uint8Array(a.bytes), new Uint8Array(b.bytes)]
  return left.length === right.length && left.every((byte, i) => byte === right[i])
}

function decoded(dataUrl: string): Image | null {
  const comma = dataUrl.indexOf(',')
  try {
    const letters = atob(dataUrl.slice(comma + 1))
    const bytes = Uint8Array.from(letters, letter => letter.charCodeAt(0))
    return { bytes: bytes.buffer, type: dataUrl.slice('data:'.length, dataUrl.indexOf(';')) }
  } catch {
    return null
  }
}

function encoded({ bytes, type }: Image): string {
  const all = new Uint8Array(bytes)
  let letters = ''
  // In pieces: a call takes only so many arguments.
  const piece = 0x8000
  for (let from = 0; from < all.length; from += piece)
    letters += String.fromCharCode(...all.subarray(from, from + piece))
  return `data:${type};base64,${btoa(letters)}`
}
