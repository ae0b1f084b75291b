import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize, sep } from 'node:path'

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.geojson': 'application/geo+json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
}

/**
 * Serves a folder on a free port of this machine. Vite's own preview would answer a missing file with the page itself
 * and so hide that it is missing.
 */
export async function serve(folder: string): Promise<{ readonly url: string; close(): Promise<void> }> {
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost')
    const file = normalize(join(folder, decodeURIComponent(pathname), pathname.endsWith('/') ? 'index.html' : ''))
    try {
      if (!file.startsWith(folder.endsWith(sep) ? folder : folder + sep)) throw new Error('outside the folder')
      const content = await readFile(file)
      response.writeHead(200, { 'content-type': types[extname(file)] ?? 'application/octet-stream' })
      response.end(content)
    } catch {
      response.writeHead(404, { 'content-type': 'text/plain' })
      response.end('There is no such file.')
    }
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(0, '127.0.0.1', resolve)
  })
  const { port } = server.address() as AddressInfo
  return { url: `http://127.0.0.1:${port}/`, close: () => closed(server) }
}

function closed(server: Server): Promise<void> {
  server.closeAllConnections()
  return new Promise(resolve => server.close(() => resolve()))
}
