import {
  DomUtil,
  Layer,
  type LeafletEventHandlerFn,
  type Map as LeafletMap,
  type Point,
  type ZoomAnimEvent,
} from 'leaflet'
import type { Picture } from '#geo/plan/plan'

type View = { readonly centre: { lat: number; lng: number }; readonly zoom: number }

/** An image laid on the ground by its corners: turned, scaled and slanted as they say, and following the map. */
export class PictureLayer extends Layer {
  readonly image: HTMLImageElement
  private picture: Picture
  private readonly paneName: string
  private map: LeafletMap | null = null

  constructor(url: string, picture: Picture, paneName: string) {
    super()
    this.picture = picture
    this.paneName = paneName
    this.image = document.createElement('img')
    this.image.className = 'map-picture leaflet-zoom-animated'
    this.image.alt = ''
    this.image.setAttribute('aria-hidden', 'true')
    this.image.draggable = false
    this.image.src = url
  }

  /** Shows it as the plan has it now. */
  show(picture: Picture): void {
    this.picture = picture
    this.place()
  }

  override onAdd(map: LeafletMap): this {
    this.map = map
    map.getPane(this.paneName)?.append(this.image)
    this.place()
    return this
  }

  override onRemove(): this {
    this.image.remove()
    this.map = null
    return this
  }

  override getEvents(): { [name: string]: LeafletEventHandlerFn } {
    return {
      viewreset: () => this.place(),
      zoom: () => this.place(),
      zoomanim: event => this.place({ centre: (event as ZoomAnimEvent).center, zoom: (event as ZoomAnimEvent).zoom }),
    }
  }

  /** Puts it where it belongs; with `view`, where it will belong once the map has got there. */
  private place(view?: View): void {
    const { map, image, picture } = this
    if (map === null) return
    const zoom = view?.zoom ?? map.getZoom()
    const origin = view === undefined ? map.getPixelOrigin() : originOf(map, view)
    const [topLeft, topRight, bottomLeft] = picture.corners.map(([lng, lat]) =>
      map.project([lat, lng], zoom).subtract(origin),
    ) as [Point, Point, Point]
    const { width, height } = picture
    const matrix = [
      (topRight.x - topLeft.x) / width,
      (topRight.y - topLeft.y) / width,
      (bottomLeft.x - topLeft.x) / height,
      (bottomLeft.y - topLeft.y) / height,
      topLeft.x,
      topLeft.y,
    ]
    image.style.width = `${width}px`
    image.style.height = `${height}px`
    image.style.opacity = String(picture.opacity ?? 1)
    image.style.transform = `matrix(${matrix.join(',')})`
  }
}

/** The pixel that the map's layers will count from. */
function originOf(map: LeafletMap, { centre, zoom }: View): Point {
  const pane = DomUtil.getPosition(map.getPane('mapPane')!)
  return map.project(centre, zoom).subtract(map.getSize().divideBy(2)).add(pane).round()
}
