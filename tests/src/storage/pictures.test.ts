import { expect, it, vi } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import type { Picture, Plan } from '#geo/plan/plan'
import { readPlanFile } from '../../../src/storage/open-save'
import { imageOf, keepImage, withImagesInFile, withImagesKept } from '../../../src/storage/pictures'
import { deletePlan, savePlan } from '../../../src/storage/plans'
import { sampleFile } from '../../geo/file/sample-file'
import { freshDevice, setDatabaseFactory } from './device'

freshDevice()

const bytes = Uint8Array.from({ length: 70_000 }, (_, i) => (i * 31) % 256)
const image = { bytes: bytes.buffer, type: 'image/jpeg' }
const picture: Picture = {
  id: 'picture-1',
  name: 'Sketch',
  width: 20,
  height: 10,
  corners: [
    [0.16, 52.591],
    [0.161, 52.591],
    [0.16, 52.5905],
  ],
}

function planWith(pictures: readonly Picture[]): Plan {
  const outcome = readPlan(JSON.stringify(sampleFile()))
  if (!outcome.ok) throw new TypeError('the sample does not open')
  return { ...outcome.value, pictures }
}

const row = (id: string, plan: Plan) => ({ id, name: plan.name, text: writePlan(plan), things: 1, savedAt: Date.now() })

it('an image goes into the file where it is wished, and comes out of it onto another device', async () => {
  await keepImage('picture-1', image)
  const plan = planWith([
    { ...picture, isInFile: true },
    { ...picture, id: 'picture-2' },
  ])
  const { plan: whole, missing } = await withImagesInFile(plan)
  expect(missing).toEqual([])
  expect(whole.pictures![0]!.image).toMatch(/^data:image\/jpeg;base64,/)
  expect(whole.pictures![1]).toEqual(plan.pictures![1])
  // Another device: an empty one.
  setDatabaseFactory(new IDBFactory())
  const read = await readPlanFile(new File([writePlan(whole)], 'a.plan.geojson'))
  if (!read.ok) throw new TypeError('not opened')
  expect(read.value.pictures).toEqual(plan.pictures)
  const kept = await imageOf(read.value.pictures![0]!)
  expect(new Uint8Array(kept!.bytes)).toEqual(bytes)
  expect(kept!.type).toBe('image/jpeg')
  expect(await imageOf(read.value.pictures![1]!)).toBeNull()
})

it('what is to travel but is not here is named, and the file is saved without it', async () => {
  const { plan, missing } = await withImagesInFile(planWith([{ ...picture, isInFile: true }]))
  expect(missing).toEqual(['Sketch'])
  expect(plan.pictures).toEqual([{ ...picture, isInFile: true }])
})

it('another image under the same id stays in its own plan, and does not change what others show', async () => {
  await keepImage('picture-1', image)
  const other = { ...picture, image: `data:image/png;base64,${btoa('other')}` }
  const plan = await withImagesKept(planWith([other]))
  expect(plan.pictures).toEqual([other])
  expect((await imageOf(picture))!.type).toBe('image/jpeg')
  expect((await imageOf(other))!.type).toBe('image/png')
})

it('where the device keeps nothing, or it is no image, it stays in the plan', async () => {
  const address = { ...picture, image: 'https://example.org/a.png' }
  expect((await withImagesKept(planWith([address]))).pictures).toEqual([address])
  expect(await imageOf(address)).toBeNull()
  setDatabaseFactory(undefined)
  const within = { ...picture, image: `data:image/png;base64,${btoa('bytes')}` }
  expect((await withImagesKept(planWith([within]))).pictures).toEqual([within])
})

it('images go with the last plan that names them', async () => {
  await keepImage('picture-1', image)
  const saving = { known: '', isNew: false }
  await savePlan(row('plan-1', planWith([picture])), saving)
  await savePlan(row('plan-2', { ...planWith([picture]), name: 'Second' }), saving)
  vi.setSystemTime(Date.now() + 2 * 3_600_000)
  await deletePlan('plan-1')
  expect(await imageOf(picture)).not.toBeNull()
  await keepImage('picture-2', image)
  await deletePlan('plan-2')
  expect(await imageOf(picture)).toBeNull()
  // Just taken: the plan that will name it may not be saved yet.
  expect(await imageOf({ ...picture, id: 'picture-2' })).not.toBeNull()
})
