import { expect, test } from 'vitest'
import { createImportReader } from '../../../src/worker/import-reader'
import { fakeWorkers } from './fake-port'

test('a reader asks one worker of its own, and ends it', async () => {
  const workers = fakeWorkers()
  const reader = createImportReader(workers.makePort)
  const first = reader.open(new Uint8Array(), {})
  await workers.of('openImport')[0]!.answer('opened')
  expect(await first).toBe('opened')
  const second = reader.open(new Uint8Array(), {})
  await workers.of('openImport')[1]!.fail('out of memory')
  await expect(second).rejects.toThrow('out of memory')
  expect(workers.calls.map(({ worker }) => worker)).toEqual([1, 1])
  reader.stop()
  expect(workers.ended).toEqual([1])
})

test('a worker that dies fails what was asked, and the next is asked of a new one', async () => {
  const workers = fakeWorkers()
  const reader = createImportReader(workers.makePort)
  const asked = reader.open(new Uint8Array(), {})
  workers.dies(1, 'it broke off')
  await expect(asked).rejects.toThrow('it broke off')
  void reader.open(new Uint8Array(), {})
  expect(workers.of('openImport').at(-1)?.worker).toBe(2)
})
