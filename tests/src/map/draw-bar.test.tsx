import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { DrawBar } from '../../../src/map/draw-bar'
import { focusFigures } from '../../../src/map/figure-focus'
import { createHand, type Hand } from '../../../src/map/hand'
import { openPlan, select, setTool } from '../../../src/state/actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { PlannerProvider } from '../../../src/state/use-planner'
import { blockFeature, smallPlan } from '../../support/builders'
import { tap, toPixel } from './tools/events'

let store: PlannerStore
let hand: Hand

beforeEach(() => {
  store = createPlannerStore(2026)
  openPlan(store, smallPlan({ features: [...smallPlan().features, blockFeature('block-1')] }), 'plan-1', 2026)
  hand = createHand(store, { toPixel, onStationDrag: () => undefined, onStationDragEnd: () => undefined })
  render(
    <PlannerProvider store={store}>
      <DrawBar hand={hand} />
    </PlannerProvider>,
  )
})

afterEach(() => {
  hand.stop()
  cleanup()
  vi.unstubAllGlobals()
})

const toolbar = () => screen.getByRole('toolbar', { name: 'Drawing tools' })
const button = (name: string) => screen.getByRole('button', { name })
const none = (name: string) => expect(screen.queryByRole('button', { name })).toBeNull()
const tool = () => store.getState().view.tool

describe('the draw bar', () => {
  it('names every tool and says which is in hand', () => {
    const names = within(toolbar())
      .getAllByRole('button')
      .map(each => each.textContent)
    expect(names).toEqual([
      'Select',
      'Select by box',
      'Row',
      'Block by rows',
      'Block',
      'Plant',
      'Bed',
      'Nest station',
      'Forage',
      'Mud',
      'No stations here',
      'Boundary',
      'Windbreak',
      'Measure',
      'Hide the words',
    ])
    expect(button('Select')).toHaveAttribute('aria-pressed', 'true')
    fireEvent.click(button('Nest station'))
    expect(tool()).toBe('station')
    expect(button('Nest station')).toHaveAttribute('aria-pressed', 'true')
    expect(button('Select')).toHaveAttribute('aria-pressed', 'false')
    fireEvent.click(button('Nest station'))
    expect(tool()).toBe('select')
  })

  it('is one stop of the Tab key, with arrows from tool to tool', () => {
    const stops = () =>
      within(toolbar())
        .getAllByRole('button')
        .filter(each => each.tabIndex === 0)
        .map(each => each.textContent)
    expect(stops()).toEqual(['Select'])
    act(() => button('Select').focus())
    fireEvent.keyDown(button('Select'), { key: 'ArrowDown' })
    expect(button('Select by box')).toHaveFocus()
    expect(stops()).toEqual(['Select by box'])
    fireEvent.keyDown(button('Select by box'), { key: 'End' })
    expect(button('Hide the words')).toHaveFocus()
    fireEvent.keyDown(button('Hide the words'), { key: 'ArrowRight' })
    expect(button('Select')).toHaveFocus()
    fireEvent.keyDown(button('Select'), { key: 'ArrowLeft' })
    expect(button('Hide the words')).toHaveFocus()
    act(() => button('Hide the words').blur())
    expect(stops()).toEqual(['Select'])
  })

  it('keeps the names when the words are folded', () => {
    fireEvent.click(button('Hide the words'))
    expect(button('No stations here')).toHaveAttribute('title', 'No stations here')
    fireEvent.click(button('Show the words'))
    expect(button('No stations here')).not.toHaveAttribute('title')
  })

  it('leads through a row and gives the focus back', () => {
    none('Put the tool down')
    fireEvent.click(button('Row'))
    const hint = screen.getByText('Press the map where the row begins.')
    expect(hint).toHaveAttribute('aria-live', 'polite')
    none('Finish')
    none('Take off last point')
    act(() => void hand.handle(tap([20, 4])))
    expect(hint).toHaveTextContent('Press where it ends, or where it bends.')
    act(() => void hand.handle(tap([26, 4])))
    expect(hint).toHaveTextContent('2 points set.')
    fireEvent.click(button('Take off last point'))
    none('Finish')
    act(() => void hand.handle(tap([26, 4])))
    none('Put the tool down')
    fireEvent.click(button('Cancel'))
    expect(tool()).toBe('row')
    expect(hint).toHaveTextContent('Press the map where the row begins.')
    act(() => void hand.handle(tap([20, 4])))
    act(() => void hand.handle(tap([26, 4])))
    act(() => button('Finish').focus())
    fireEvent.click(button('Finish'))
    expect(store.getState().document.plan?.features).toHaveLength(7)
    expect(tool()).toBe('select')
    expect(button('Select')).toHaveFocus()
    expect(hint).toBeEmptyDOMElement()
    none('Put the tool down')
  })

  it('goes from the figures of one side to those of the next, and ends a line with nothing typed', () => {
    fireEvent.click(button('Windbreak'))
    act(() => void hand.handle(tap([20, 4])))
    const type = (label: string, text: string) => {
      const field = screen.getByLabelText(label)
      act(() => field.focus())
      fireEvent.change(field, { target: { value: text } })
      fireEvent.keyDown(field, { key: 'Enter' })
    }
    type('Length', '30')
    type('Bearing', '90')
    fireEvent.submit(screen.getByLabelText('Bearing').closest('form')!)
    expect(hand.status().points).toBe(2)
    expect(screen.getByLabelText('Length')).toHaveFocus()
    fireEvent.keyDown(screen.getByLabelText('Length'), { key: 'Enter' })
    expect(store.getState().document.plan?.features.at(-1)?.properties.kind).toBe('windbreak')
  })

  it('asks for the number of rows once the first row is set, by keys and from the map', () => {
    fireEvent.click(button('Block by rows'))
    act(() => void hand.handle(tap([20, 4])))
    const type = (label: string, text: string) => {
      const field = screen.getByLabelText(label)
      act(() => field.focus())
      fireEvent.change(field, { target: { value: text } })
      fireEvent.keyDown(field, { key: 'Enter' })
    }
    type('Length', '30')
    type('Bearing', '90')
    fireEvent.submit(screen.getByLabelText('Bearing').closest('form')!)
    expect(hand.status().points).toBe(2)
    expect(screen.getByLabelText('Number of rows')).toHaveFocus()
    act(() => screen.getByLabelText('Number of rows').blur())
    act(() => void focusFigures())
    expect(screen.getByLabelText('Number of rows')).toHaveFocus()
  })

  it('plants a row as wide as was typed, and says so before', () => {
    fireEvent.click(button('Row'))
    const field = screen.getByLabelText('In the row')
    act(() => field.focus())
    fireEvent.change(field, { target: { value: '1.5' } })
    fireEvent.keyDown(field, { key: 'Enter' })
    act(() => void hand.handle(tap([20, 4])))
    act(() => void hand.handle(tap([26, 4])))
    expect(hand.ghost()?.measure?.feature?.properties).toMatchObject({ spacing: 1.5 })
    act(() => void hand.handle({ type: 'finish' }))
    expect(store.getState().document.plan?.features.at(-1)?.properties).toMatchObject({ kind: 'row', spacing: 1.5 })
  })

  it('follows a figure while it is typed; Escape takes it back', () => {
    fireEvent.click(button('Row'))
    act(() => void hand.handle(tap([20, 4])))
    const field = screen.getByLabelText('Length')
    act(() => field.focus())
    fireEvent.change(field, { target: { value: '16' } })
    fireEvent.change(field, { target: { value: '168' } })
    expect(field).toHaveValue('168')
    expect(hand.status().figures?.length?.typed).toBe(168)
    fireEvent.change(field, { target: { value: '168x' } })
    expect(field).toHaveValue('168x')
    expect(hand.status().figures?.length?.typed).toBe(168)
    fireEvent.keyDown(field, { key: 'Escape' })
    expect(hand.status().figures?.length?.typed).toBeNull()
    expect(field).toHaveValue('')
  })

  it('draws several without taking the tool again', () => {
    fireEvent.click(button('Plant'))
    fireEvent.click(button('Draw several'))
    expect(button('Draw several')).toHaveAttribute('aria-pressed', 'true')
    act(() => void hand.handle(tap([20, 4])))
    act(() => void hand.handle(tap([22, 4])))
    expect(store.getState().document.plan?.features).toHaveLength(8)
    fireEvent.click(button('Put the tool down'))
    expect(tool()).toBe('select')
  })

  it('folds fields that were opened for one tool when another is taken', () => {
    const isOpen = () =>
      screen.getByRole('button', { name: /^Fewer fields|^Crop and figures/ }).getAttribute('aria-expanded')
    const onPhone = (query: string) => ({
      matches: query.includes('max'),
      addEventListener() {},
      removeEventListener() {},
    })
    vi.stubGlobal('matchMedia', onPhone)
    fireEvent.click(button('Row'))
    expect(isOpen()).toBe('false')
    fireEvent.click(screen.getByRole('button', { name: /^Crop and figures/ }))
    expect(isOpen()).toBe('true')
    fireEvent.click(button('Block'))
    expect(isOpen()).toBe('false')
  })

  it('removes a chosen corner', () => {
    none('Remove this corner')
    act(() => select(store, ['block-1']))
    act(() => void hand.handle(tap([6, 6])))
    fireEvent.click(button('Remove this corner'))
    const block = store.getState().document.plan?.features.at(-1)
    expect(block?.geometry.coordinates[0]).toHaveLength(4)
    none('Remove this corner')
  })

  it('follows a tool that is taken elsewhere', () => {
    act(() => setTool(store, 'keepout'))
    expect(button('No stations here')).toHaveAttribute('aria-pressed', 'true')
    expect(screen.getByText(/first corner of the ground where no station may stand/)).toBeInTheDocument()
  })
})
