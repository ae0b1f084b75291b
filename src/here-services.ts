import { readPlan } from '#geo/file/read'
import { dateText } from '#geo/time/date-text'
import type { IsoDate } from '#geo/time/day'
import { mapPicture } from './map/map-picture'
import type { Sample, Services } from './panels/services'
import { newId } from './state/new-id'
import {
  openPlanFile,
  saveCalendarFile,
  saveOtherFile,
  savePictureFile,
  savePlanFile,
  saveTableFile,
} from './storage/open-save'
import { imageOf, keepImage } from './storage/pictures'
import * as plans from './storage/plans'
import { reducedImage } from './storage/reduce-image'
import { createImportReader } from './worker/import-reader'
import { makeWorker } from './worker/make-worker'

/** The real disk and device behind the panels. */
export function hereServices(): Services {
  return {
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC',
    listPlans: async () => {
      const kept = await plans.listPlans()
      return kept.map(({ id, name, things, savedAt }) => ({ id, name, things, savedAt: momentText(savedAt) }))
    },
    readKeptPlan: plans.loadPlan,
    deletePlan: plans.deletePlan,
    listRestorePoints: async planId => {
      const points = await plans.listRestorePoints(planId)
      return points.map(({ id, label, at }) => ({ id: String(id), why: label, savedAt: momentText(at) }))
    },
    readRestorePoint: pointId => plans.loadRestorePoint(Number(pointId)),
    keepRestorePoint: plans.addRestorePoint,
    openFile: openPlanFile,
    saveFile: savePlanFile,
    saveTable: saveTableFile,
    saveCalendar: saveCalendarFile,
    saveOther: saveOtherFile,
    saveMapPicture: async name => savePictureFile(name, await mapPicture()),
    takePicture: async file => {
      const { width, height, from, ...image } = await reducedImage(file)
      const id = newId('picture')
      await keepImage(id, image)
      return { id, width, height, from }
    },
    pictureUrl: async picture => {
      const image = await imageOf(picture)
      return image && URL.createObjectURL(new Blob([image.bytes], { type: image.type }))
    },
    importReader: () => createImportReader(makeWorker),
    copyText: text => navigator.clipboard.writeText(text),
    listSamples,
    locate,
    watchPosition,
    today: () => localDate(new Date()),
  }
}

/** "6 April 2026, 14:02", in local time. */
function momentText(milliseconds: number): string {
  const time = new Date(milliseconds)
  return `${dateText(localDate(time))}, ${two(time.getHours())}:${two(time.getMinutes())}`
}

function localDate(time: Date): IsoDate {
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}

// Read only when the first screen asks: they are larger than the program around them.
const sampleFiles = import.meta.glob<string>('../scenarios/*.plan.geojson', { query: '?raw', import: 'default' })

async function listSamples(): Promise<readonly Sample[]> {
  const samples = await Promise.all(
    Object.entries(sampleFiles).map(async ([path, load]): Promise<Sample> => {
      const text = await load()
      const id = path.replace(/^.*\/|\.plan\.geojson$/g, '')
      // Our own files: for the list a look at two members is enough, reading proper comes with opening.
      const { name = id, notes = '' } = JSON.parse(text).plan as { readonly name?: string; readonly notes?: string }
      return { id, name, notes, open: async () => readPlan(text) }
    }),
  )
  return samples.sort((a, b) => (a.name < b.name ? -1 : 1))
}

function locate(): ReturnType<Services['locate']> {
  return new Promise((resolve, reject) => {
    if (!('geolocation' in navigator)) {
      reject(new Error('This device gives no position. Type coordinates instead.'))
      return
    }
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => resolve({ at: [coords.longitude, coords.latitude], accuracy: coords.accuracy }),
      error =>
        reject(new Error(locationFaults[error.code] ?? 'The position could not be found. Type coordinates instead.')),
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 60_000 },
    )
  })
}

function watchPosition(
  onFix: Parameters<Services['watchPosition']>[0],
  onFault: Parameters<Services['watchPosition']>[1],
): () => void {
  if (!('geolocation' in navigator)) {
    // After the caller has what stops the watch.
    const soon = setTimeout(() => onFault('This device gives no position. Type coordinates instead.'))
    return () => clearTimeout(soon)
  }
  const watch = navigator.geolocation.watchPosition(
    ({ coords }) => onFix({ at: [coords.longitude, coords.latitude], accuracy: coords.accuracy }),
    error => onFault(locationFaults[error.code] ?? 'The position could not be found. Type coordinates instead.'),
    { enableHighAccuracy: true, timeout: 30_000, maximumAge: 0 },
  )
  return () => navigator.geolocation.clearWatch(watch)
}

const locationFaults: Readonly<Record<number, string>> = {
  1: 'The browser may not give the position. Allow it there, or type coordinates instead.',
  2: 'The device could not find its position. Try again outdoors, or type coordinates instead.',
  3: 'The device took too long to find its position. Try again, or type coordinates instead.',
}
