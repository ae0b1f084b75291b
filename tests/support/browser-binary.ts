import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export type BrowserBinary = {
  readonly path: string
  /** What the browser is to know of fonts, in the form that fontconfig reads; null = the machine's own. */
  readonly fonts: string | null
}

const cache = fileURLToPath(new URL('../../node_modules/.cache/nestreach-browser/', import.meta.url))
const bundle = new URL('../../node_modules/@sparticuz/chromium/package.json', import.meta.url)

const installed: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: [
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/microsoft-edge',
    '/snap/bin/chromium',
  ],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:/Program Files/Google/Chrome/Application/chrome.exe',
    'C:/Program Files (x86)/Google/Chrome/Application/chrome.exe',
    'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe',
    'C:/Program Files/Microsoft/Edge/Application/msedge.exe',
  ],
}

/**
 * The browser that the tests drive: the one named by BROWSER_PATH, else the one that comes with the packages (Linux,
 * 64-bit Intel), so that every such machine tests the same version, else one that is installed.
 */
export function browserBinary(): BrowserBinary {
  const named = process.env.BROWSER_PATH
  if (named) {
    if (existsSync(named)) return { path: named, fonts: null }
    throw new Error(`BROWSER_PATH names ${named}, but there is no such file.`)
  }
  if (process.platform === 'linux' && process.arch === 'x64' && existsSync(bundle)) return bundledBinary()
  const found = (installed[process.platform] ?? []).find(path => existsSync(path))
  if (found !== undefined) return { path: found, fonts: null }
  throw new Error('No browser found to test in: install Chrome, Chromium or Edge, or name one in BROWSER_PATH.')
}

/**
 * The browser from the packages, unpacked once. Its package unpacks into the folder for temporary files and takes any
 * browser that lies there already, of whatever version: so it gets a folder of its own, which takes its final name only
 * when all is there.
 */
function bundledBinary(): BrowserBinary {
  const { version } = JSON.parse(readFileSync(bundle, 'utf8'))
  const folder = join(cache, `chromium-${version}`)
  if (!existsSync(folder)) {
    mkdirSync(cache, { recursive: true })
    const unpacking = mkdtempSync(join(cache, 'unpacking-'))
    const script = "import chromium from '@sparticuz/chromium'; await chromium.executablePath()"
    execFileSync(process.execPath, ['--input-type=module', '--eval', script], {
      cwd: fileURLToPath(new URL('../../', import.meta.url)),
      env: { ...process.env, TMPDIR: unpacking },
    })
    writeFileSync(join(unpacking, 'fonts.conf'), fontList(folder))
    try {
      renameSync(unpacking, folder)
    } catch (error) {
      // Another run was quicker: its copy is as good.
      rmSync(unpacking, { recursive: true, force: true })
      if (!existsSync(folder)) throw error
    }
  }
  return { path: join(folder, 'chromium'), fonts: join(folder, 'fonts.conf') }
}

/** The fonts that come with the browser, and no others: every page then looks the same on every machine. */
const fontList = (folder: string) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder}/fonts</dir>
  <cachedir>${folder}/fonts-cache</cachedir>
</fontconfig>
`
