import type { LngLat } from '../space/plane'
import type { Edit } from './edits'
import { patched } from './edits'
import type { Picture, Plan } from './plan'

/** A picture under the map, over those that are there. Its id must be new to the plan. */
export function addPicture(picture: Picture): Edit {
  return {
    label: `Lay picture ${picture.name || picture.id} under the map`,
    apply(plan) {
      const pictures = plan.pictures ?? []
      if (pictures.some(({ id }) => id === picture.id))
        throw new RangeError(`the plan already has a picture ${picture.id}`)
      return { ...plan, pictures: [...pictures, rounded(picture)] }
    },
  }
}

export type PicturePatch = { readonly [K in Exclude<keyof Picture, 'id' | 'corners'>]?: Picture[K] | undefined }

/** New values for members of a picture but its place; `undefined` takes one away. */
export function setPicture(id: string, patch: PicturePatch, key?: string): Edit {
  const names = Object.keys(patch)
  const verb =
    names.length !== 1
      ? 'Change'
      : (({ name: 'Rename', isLocked: patch.isLocked ? 'Lock' : 'Unlock' } as Record<string, string>)[names[0]!] ??
        'Change')
  return {
    label: plan => `${verb} picture ${pictureName(plan, id)}`,
    key,
    apply(plan) {
      const pictures = plan.pictures ?? []
      const before = pictures.find(each => each.id === id)
      if (before === undefined) throw new RangeError(`the plan has no picture ${id}`)
      const after = patched(before, patch)
      if (after === before) return plan
      return { ...plan, pictures: pictures.map(each => (each === before ? rounded(after) : each)) }
    },
  }
}

/** What was done with a picture's place, as undo calls it. */
export type PictureMove = 'Place' | 'Move' | 'Turn' | 'Resize'

/** Another place for a picture. One that is locked stays where it lies, whoever asks. */
export function placePicture(id: string, corners: Picture['corners'], move: PictureMove, key?: string): Edit {
  return {
    label: plan => `${move} picture ${pictureName(plan, id)}`,
    key,
    apply(plan) {
      const pictures = plan.pictures ?? []
      const before = pictures.find(each => each.id === id)
      if (before === undefined) throw new RangeError(`the plan has no picture ${id}`)
      if (before.isLocked) return plan
      return { ...plan, pictures: pictures.map(each => (each === before ? rounded({ ...each, corners }) : each)) }
    },
  }
}

/** Takes a picture off the plan; its last one takes the list along. */
export function removePicture(id: string): Edit {
  return {
    label: plan => `Take picture ${pictureName(plan, id)} away`,
    apply(plan) {
      const left = (plan.pictures ?? []).filter(each => each.id !== id)
      if (left.length === (plan.pictures ?? []).length) return plan
      return patched(plan, { pictures: left.length > 0 ? left : undefined })
    },
  }
}

function pictureName(plan: Plan, id: string): string {
  return plan.pictures?.find(each => each.id === id)?.name || id
}

/** As many decimals as a file keeps, so that a plan is the same after it was saved and read. */
function rounded(picture: Picture): Picture {
  const round = (value: number): number => Number(value.toFixed(9))
  const corners = picture.corners.map(([lng, lat]): LngLat => [round(lng), round(lat)])
  return { ...picture, corners: corners as unknown as Picture['corners'] }
}
