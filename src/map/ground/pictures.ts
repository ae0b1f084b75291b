import type { Map as LeafletMap } from 'leaflet'
import { isPlaced } from '#geo/plan/pictures'
import type { Picture } from '#geo/plan/plan'
import type { PlannerStore } from '../../state/store'
import { imageOf } from '../../storage/pictures'
import { PictureLayer } from '../layers/picture-layer'

const paneName = 'pictures'

export type Pictures = {
  /** One of them lies elsewhere for now, while it is being pulled; null = all lie as the plan has them. */
  hold(picture: Picture | null): void
  stop(): void
}

type Shown = { readonly image: string | undefined; layer: PictureLayer | null; url: string | null }

/** Lays the plan's pictures under everything that is drawn, over the tiles. Their bytes come from the plan or this device. */
export function picturesOn(map: LeafletMap, store: PlannerStore): Pictures {
  const pane = map.createPane(paneName)
  pane.style.zIndex = '250'
  pane.style.pointerEvents = 'none'
  const shown = new Map<string, Shown>()

  const remove = (id: string): void => {
    const entry = shown.get(id)
    shown.delete(id)
    entry?.layer?.remove()
    if (entry?.url) URL.revokeObjectURL(entry.url)
  }

  const wanted = (): readonly Picture[] => (store.getState().document.plan?.pictures ?? []).filter(canBeShown)

  const load = async (picture: Picture, entry: Shown): Promise<void> => {
    // What is missing, and why, is told in the list of pictures.
    const image = await imageOf(picture).catch(() => null)
    const now = wanted().find(({ id }) => id === picture.id)
    if (image === null || now === undefined || shown.get(picture.id) !== entry) return
    entry.url = URL.createObjectURL(new Blob([image.bytes], { type: image.type }))
    entry.layer = new PictureLayer(entry.url, now, paneName).addTo(map)
    order()
  }

  /** The undermost first. */
  const order = (): void => {
    for (const { id } of wanted()) {
      const image = shown.get(id)?.layer?.image
      if (image) pane.append(image)
    }
  }

  const sync = (): void => {
    const pictures = wanted()
    for (const [id, { image }] of shown) {
      if (!pictures.some(each => each.id === id && each.image === image)) remove(id)
    }
    for (const picture of pictures) {
      const entry = shown.get(picture.id)
      if (entry !== undefined) {
        entry.layer?.show(picture)
        continue
      }
      const fresh: Shown = { image: picture.image, layer: null, url: null }
      shown.set(picture.id, fresh)
      void load(picture, fresh)
    }
    order()
  }

  let held: Picture | null = null
  const hold = (picture: Picture | null): void => {
    if (held === picture) return
    const before = held
    held = picture
    if (picture !== null) shown.get(picture.id)?.layer?.show(picture)
    else if (before !== null) sync()
  }

  sync()
  const unsubscribe = store.subscribe(state => state.document.plan?.pictures, sync)
  return {
    hold,
    stop() {
      unsubscribe()
      for (const id of [...shown.keys()]) remove(id)
    },
  }
}

function canBeShown(picture: Picture, index: number, all: readonly Picture[]): boolean {
  const isFirst = all.findIndex(({ id }) => id === picture.id) === index
  return picture.isHidden !== true && isFirst && isPlaced(picture)
}
