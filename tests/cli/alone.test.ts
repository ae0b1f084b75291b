import { spawn, spawnSync } from 'node:child_process'
import { copyFileSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { built, scenario } from './nestreach'

test('the built command line is one file that runs with nothing beside it', () => {
  const folder = mkdtempSync(join(tmpdir(), 'nestreach-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  const alone = join(folder, 'nestreach.mjs')
  copyFileSync(built, alone)
  const { status, stdout, stderr } = spawnSync(process.execPath, [alone, 'coverage', scenario('farm')], {
    cwd: folder,
    encoding: 'utf8',
    env: {},
  })
  expect({ status, stderr }).toEqual({ status: 0, stderr: expect.stringMatching(/^warning: 18 field checks of .*\n$/) })
  expect(stdout).toMatch(/^Sample C/)
  expect(readFileSync(alone, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/)
  // Room for the engine to grow, none for the screen, which is as large again.
  expect(statSync(alone).size).toBeLessThan(1.7e6)
})

test('a reader that goes away is no fault', async () => {
  const child = spawn(process.execPath, [built, 'parameters', '--why'], { stdio: ['ignore', 'pipe', 'pipe'] })
  let err = ''
  child.stderr.on('data', chunk => {
    err += chunk
  })
  child.stdout.destroy()
  const exitCode = await new Promise(resolve => child.on('close', resolve))
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
})

test('the answer does not hang on the language and time zone of the machine', () => {
  const answers = ['C', 'de_DE.UTF-8', 'tr_TR.UTF-8'].map(language => {
    const env = { ...process.env, LANG: language, LC_ALL: language, TZ: 'Pacific/Auckland' }
    return spawnSync(process.execPath, [built, 'coverage', scenario('farm')], { encoding: 'utf8', env }).stdout
  })
  expect(answers[0]).toMatch(/21 April 2025/)
  expect(new Set(answers).size).toBe(1)
})
