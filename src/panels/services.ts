import { createContext, use } from 'react'
import type { Task } from '#geo/calendar/task'
import type { Picture, Plan } from '#geo/plan/plan'
import type { Outcome } from '#geo/problem'
import type { Fix } from '#geo/space/standing'
import type { IsoDate } from '#geo/time/day'
import type { ImportReader } from '../worker/import-reader'

/** A plan kept on this device. `savedAt` in local words: "6 April 2026, 14:02". */
export type KeptPlan = { readonly id: string; readonly name: string; readonly savedAt: string; readonly things: number }

/** An earlier state of a plan kept on this device, and why it was kept. */
export type RestorePoint = { readonly id: string; readonly savedAt: string; readonly why: string }

/** A sample that comes with the program. */
export type Sample = {
  readonly id: string
  readonly name: string
  readonly notes: string
  readonly open: () => Promise<Outcome<Plan>>
}

/** A picture on this device. Sizes in pixels: as kept, and as it was chosen. */
export type TakenPicture = {
  readonly id: string
  readonly width: number
  readonly height: number
  readonly from: { readonly width: number; readonly height: number }
}

/** What the panels ask of disk and device. Every call may fail; the reason of the rejection is meant to be read. */
export type Services = {
  listPlans(): Promise<readonly KeptPlan[]>
  readKeptPlan(id: string): Promise<Outcome<Plan>>
  deletePlan(id: string): Promise<void>
  listRestorePoints(planId: string): Promise<readonly RestorePoint[]>
  readRestorePoint(pointId: string): Promise<Outcome<Plan>>
  /** Keeps the plan as it is now, before something large happens to it. */
  keepRestorePoint(planId: string, plan: Plan, why: string): Promise<void>
  /** Asks for a file; null where nobody chose one. */
  openFile(): Promise<Outcome<Plan> | null>
  /** Saves as a file; the words that say what was saved where, or null where it was called off. */
  saveFile(plan: Plan): Promise<string | null>
  /** The same for a table in CSV; `name` without ending. */
  saveTable(name: string, text: string): Promise<string | null>
  /** The same for text that other programs read; `name` without ending. */
  saveOther(name: string, format: 'gpx' | 'kml' | 'geojson', text: string): Promise<string | null>
  /** The same for a picture of the map as it is in sight, in PNG. */
  saveMapPicture(name: string): Promise<string | null>
  /** The same for the work of a season, as a calendar file. */
  saveCalendar(plan: Plan, year: number, tasks: readonly Task[]): Promise<string | null>
  /** Makes an image ready to be laid under the map, and keeps it on the device under a new id. */
  takePicture(file: Blob): Promise<TakenPicture>
  /** An address of the image for as long as the page lives; null where it is not here. */
  pictureUrl(picture: Picture): Promise<string | null>
  /** Reads files of other programs away from the page; to be stopped when it is no longer wanted. */
  importReader(): ImportReader
  copyText(text: string): Promise<void>
  listSamples(): Promise<readonly Sample[]>
  /** Position of the device and its accuracy in metres. */
  locate(): Promise<{ readonly at: readonly [lng: number, lat: number]; readonly accuracy: number }>
  /** Readings of the device's position until the answer (a function) is called; why there are none, in words. */
  watchPosition(onFix: (fix: Fix) => void, onFault: (reason: string) => void): () => void
  /** The device's calendar date. */
  today(): IsoDate
  /** IANA name of the device's time zone. */
  readonly timeZone: string
}

const ServicesContext = createContext<Services | null>(null)

export const ServicesProvider = ServicesContext.Provider

export function useServices(): Services {
  const services = use(ServicesContext)
  if (services === null) throw new TypeError('useServices needs a ServicesProvider above it')
  return services
}
