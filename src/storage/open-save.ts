import type { Task } from '#geo/calendar/task'
import { calendarFile } from '#geo/file/calendar'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import type { Outcome, Problem } from '#geo/problem'
import { withImagesInFile, withImagesKept } from './pictures'
import { messageOf, StorageError } from './storage-error'

/** Bytes; a plan file is far smaller, and the reader takes no more characters than this. */
const largestFile = 50_000_000
/** Bytes, a thousand rows: reading more takes longer than what comes before and after it should be held up. */
const smallFile = 300_000

type FileTypes = readonly [
  { readonly description: string; readonly accept: Readonly<Record<string, readonly string[]>> },
]

const fileTypes: FileTypes = [{ description: 'Plan', accept: { 'application/geo+json': ['.geojson', '.json'] } }]
const tableTypes: FileTypes = [{ description: 'Table', accept: { 'text/csv': ['.csv'] } }]
const calendarTypes: FileTypes = [{ description: 'Calendar', accept: { 'text/calendar': ['.ics'] } }]

const pictureTypes: FileTypes = [{ description: 'Picture', accept: { 'image/png': ['.png'] } }]

/** What other programs read, by the ending of its name. */
const otherTypes = {
  gpx: [{ description: 'GPX', accept: { 'application/gpx+xml': ['.gpx'] } }],
  kml: [{ description: 'KML', accept: { 'application/vnd.google-earth.kml+xml': ['.kml'] } }],
  geojson: [{ description: 'GeoJSON', accept: { 'application/geo+json': ['.geojson'] } }],
} as const satisfies Readonly<Record<string, FileTypes>>

type OtherFormat = keyof typeof otherTypes

type SaveFilePicker = (options: {
  readonly suggestedName: string
  readonly types: FileTypes
}) => Promise<FileSystemFileHandle>

/** Asks for a plan file and reads it; null where nobody chose one. */
export async function openPlanFile(): Promise<Outcome<Plan> | null> {
  const file = await chosenFile()
  return file && readPlanFile(file)
}

/** Reads a plan file. Its size is looked at before anything is read. */
export async function readPlanFile(file: File): Promise<Outcome<Plan>> {
  if (file.size > largestFile) {
    const values = { megabytes: Math.ceil(file.size / 1e6), limit: largestFile / 1e6 }
    const problem: Problem = { code: 'file-too-large', severity: 'error', at: '', values }
    return { ok: false, problems: [problem] }
  }
  let text: string
  try {
    text = await file.text()
  } catch (error) {
    const message = `${file.name} could not be read; it may have been moved, or is not open to the browser. Nothing was opened.`
    throw new StorageError(message, { cause: error })
  }
  const isLarge = file.size > smallFile
  if (isLarge) await breath()
  const outcome = readPlan(text)
  if (isLarge) await breath()
  return outcome.ok ? { ...outcome, value: await withImagesKept(outcome.value) } : outcome
}

/** Lets the page do what waits: show that a button was pressed, paint, take the next press. */
function breath(): Promise<void> {
  return new Promise(resolve => setTimeout(resolve))
}

/**
 * Saves a plan as a file where the person chooses, or as a download where the browser lets nobody choose.
 * Resolves to words that say what was saved where; null where it was called off.
 */
export async function savePlanFile(plan: Plan): Promise<string | null> {
  const { plan: whole, missing } = await withImagesInFile(plan)
  const words = await saveText(planFileName(plan), writePlan(whole), fileTypes)
  if (words === null || missing.length === 0) return words
  return `${words} Without ${missing.join(', ')}: this device does not have the picture.`
}

/** The same for a table, under a name of its own. */
export async function saveTableFile(name: string, text: string): Promise<string | null> {
  return saveText(`${fileStem(name)}.csv`, text, tableTypes)
}

/** The work of a season as a calendar file, `<name> <year>.ics`. */
export async function saveCalendarFile(plan: Plan, year: number, tasks: readonly Task[]): Promise<string | null> {
  const text = calendarFile(plan, tasks, new Date().toISOString())
  return saveText(`${fileStem(plan.name)} ${year}.ics`, text, calendarTypes)
}

/** Text for other programs; `name` without ending. */
export async function saveOtherFile(name: string, format: OtherFormat, text: string): Promise<string | null> {
  return saveText(`${fileStem(name)}.${format}`, text, otherTypes[format])
}

/** A picture in PNG; `name` without ending. */
export async function savePictureFile(name: string, picture: Blob): Promise<string | null> {
  return saveText(`${fileStem(name)}.png`, picture, pictureTypes)
}

async function saveText(name: string, text: string | Blob, types: FileTypes): Promise<string | null> {
  const picker = (window as { showSaveFilePicker?: SaveFilePicker }).showSaveFilePicker
  if (picker === undefined) {
    download(name, text, Object.keys(types[0].accept)[0] ?? 'text/plain')
    return `${name} was handed to the browser as a download.`
  }
  try {
    const handle = await picker.call(window, { suggestedName: name, types })
    const stream = await handle.createWritable()
    await stream.write(text)
    await stream.close()
    return `Saved as ${handle.name}.`
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null
    throw new StorageError(`The file was not saved: ${messageOf(error)}. The plan is still open; try another folder.`, {
      cause: error,
    })
  }
}

/** `<name>.plan.geojson`, without what file systems do not take. */
export function planFileName(plan: Plan): string {
  return `${fileStem(plan.name)}.plan.geojson`
}

function fileStem(title: string): string {
  const name = title
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
    .replace(/[\u0000-\u001f\u007f<>:"/\\|?*]+/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80)
    .trimEnd()
  return name || 'plan'
}

function chosenFile(): Promise<File | null> {
  return new Promise(resolve => {
    const input = document.createElement('input')
    input.type = 'file'
    input.accept = '.geojson,.json,application/geo+json,application/json'
    input.hidden = true
    const answer = (file: File | null): void => {
      input.remove()
      resolve(file)
    }
    input.addEventListener('change', () => answer(input.files?.[0] ?? null))
    input.addEventListener('cancel', () => answer(null))
    // In the page, so that it lives until it is answered.
    document.body.append(input)
    input.click()
  })
}

function download(name: string, text: string | Blob, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The browser reads the address only after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}
