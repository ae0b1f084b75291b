import { afterEach, describe, expect, it, vi } from 'vitest'
import { mapPicture } from '../../../src/map/map-picture'

afterEach(() => {
  vi.restoreAllMocks()
  document.body.replaceChildren()
})

const box = (left: number, top: number, width: number, height: number) => () =>
  ({ left, top, width, height }) as DOMRect

describe('picture of the map', () => {
  it('says why there is none where no map is in sight', async () => {
    await expect(mapPicture()).rejects.toThrow(/not in sight/)
  })

  it('lays the canvases where they are seen, lowest first, without tiles, images, the device and what is being drawn', async () => {
    const host = document.createElement('div')
    host.className = 'map'
    host.getBoundingClientRect = box(100, 50, 400, 300)
    const canvases = ['ghost', 'marks', 'device', 'shapes', 'ground', 'plants'].map(layer => {
      const pane = document.createElement('div')
      pane.className = `leaflet-${layer}-pane`
      const canvas = document.createElement('canvas')
      canvas.getBoundingClientRect = box(40, 5, 520, 390)
      pane.append(canvas, document.createElement('img'))
      host.append(pane)
      return [layer, canvas] as const
    })
    document.body.append(host)
    const drawImage = vi.fn()
    vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue({
      fillRect: vi.fn(),
      scale: vi.fn(),
      drawImage,
    } as unknown as RenderingContext)
    vi.spyOn(HTMLCanvasElement.prototype, 'toBlob').mockImplementation(answer => answer(new Blob(['png'])))
    await mapPicture()
    const of = Object.fromEntries(canvases)
    expect(drawImage.mock.calls).toEqual(
      ['ground', 'shapes', 'plants', 'marks'].map(layer => [of[layer], -60, -45, 520, 390]),
    )
  })
})
