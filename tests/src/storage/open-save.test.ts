import { afterEach, describe, expect, it, onTestFinished, vi } from 'vitest'
import { seasonTasks } from '#geo/calendar/tasks'
import { writePlan } from '#geo/file/write'
import {
  openPlanFile,
  planFileName,
  readPlanFile,
  saveCalendarFile,
  savePlanFile,
} from '../../../src/storage/open-save'
import { smallPlan } from '../../support/builders'
import { calendarFaults } from '../../support/calendar-linter'

const plan = smallPlan()

afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
  document.body.replaceChildren()
})

describe('reading a file', () => {
  it('gives the plan', async () => {
    expect(await readPlanFile(new File([writePlan(plan)], 'x.plan.geojson'))).toMatchObject({ ok: true, value: plan })
  })

  it('lets the page take its turn before and after a large one is read', async () => {
    const large = { ...plan, notes: 'x'.repeat(400_000) }
    vi.useFakeTimers({ toFake: ['setTimeout'] })
    onTestFinished(() => void vi.useRealTimers())
    const file = new File(['{}'], 'large.plan.geojson')
    Object.defineProperty(file, 'size', { value: 400_000 })
    vi.spyOn(file, 'text').mockResolvedValue(writePlan(large))
    const told = vi.fn()
    const reading = readPlanFile(file).then(told)
    for (const turn of ['before', 'after']) {
      for (let i = 0; i < 10; i += 1) await Promise.resolve()
      expect(vi.getTimerCount(), turn).toBe(1)
      expect(told).not.toHaveBeenCalled()
      vi.advanceTimersToNextTimer()
    }
    await reading
    expect(told).toHaveBeenCalledWith(expect.objectContaining({ ok: true, value: large }))
  })

  it('looks at the size before it reads', async () => {
    const file = new File(['{}'], 'huge.plan.geojson')
    Object.defineProperty(file, 'size', { value: 50_000_001 })
    const text = vi.spyOn(file, 'text')
    const outcome = await readPlanFile(file)
    expect(outcome).toMatchObject({
      ok: false,
      problems: [{ code: 'file-too-large', values: { megabytes: 51, limit: 50 } }],
    })
    expect(text).not.toHaveBeenCalled()
  })

  it('says in words that the browser could not read it', async () => {
    const file = new File(['{}'], 'gone.plan.geojson')
    vi.spyOn(file, 'text').mockRejectedValue(new DOMException('gone', 'NotFoundError'))
    await expect(readPlanFile(file)).rejects.toThrow(/^gone\.plan\.geojson could not be read.*Nothing was opened\.$/)
  })
})

describe('choosing a file', () => {
  function choose(act: (input: HTMLInputElement) => void) {
    vi.spyOn(HTMLInputElement.prototype, 'click').mockImplementation(function (this: HTMLInputElement) {
      act(this)
    })
  }

  it('opens what was chosen, and leaves nothing in the page', async () => {
    choose(input => {
      const files = [new File([writePlan(plan)], 'x.plan.geojson')]
      Object.defineProperty(input, 'files', { value: files })
      input.dispatchEvent(new Event('change'))
    })
    expect(await openPlanFile()).toMatchObject({ ok: true, value: plan })
    expect(document.querySelector('input')).toBeNull()
  })

  it('opens nothing where nothing was chosen', async () => {
    choose(input => input.dispatchEvent(new Event('cancel')))
    expect(await openPlanFile()).toBeNull()
  })
})

describe('saving a file', () => {
  function pickerThat(answer: () => Promise<unknown>) {
    const picker = vi.fn(answer)
    vi.stubGlobal('showSaveFilePicker', picker)
    return picker
  }

  it('writes where the person chose', async () => {
    const written: string[] = []
    const stream = {
      write: async (text: string) => void written.push(text),
      close: async () => void written.push('closed'),
    }
    const picker = pickerThat(async () => ({ name: 'mine.plan.geojson', createWritable: async () => stream }))
    expect(await savePlanFile(plan)).toBe('Saved as mine.plan.geojson.')
    expect(picker).toHaveBeenCalledWith(expect.objectContaining({ suggestedName: 'Small orchard.plan.geojson' }))
    expect(written).toEqual([writePlan(plan), 'closed'])
  })

  it('writes the work of a season as a calendar, stamped with the moment', async () => {
    vi.useFakeTimers({ now: Date.parse('2026-03-01T12:30:45Z') })
    onTestFinished(() => void vi.useRealTimers())
    const written: string[] = []
    const stream = { write: async (text: string) => void written.push(text), close: async () => {} }
    const picker = pickerThat(async () => ({ name: 'work.ics', createWritable: async () => stream }))
    const tasks = seasonTasks(plan, 2026)
    expect(await saveCalendarFile(plan, 2026, tasks.ok ? tasks.value : [])).toBe('Saved as work.ics.')
    expect(picker).toHaveBeenCalledWith(expect.objectContaining({ suggestedName: 'Small orchard 2026.ics' }))
    expect(calendarFaults(written[0]!)).toEqual([])
    expect(written[0]).toContain('DTSTAMP:20260301T123045Z')
  })

  it('says nothing when it is called off, and why when it fails', async () => {
    pickerThat(() => Promise.reject(new DOMException('called off', 'AbortError')))
    expect(await savePlanFile(plan)).toBeNull()
    pickerThat(() => Promise.reject(new DOMException('the disk is read only', 'NoModificationAllowedError')))
    await expect(savePlanFile(plan)).rejects.toThrow('The file was not saved: the disk is read only.')
  })

  it('hands a download to browsers that let nobody choose', async () => {
    const blobs: Blob[] = []
    const links: string[] = []
    vi.stubGlobal('URL', Object.assign(URL, { createObjectURL: (blob: Blob) => `blob:${blobs.push(blob)}` }))
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      links.push(`${this.download} ${this.href}`)
    })
    expect(await savePlanFile(plan)).toBe('Small orchard.plan.geojson was handed to the browser as a download.')
    expect(links).toEqual(['Small orchard.plan.geojson blob:1'])
    expect(await blobs[0]!.text()).toBe(writePlan(plan))
  })

  it.each([
    ['Lower Field', 'Lower Field.plan.geojson'],
    ['', 'plan.plan.geojson'],
    ['  a/b:c*?"<d>|e\\f\n g. ', 'a b c d e f g.plan.geojson'],
    ['../../etc', 'etc.plan.geojson'],
    ['Čá 果樹園', 'Čá 果樹園.plan.geojson'],
    ['x'.repeat(300), `${'x'.repeat(80)}.plan.geojson`],
  ])('names the file after the plan: %j', (name, expected) => {
    expect(planFileName({ ...plan, name })).toBe(expected)
  })
})
