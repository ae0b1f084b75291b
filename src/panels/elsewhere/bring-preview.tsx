import { useMemo } from 'react'
import type { Geometry } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { localFrame } from '#geo/space/ring'
import { lengthText } from '../../text/units'
import { counted } from '../../text/words'
import { usePlan } from '../hooks'

type Props = { readonly before: readonly Geometry[]; readonly coming: readonly Geometry[] }

/** Room around what is shown, share of its larger side; and the least side, m, that a single point is shown in. */
const rim = 0.06
const leastSide = 10

/** A small map, north up: what is coming in colour, what stands already in grey. */
export function ImportPreview({ before, coming }: Props) {
  const { units } = usePlan()
  const picture = useMemo(() => pictureOf(before, coming), [before, coming])
  if (picture === null) return null
  const { viewBox, width, height } = picture
  return (
    <figure className="bring-figure">
      <svg
        className="bring-preview"
        viewBox={viewBox}
        role="img"
        aria-label={`${counted(coming.length, 'thing')} coming, ${counted(before.length, 'thing')} there already`}
      >
        <path className="bring-before" d={picture.before.lines} />
        <path className="bring-before-points" d={picture.before.points} />
        <path className="bring-coming" d={picture.coming.lines} />
        <path className="bring-coming-points" d={picture.coming.points} />
      </svg>
      <figcaption>
        What comes in bold colour, on {lengthText(width, units)} by {lengthText(height, units)}; north is up. What
        stands already is grey.
      </figcaption>
    </figure>
  )
}

function pictureOf(before: readonly Geometry[], coming: readonly Geometry[]) {
  const start = coming[0] && linesOf(coming[0])[0]?.[0]
  if (start === undefined) return null
  const toMetres = localFrame(start)
  // The first position lies at 0, 0.
  const box = { left: 0, top: 0, right: 0, bottom: 0 }
  for (const geometry of coming) {
    for (const line of linesOf(geometry)) {
      for (const at of line) {
        const { x, y } = toMetres(at)
        box.left = Math.min(box.left, x)
        box.right = Math.max(box.right, x)
        box.top = Math.min(box.top, -y)
        box.bottom = Math.max(box.bottom, -y)
      }
    }
  }
  const width = box.right - box.left
  const height = box.bottom - box.top
  const margin = Math.max(width, height, leastSide) * rim + leastSide / 2
  const viewBox = [box.left - margin, box.top - margin, width + 2 * margin, height + 2 * margin]
    .map(value => value.toFixed(2))
    .join(' ')
  return { viewBox, width, height, before: pathsOf(before, toMetres), coming: pathsOf(coming, toMetres) }
}

function pathsOf(geometries: readonly Geometry[], toMetres: ReturnType<typeof localFrame>) {
  const text = (at: LngLat) => {
    const { x, y } = toMetres(at)
    return `${x.toFixed(2)} ${(-y).toFixed(2)}`
  }
  const lines: string[] = []
  const points: string[] = []
  for (const geometry of geometries) {
    const isPoints = geometry.type === 'Point' || geometry.type === 'MultiPoint'
    for (const line of linesOf(geometry)) {
      // A stroke without length shows as a round dot.
      if (isPoints) points.push(...line.map(at => `M${text(at)}h0`))
      else lines.push(`M${line.map(text).join('L')}`)
    }
  }
  return { lines: lines.join(''), points: points.join('') }
}

function linesOf(geometry: Geometry): readonly (readonly LngLat[])[] {
  switch (geometry.type) {
    case 'Point':
      return [[geometry.coordinates]]
    case 'MultiPoint':
    case 'LineString':
      return [geometry.coordinates]
    case 'Polygon':
      return geometry.coordinates
    default:
      return geometry satisfies never
  }
}
