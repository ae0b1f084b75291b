import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { labelOf } from '#geo/plan/edits'
import { addPicture, placePicture, removePicture, setPicture } from '#geo/plan/edits-pictures'
import { setTiles } from '#geo/plan/edits-settings'
import { cornersOf, imageFault, placingOf } from '#geo/plan/pictures'
import type { Picture, Plan } from '#geo/plan/plan'
import { planeAt } from '#geo/space/plane'
import { put, sampleFile, sentences, told } from '../file/sample-file'

const picture: Picture = {
  id: 'picture-1',
  name: 'Sketch',
  width: 200,
  height: 100,
  corners: [
    [0.16, 52.591],
    [0.161, 52.591],
    [0.16, 52.5905],
  ],
}

function sample(): Plan {
  const outcome = readPlan(JSON.stringify(sampleFile()))
  if (!outcome.ok) throw new TypeError('the sample does not open')
  return outcome.value
}

describe('pictures under the map', () => {
  it('are kept by the file with their image and whatever else a later version wrote', () => {
    const image = `data:image/png;base64,${btoa('any bytes')}`
    const stored = { ...picture, opacity: 0.5, isLocked: true, isInFile: true, image, later: { tint: 'blue' } }
    const outcome = readPlan(put('plan.pictures', [stored]))
    expect(outcome.ok && outcome.value.pictures).toEqual([stored])
    expect(JSON.parse(writePlan((outcome as { value: Plan }).value)).plan.pictures).toEqual([stored])
  })

  it.each<[string, Partial<Picture>, string, RegExp]>([
    ['an address', { image: 'https://example.org/a.png' }, 'warning picture-not-shown', /never fetched/],
    [
      'a drawing that may hold a program',
      { image: 'data:image/svg+xml;base64,AAAA' },
      'warning picture-not-shown',
      /PNG/,
    ],
    [
      'a huge image',
      { image: `data:image/png;base64,${'A'.repeat(12_000_001)}` },
      'warning picture-not-shown',
      /larger/,
    ],
    [
      'corners on one line',
      {
        corners: [
          [0, 50],
          [1, 50],
          [2, 50],
        ],
      },
      'warning picture-unplaced',
      /Place it again/,
    ],
    [
      'corners that turn it over',
      {
        corners: [
          [0, 50],
          [0.001, 50],
          [0, 50.001],
        ],
      },
      'warning picture-unplaced',
      /over/,
    ],
    [
      'corners off the earth',
      {
        corners: [
          [0, 89],
          [1, 89],
          [0, 88],
        ],
      },
      'warning picture-unplaced',
      /off the map/,
    ],
    ['an opacity of two', { opacity: 2 }, 'warning out-of-range', /from 0 to 1/],
    ['no width', { width: 0 }, 'warning out-of-range', /size in pixels/],
  ])('are opened and kept with a warning: %s', (_, patch, fault, words) => {
    const file = put('plan.pictures', [{ ...picture, ...patch }])
    expect(told(file)).toContain(`${fault} at plan.pictures[0]`)
    expect(sentences(readPlan(file)).join(' ')).toMatch(words)
  })

  it('with one id are told of, and shown once', () => {
    expect(told(put('plan.pictures', [picture, picture]))).toEqual(['warning picture-repeated at plan.pictures[1]'])
  })

  it('without corners keep the file shut, as other shapes that are wrong do', () => {
    expect(told(put('plan.pictures', [{ ...picture, corners: [[0, 50]] }]))[0]).toMatch(/^error/)
  })

  it('are laid, changed and taken away by edits that undo can name', () => {
    const plan = sample()
    const add = addPicture(picture)
    const laid = add.apply(plan)
    expect(laid.pictures).toEqual([picture])
    expect(labelOf(add, plan)).toBe('Lay picture Sketch under the map')
    expect(() => add.apply(laid)).toThrow(RangeError)
    const corners = picture.corners.map(([lng, lat]) => [lng + 1 / 3, lat]) as unknown as Picture['corners']
    const place = placePicture('picture-1', corners, 'Place')
    expect(labelOf(place, laid)).toBe('Place picture Sketch')
    const moved = place.apply(laid)
    // What is placed is what a file keeps.
    const again = readPlan(writePlan(moved))
    expect(again.ok && again.value.pictures).toEqual(moved.pictures)
    expect(setPicture('picture-1', { name: 'Sketch' }).apply(laid)).toBe(laid)
    const gone = removePicture('picture-1').apply(moved)
    expect('pictures' in gone).toBe(false)
    expect(removePicture('picture-9').apply(gone)).toBe(gone)
  })

  it('lie by their corners where they were placed', () => {
    const plane = planeAt([0.16, 52.59])
    const placing = placingOf(picture, plane)!
    const corners = cornersOf(placing, picture, plane)
    for (const [i, [lng, lat]] of corners.entries()) {
      expect(lng).toBeCloseTo(picture.corners[i]![0], 10)
      expect(lat).toBeCloseTo(picture.corners[i]![1], 10)
    }
  })
})

it('images are bytes of three formats and nothing else', () => {
  expect(imageFault('data:image/jpeg;base64,/9j/4AAQ')).toBeNull()
  expect(imageFault('data:image/webp;base64,UklGR')).toBeNull()
  for (const other of [
    '',
    '//example.org/a.png',
    'data:text/html;base64,AAAA',
    'data:image/png,AAAA',
    'javascript:1',
  ]) {
    expect(imageFault(other)).toBe('kind')
  }
})

describe('the address of map pictures', () => {
  it('is kept by the plan, and told of where it leads nowhere', () => {
    const plan = sample()
    const url = 'https://tiles.example.org/{z}/{x}/{y}.png'
    const with_ = setTiles(url).apply(plan)
    const again = readPlan(writePlan(with_))
    expect(again.ok && again.value.tiles).toEqual({ url })
    expect(setTiles(url).apply(with_)).toBe(with_)
    expect('tiles' in setTiles(null).apply(with_)).toBe(false)
    expect(told(put('plan.tiles', { url: 'https://example.org/{z}/{x}' }))).toEqual([
      'note tiles-address at plan.tiles',
    ])
    expect(sentences(readPlan(put('plan.tiles', { url: 'ftp://x' })))[0]).toMatch(/begin with https/)
  })
})
