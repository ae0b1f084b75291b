import { useEffect, useMemo, useRef, useState } from 'react'
import type { ImportOptions } from '#geo/file/import'
import { largestImport } from '#geo/file/map-file'
import type { OpenedImport } from '#geo/file/open-import'
import { setTool } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { homeOf } from '../../text/home'
import { usePlan } from '../hooks'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { ImportChoices } from './bring-choices'
import { Faults } from './bring-faults'
import { formWords, Recognised } from './bring-form'
import { ImportSource } from './bring-source'
import { ImportTable } from './bring-table'
import { type KeptChoices, nothingKept } from './kept-choices'
import './bring-in.css'

type Step =
  | { readonly at: 'choose'; readonly fault: string | null }
  | { readonly at: 'reading'; readonly name: string }
  | { readonly at: 'opened'; readonly name: string; readonly opened: OpenedImport }

type Props = {
  /** What was pasted, or dropped from the clipboard as a file, when this was asked for. */
  readonly pasted: string | File | null
  readonly onClose: () => void
}

/** Things from a file of another program: looked through beside the map, which shows them, and brought in by one step that Undo takes back. */
export function BringIn({ pasted, onClose }: Props) {
  const store = usePlannerStore()
  const plan = usePlan()
  const { importReader } = useServices()
  const reader = useMemo(importReader, [importReader])
  useEffect(() => () => reader.stop(), [reader])
  const [step, setStep] = useState<Step>({ at: 'choose', fault: null })
  const [kept, setKept] = useState<KeptChoices>(nothingKept)
  const { crops } = plan
  const isBare = plan.features.length === 0
  // Where the plan lies when the file is opened: what is drawn meanwhile moves it by little.
  // biome-ignore lint/correctness/useExhaustiveDependencies: as said above
  const options = useMemo((): ImportOptions => ({ crops, near: isBare ? null : homeOf(plan) }), [crops, isBare])
  // A tool in the hand would draw where the map is only to be moved.
  useEffect(() => setTool(store, 'select'), [store])
  const turn = useRef(0)
  const again = () => {
    turn.current += 1
    setStep({ at: 'choose', fault: null })
  }
  const read = async (name: string, size: number, bytes: () => Promise<Uint8Array>) => {
    turn.current += 1
    const own = turn.current
    if (size > largestImport) {
      const most = Math.round(largestImport / 1e6)
      return setStep({ at: 'choose', fault: `${name} is larger than ${most} MB. Nothing was read.` })
    }
    setStep({ at: 'reading', name })
    setKept(nothingKept)
    try {
      const opened = await reader.open(await bytes(), options)
      if (turn.current === own) setStep({ at: 'opened', name, opened })
    } catch (error) {
      if (turn.current === own) setStep({ at: 'choose', fault: `${name} could not be read: ${reasonOf(error)}` })
    }
  }
  const readFile = (file: File) => read(file.name, file.size, async () => new Uint8Array(await file.arrayBuffer()))
  const readText = (text: string) => read('What was pasted', text.length, async () => new TextEncoder().encode(text))
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each time that something is pasted
  useEffect(() => {
    if (pasted === null) return
    void (typeof pasted === 'string' ? readText(pasted) : readFile(pasted))
  }, [pasted])
  const shared = { reader, kept, onKeep: setKept, onAgain: again, onClose }
  switch (step.at) {
    case 'choose':
      return <ImportSource fault={step.fault} onFile={readFile} onText={readText} />
    case 'reading':
      return <p role="status">Reading {step.name} …</p>
    case 'opened': {
      const { opened, name } = step
      if (opened.is === 'table')
        return <ImportTable {...shared} key={turn.current} opened={opened} name={name} options={options} />
      if (!opened.read.ok) return <Faults problems={opened.read.problems} onAgain={again} />
      return (
        <div className="stack-wide">
          <Recognised name={name} words={formWords(opened.read.value.form)} onAgain={again} />
          <ImportChoices
            reader={reader}
            kept={kept}
            onKeep={setKept}
            onClose={onClose}
            found={opened.read.value}
            problems={opened.read.problems}
            of="the file"
          />
        </div>
      )
    }
    default:
      return step satisfies never
  }
}
