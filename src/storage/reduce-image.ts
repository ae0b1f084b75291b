import type { Image } from './pictures'
import { messageOf, StorageError } from './storage-error'

/** Longer side of a picture under the map, pixels: 5 cm of ground to the pixel over a hundred metres. */
export const longestSide = 2048
/** Larger files would fill the memory of a phone when they are unpacked; bytes. */
const largestFile = 60_000_000
const quality = 0.85

export type ReducedImage = Image & {
  readonly width: number
  readonly height: number
  /** Size of what was chosen, pixels. */
  readonly from: { readonly width: number; readonly height: number }
}

/**
 * An image from a file or camera as a JPEG of at most `longestSide` pixels, upright and on white. It is always written
 * anew, so that what a camera adds (where and when it was taken) stays out of the plan.
 */
export async function reducedImage(file: Blob): Promise<ReducedImage> {
  if (file.size > largestFile) {
    throw new StorageError(`This picture has more than ${largestFile / 1e6} MB. Make it smaller, then choose it again.`)
  }
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch (error) {
    throw new StorageError(
      'This could not be read as a picture. Photographs as JPEG, PNG or WebP can be; save or scan it as one of these.',
      { cause: error },
    )
  }
  const from = { width: bitmap.width, height: bitmap.height }
  const scale = Math.min(1, longestSide / Math.max(from.width, from.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(from.width * scale))
  canvas.height = Math.max(1, Math.round(from.height * scale))
  try {
    const context = canvas.getContext('2d')
    if (context === null) throw new StorageError('This browser gives no room to make the picture smaller.')
    context.fillStyle = '#fff'
    context.fillRect(0, 0, canvas.width, canvas.height)
    context.imageSmoothingQuality = 'high'
    context.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>(resolve => canvas.toBlob(resolve, 'image/jpeg', quality))
    if (blob === null) throw new StorageError('The picture could not be made smaller. Try a smaller one.')
    const bytes = await blob.arrayBuffer()
    return { bytes, type: blob.type, width: canvas.width, height: canvas.height, from }
  } catch (error) {
    if (error instanceof StorageError) throw error
    throw new StorageError(`The picture could not be made smaller (${messageOf(error)}).`, { cause: error })
  } finally {
    bitmap.close()
  }
}
