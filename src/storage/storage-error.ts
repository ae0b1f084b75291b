/** A failure of disk or device; the message is a sentence for the person. */
export class StorageError extends Error {
  override readonly name = 'StorageError'
}

/** What a failure of the browser's storage means, in words. */
export function storageError(error: unknown): StorageError {
  if (error instanceof StorageError) return error
  return new StorageError(sentence(error), { cause: error })
}

/** The message of whatever was thrown; browsers differ on whether their own exceptions are errors. */
export function messageOf(error: unknown): string {
  return error instanceof Error || error instanceof DOMException ? error.message : String(error)
}

function sentence(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  switch (name) {
    case 'QuotaExceededError':
      return 'There is no room left on this device. Save the plan as a file, or delete kept plans that are no longer needed.'
    case 'SecurityError':
    case 'InvalidStateError':
    case 'UnknownError':
      return 'This browser keeps no data here; a private window or its settings may forbid it. Save the plan as a file.'
    default:
      return `The browser could not reach what it keeps on this device (${messageOf(error)}). Save the plan as a file.`
  }
}
