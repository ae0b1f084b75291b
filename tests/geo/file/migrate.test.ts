import { expect, it } from 'vitest'
import { currentVersion } from '#geo/file/format'
import { type Migration, migrate, migrations } from '#geo/file/migrate'

it('has one step for every version before this one, oldest first', () => {
  expect(migrations.map(({ from }) => from)).toEqual(Array.from({ length: currentVersion - 1 }, (_, i) => i + 1))
})

it('takes the steps in order, from the version of the file on', () => {
  const step = (from: number): Migration => ({
    from,
    upgrade: stored => ({ ...stored, way: `${stored.way ?? ''}${from}` }),
  })
  const steps = [step(1), step(2), step(3)]
  expect(migrate({}, 1, 4, steps)).toEqual({ way: '123' })
  expect(migrate({}, 3, 4, steps)).toEqual({ way: '3' })
  expect(migrate({ name: 'x' }, 4, 4, steps)).toEqual({ name: 'x' })
})

it('throws where a step is missing', () => {
  expect(() => migrate({}, 1, 2, [])).toThrow(RangeError)
})
