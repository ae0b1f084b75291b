import { DomUtil, Layer, type LeafletEventHandlerFn, type Map as LeafletMap, type ZoomAnimEvent } from 'leaflet'
import type { LngLat } from '#geo/space/plane'
import { unitX, unitY } from '../mercator'
import type { Palette } from '../style'
import { forget, paintSoon } from './paint-queue'

/** One picture to paint: where the ground lies on the canvas and what colours are in force. */
export type Frame = {
  readonly context: CanvasRenderingContext2D
  readonly palette: Palette
  /** CSS pixels of the canvas. */
  readonly width: number
  readonly height: number
  /** Device pixels to a CSS pixel. */
  readonly ratio: number
  /** CSS pixels that the whole earth is wide at this zoom. */
  readonly worldSize: number
  /** World pixels of the canvas's top left corner: x = unitX * worldSize - left. */
  readonly left: number
  readonly top: number
  /** The part of the canvas that is in view when it is painted. */
  readonly view: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }
  toCanvas(at: LngLat): { readonly x: number; readonly y: number }
  toLngLat(x: number, y: number): LngLat
}

export type Painter = (frame: Frame) => void

/** What a layer shows. */
export type Picture = {
  readonly painter: Painter
  /** All that the picture hangs on besides view and palette: where none of it has changed it need not be painted again. */
  readonly inputs?: () => readonly unknown[]
}

/** Share of the map's size that is painted beyond each edge, so that a short pan shows no bare rim. */
const padding = 0.15

/**
 * A canvas in a map pane that repaints itself after every pan and zoom and follows the map in between. However often it
 * is asked, it paints at most once a frame, and only where its view or what it shows has changed.
 */
export class CanvasLayer extends Layer {
  readonly canvas: HTMLCanvasElement
  private readonly picture: Picture
  private readonly paletteNow: () => Palette
  private readonly paneName: string
  private map: LeafletMap | null = null
  private zoom = 0
  /** What the canvas shows now, and where: compared by its parts. */
  private painted: readonly unknown[] = []
  private drawn = { centre: { lat: 0, lng: 0 }, left: 0, top: 0, width: 0, height: 0 }

  constructor(options: { pane: string; picture: Picture; palette: () => Palette }) {
    super()
    this.picture = options.picture
    this.paletteNow = options.palette
    this.paneName = options.pane
    this.canvas = document.createElement('canvas')
    this.canvas.className = 'map-canvas leaflet-zoom-animated'
    this.canvas.setAttribute('aria-hidden', 'true')
  }

  override onAdd(map: LeafletMap): this {
    this.map = map
    map.getPane(this.paneName)?.append(this.canvas)
    // All layers of a large plan at once would hold up its opening.
    this.redraw()
    return this
  }

  override onRemove(): this {
    forget(this)
    this.canvas.remove()
    this.map = null
    return this
  }

  override getEvents(): { [name: string]: LeafletEventHandlerFn } {
    return {
      viewreset: () => this.redraw(),
      moveend: () => this.redraw(),
      resize: () => this.redraw(),
      move: () => this.follow(),
      zoom: () => this.map && this.stretch(this.map.getCenter(), this.map.getZoom()),
      zoomanim: event => this.stretch((event as ZoomAnimEvent).center, (event as ZoomAnimEvent).zoom),
    }
  }

  /** Asks for a repaint in one of the next frames. */
  redraw(): void {
    if (this.map !== null) paintSoon(this)
  }

  /** Paints where anything has changed; whether it did. */
  refresh(): boolean {
    const now = this.shownNow()
    const isSame = now.length === this.painted.length && now.every((each, i) => Object.is(each, this.painted[i]))
    if (!isSame) this.paint()
    return !isSame
  }

  private shownNow(): readonly unknown[] {
    const { map } = this
    if (map === null) return []
    const size = map.getSize()
    const origin = map.getPixelOrigin()
    const corner = map.containerPointToLayerPoint([0, 0])
    const view = [map.getZoom(), origin.x, origin.y, corner.x, corner.y, size.x, size.y, pixelRatio()]
    // Who does not say what it shows is painted whenever it is asked for.
    return [...view, this.paletteNow(), ...(this.picture.inputs?.() ?? [Symbol('always')])]
  }

  /** A long pan comes to the end of what is painted: paint on. */
  private follow(): void {
    const { map, drawn } = this
    if (map === null || map.getZoom() !== this.zoom) return
    const corner = map.containerPointToLayerPoint([0, 0])
    const size = map.getSize()
    const isCovered =
      corner.x >= drawn.left &&
      corner.y >= drawn.top &&
      corner.x + size.x <= drawn.left + drawn.width &&
      corner.y + size.y <= drawn.top + drawn.height
    if (!isCovered) this.redraw()
  }

  /** Moves and scales what is painted to where it belongs at another zoom. */
  private stretch(centre: { lat: number; lng: number }, zoom: number): void {
    const { map } = this
    if (map === null) return
    const scale = map.getZoomScale(zoom, this.zoom)
    const size = map.getSize()
    const panePosition = DomUtil.getPosition(map.getPane('mapPane')!)
    const origin = map.project(centre, zoom).subtract(size.divideBy(2)).add(panePosition).round()
    const half = size.multiplyBy(0.5 + padding).multiplyBy(-scale)
    DomUtil.setTransform(this.canvas, half.add(map.project(this.drawn.centre, zoom)).subtract(origin), scale)
  }

  private paint(): void {
    const { map, canvas } = this
    if (map === null) return
    this.painted = this.shownNow()
    const size = map.getSize()
    const corner = map.containerPointToLayerPoint(size.multiplyBy(-padding)).round()
    const width = Math.ceil(size.x * (1 + 2 * padding))
    const height = Math.ceil(size.y * (1 + 2 * padding))
    if (width === 0 || height === 0) return
    const ratio = pixelRatio()
    if (canvas.width !== Math.round(width * ratio) || canvas.height !== Math.round(height * ratio)) {
      canvas.width = Math.round(width * ratio)
      canvas.height = Math.round(height * ratio)
      canvas.style.width = `${width}px`
      canvas.style.height = `${height}px`
    }
    this.zoom = map.getZoom()
    this.drawn = { centre: map.getCenter(), left: corner.x, top: corner.y, width, height }
    DomUtil.setTransform(canvas, corner, 1)
    const context = canvas.getContext('2d')
    if (context === null) return
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    context.clearRect(0, 0, width, height)
    const worldSize = 256 * 2 ** this.zoom
    const origin = map.getPixelOrigin()
    const left = origin.x + corner.x
    const top = origin.y + corner.y
    const shift = map.layerPointToContainerPoint(corner)
    const frame: Frame = {
      context,
      palette: this.paletteNow(),
      width,
      height,
      ratio,
      worldSize,
      left,
      top,
      view: { left: -shift.x, top: -shift.y, right: size.x - shift.x, bottom: size.y - shift.y },
      toCanvas: at => ({ x: unitX(at[0]) * worldSize - left, y: unitY(at[1]) * worldSize - top }),
      toLngLat: (x, y) => {
        const { lng, lat } = map.layerPointToLatLng([x + corner.x, y + corner.y])
        return [lng, lat]
      },
    }
    context.save()
    this.picture.painter(frame)
    context.restore()
  }
}

function pixelRatio(): number {
  return Math.min(window.devicePixelRatio || 1, 2)
}

/** A layer in a pane of its own that lets every press through to the map. */
export function paneLayer(
  map: LeafletMap,
  options: Picture & { readonly name: string; readonly order: number; readonly palette: () => Palette },
): CanvasLayer {
  const { name, order, palette } = options
  const pane = map.createPane(name)
  pane.style.zIndex = String(order)
  pane.style.pointerEvents = 'none'
  return new CanvasLayer({ pane: name, picture: options, palette }).addTo(map)
}
