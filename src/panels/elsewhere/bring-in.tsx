import { useEffect, useId, useMemo, useState } from 'react'
import type { ImportOptions } from '#geo/file/import'
import { largestImport } from '#geo/file/map-file'
import type { OpenedImport } from '#geo/file/open-import'
import { Dialog } from '../../parts/dialog'
import { homeOf } from '../../text/home'
import { usePlan } from '../hooks'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { ImportChoices } from './bring-choices'
import { Faults } from './bring-faults'
import { ImportTable } from './bring-table'
import './bring-in.css'

type Step =
  | { readonly at: 'choose'; readonly fault: string | null }
  | { readonly at: 'reading'; readonly name: string }
  | { readonly at: 'opened'; readonly name: string; readonly opened: OpenedImport }

/** Things from a file of another program: chosen, looked through, and brought in by one step that Undo takes back. */
export function BringIn({ onClose }: { readonly onClose: () => void }) {
  const plan = usePlan()
  const { importReader } = useServices()
  const reader = useMemo(importReader, [importReader])
  useEffect(() => () => reader.stop(), [reader])
  const [step, setStep] = useState<Step>({ at: 'choose', fault: null })
  const options = useMemo(
    (): ImportOptions => ({ crops: plan.crops, near: plan.features.length === 0 ? null : homeOf(plan) }),
    [plan],
  )
  const again = () => setStep({ at: 'choose', fault: null })
  const read = async (file: File | undefined) => {
    if (file === undefined) return
    if (file.size > largestImport) {
      const most = Math.round(largestImport / 1e6)
      return setStep({ at: 'choose', fault: `${file.name} is larger than ${most} MB. Nothing was read.` })
    }
    setStep({ at: 'reading', name: file.name })
    try {
      const bytes = new Uint8Array(await file.arrayBuffer())
      setStep({ at: 'opened', name: file.name, opened: await reader.open(bytes, options) })
    } catch (error) {
      setStep({ at: 'choose', fault: `${file.name} could not be read: ${reasonOf(error)}` })
    }
  }
  return (
    <Dialog title="Bring in" onClose={onClose}>
      {step.at === 'choose' ? <FileChoice fault={step.fault} onFile={read} /> : null}
      {step.at === 'reading' ? <p role="status">Reading {step.name} …</p> : null}
      {step.at !== 'opened' ? null : step.opened.is === 'table' ? (
        <ImportTable {...step.opened} reader={reader} options={options} onAgain={again} onClose={onClose} />
      ) : step.opened.read.ok ? (
        <ImportChoices
          found={step.opened.read.value}
          problems={step.opened.read.problems}
          of="the file"
          onAgain={again}
          onClose={onClose}
        />
      ) : (
        <Faults problems={step.opened.read.problems} onAgain={again} />
      )}
    </Dialog>
  )
}

type FileChoiceProps = { readonly fault: string | null; readonly onFile: (file: File | undefined) => void }

function FileChoice({ fault, onFile }: FileChoiceProps) {
  const id = useId()
  return (
    <div className="stack">
      <p>
        Points, walked tracks, lines and outlines from GPX, KML, KMZ or GeoJSON; or a table (CSV) of trees or of
        stations, with row and tree numbers or with longitude and latitude. It is read on this device, and nothing is
        changed before you say so.
      </p>
      <div className="field">
        <label htmlFor={id}>Choose a file</label>
        <input
          id={id}
          type="file"
          accept=".gpx,.kml,.kmz,.geojson,.json,.csv,.tsv,.txt"
          onChange={event => onFile(event.target.files?.[0])}
        />
      </div>
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  )
}
