import { type KeyboardEvent, type MouseEvent, useState } from 'react'
import type { Picture } from '#geo/plan/plan'
import type { Spot } from '#geo/space/placing'

type Props = {
  readonly picture: Picture
  readonly url: string
  readonly spots: readonly (Spot | null)[]
  readonly chosen: number
  readonly onMark: (spot: Spot) => void
}

const arrows: Readonly<Record<string, Spot>> = {
  ArrowLeft: { u: -1, v: 0 },
  ArrowRight: { u: 1, v: 0 },
  ArrowUp: { u: 0, v: -1 },
  ArrowDown: { u: 0, v: 1 },
}

/** The picture itself, to be marked on: a tap sets the chosen point, arrow keys move it by a pixel, with Shift by ten. */
export function PicturePreview({ picture, url, spots, chosen, onMark }: Props) {
  const [isLarge, setLarge] = useState(false)
  const { width, height } = picture
  const within = (spot: Spot): Spot => ({
    u: Math.min(width, Math.max(0, Math.round(spot.u))),
    v: Math.min(height, Math.max(0, Math.round(spot.v))),
  })
  const onClick = (event: MouseEvent<HTMLButtonElement>) => {
    // Space and Enter press the button too, without a place.
    if (event.detail === 0) return
    const box = event.currentTarget.getBoundingClientRect()
    const u = ((event.clientX - box.left) / box.width) * width
    onMark(within({ u, v: ((event.clientY - box.top) / box.height) * height }))
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const by = arrows[event.key]
    if (by === undefined) return
    event.preventDefault()
    const from = spots[chosen] ?? { u: width / 2, v: height / 2 }
    const step = event.shiftKey ? 10 : 1
    onMark(within({ u: from.u + step * by.u, v: from.v + step * by.v }))
  }
  return (
    <div className="stack">
      <div className="picture-frame">
        <button
          type="button"
          className="picture-face"
          style={{ width: isLarge ? '300%' : '100%', aspectRatio: `${width} / ${height}` }}
          aria-label={`The picture: a tap marks point ${chosen + 1}, arrow keys move it`}
          onClick={onClick}
          onKeyDown={onKeyDown}
        >
          <img src={url} alt="" draggable={false} />
          {spots.map((spot, index) =>
            spot === null ? null : (
              <span
                // biome-ignore lint/suspicious/noArrayIndexKey: points are known by their number
                key={index}
                className="picture-mark"
                data-chosen={index === chosen}
                style={{ left: `${(100 * spot.u) / width}%`, top: `${(100 * spot.v) / height}%` }}
              >
                <b>{index + 1}</b>
              </span>
            ),
          )}
        </button>
      </div>
      <label className="option">
        <input type="checkbox" checked={isLarge} onChange={event => setLarge(event.target.checked)} />
        Three times as large
      </label>
    </div>
  )
}
