import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import type { Plugin } from 'vite'

/**
 * Writes `sw.js` beside the page: a service worker that keeps the whole built app on the device at the first visit and
 * answers from there, so that the planner opens where there is no signal. Its cache is named after the contents: a new
 * build is fetched whole in the background and takes over at the next start, never in the middle of work.
 */
export function offline(): Plugin {
  let folder = 'public'
  return {
    name: 'nestreach-offline',
    apply: 'build',
    configResolved(config) {
      folder = config.publicDir
    },
    // After all others: the page itself is added to the bundle late.
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const built = Object.entries(bundle).map(([name, file]) => ({
          name,
          content: file.type === 'chunk' ? file.code : file.source,
        }))
        const given = readdirSync(folder).map(name => ({ name, content: readFileSync(`${folder}/${name}`) }))
        const files = [...built, ...given].sort((a, b) => (a.name < b.name ? -1 : 1))
        const hash = createHash('sha256')
        for (const { name, content } of files) hash.update(name).update(content)
        const names = files.map(({ name }) => (name === 'index.html' ? './' : `./${name}`))
        this.emitFile({ type: 'asset', fileName: 'sw.js', source: worker(hash.digest('hex').slice(0, 12), names) })
      },
    },
  }
}

function worker(version: string, names: readonly string[]): string {
  return `// Keeps the app on the device; made by the build.
const kept = 'nestreach-${version}'
const files = ${JSON.stringify(names, null, 1)}

self.addEventListener('install', event => {
  event.waitUntil(caches.open(kept).then(cache => cache.addAll(files)))
})

self.addEventListener('activate', event => {
  const isOld = name => name.startsWith('nestreach-') && name !== kept
  event.waitUntil(
    caches.keys().then(names => Promise.all(names.filter(isOld).map(name => caches.delete(name)))).then(() => clients.claim()),
  )
})

self.addEventListener('fetch', event => {
  const { request } = event
  const isOwn = new URL(request.url).origin === location.origin
  if (!isOwn || request.method !== 'GET') return
  const asked = request.mode === 'navigate' ? './' : request
  event.respondWith(caches.open(kept).then(cache => cache.match(asked)).then(answer => answer ?? fetch(request)))
})
`
}
