import { cleanup, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { type ComponentProps, useState } from 'react'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { NumberField } from '../../../src/parts/number-field'
import { UnitsProvider } from '../../../src/parts/units-context'

afterEach(cleanup)

type Props = Partial<ComponentProps<typeof NumberField>> & { readonly units?: 'metric' | 'us' }

/** Holds the value as a page would, and can change it from elsewhere. */
function Host({ units = 'metric', value: first = null, onCommit, ...props }: Props) {
  const [value, setValue] = useState(first)
  return (
    <UnitsProvider value={units}>
      <NumberField
        label="Spacing"
        quantity="length"
        {...props}
        value={value}
        onCommit={next => {
          onCommit?.(next)
          setValue(next)
        }}
      />
      <button type="button" onClick={() => setValue(9)}>
        elsewhere
      </button>
    </UnitsProvider>
  )
}

function setup(props: Props = {}) {
  const onCommit = vi.fn()
  render(<Host {...props} onCommit={onCommit} />)
  return { onCommit, user: userEvent.setup(), field: screen.getByLabelText<HTMLInputElement>('Spacing') }
}

describe('a number field', () => {
  test('tells a default in feet to no more figures than it deserves', () => {
    setup({ fallback: 1.8, units: 'us' })
    expect(screen.getByText('5.9 ft by default')).toBeVisible()
  })

  test('commits on leaving, a decimal comma understood', async () => {
    const { onCommit, user, field } = setup()
    await user.type(field, '4,5')
    expect(onCommit).not.toHaveBeenCalled()
    await user.tab()
    expect(onCommit).toHaveBeenCalledExactlyOnceWith(4.5)
    expect(field.value).toBe('4.5')
  })

  test('commits on Enter, and understands its own unit', async () => {
    const { onCommit, user, field } = setup()
    await user.type(field, '4.5 m{Enter}')
    expect(onCommit).toHaveBeenCalledExactlyOnceWith(4.5)
  })

  test('keeps what it cannot read, says why, and changes nothing', async () => {
    const { onCommit, user, field } = setup({ value: 4.5 })
    await user.clear(field)
    await user.type(field, 'wide{Enter}')
    expect(field.value).toBe('wide')
    expect(field).toBeInvalid()
    expect(screen.getByRole('alert')).toHaveTextContent('“wide” is not a number.')
    expect(field).toHaveAccessibleDescription(/not a number/)
    expect(onCommit).not.toHaveBeenCalled()
  })

  test('brings the value in use back on Escape', async () => {
    const { onCommit, user, field } = setup({ value: 4.5 })
    await user.clear(field)
    await user.type(field, 'wide{Enter}{Escape}')
    expect(field.value).toBe('4.5')
    expect(screen.queryByRole('alert')).toBeNull()
    expect(onCommit).not.toHaveBeenCalled()
  })

  test('says between which bounds a value should lie, in the unit shown', async () => {
    const { user, field } = setup({ limit: { low: 0, high: 200, isAbove: true }, units: 'us' })
    await user.type(field, '0{Enter}')
    expect(screen.getByRole('alert')).toHaveTextContent('Should be more than 0 and at most 656.2 ft.')
  })

  test('takes whole numbers only where things are counted', async () => {
    const { onCommit, user, field } = setup({ quantity: 'plain', limit: { low: 1, high: 5000, isWhole: true } })
    await user.type(field, '1.5{Enter}')
    expect(screen.getByRole('alert')).toHaveTextContent('Only whole numbers count here.')
    await user.clear(field)
    await user.type(field, '1,500{Enter}')
    expect(onCommit).toHaveBeenCalledExactlyOnceWith(1500)
  })

  test('shows feet and stores metres', async () => {
    const { onCommit, user, field } = setup({ value: 4.572, units: 'us' })
    expect(field.value).toBe('15')
    await user.clear(field)
    await user.type(field, '16{Enter}')
    expect(onCommit).toHaveBeenCalledExactlyOnceWith(4.8768)
  })

  test('calls the default the default, and goes back to it when emptied', async () => {
    const { onCommit, user, field } = setup({ value: 3, fallback: 4.5 })
    await user.clear(field)
    await user.tab()
    expect(onCommit).toHaveBeenCalledExactlyOnceWith(null)
    expect(field.placeholder).toBe('4.5')
    expect(field).toHaveAccessibleDescription('4.5 m by default')
  })

  test('lets a change from elsewhere go before what was half typed', async () => {
    const { user, field } = setup({ value: 4.5 })
    await user.clear(field)
    await user.type(field, 'wide{Enter}')
    await user.click(screen.getByRole('button', { name: 'elsewhere' }))
    expect(field.value).toBe('9')
    expect(screen.queryByRole('alert')).toBeNull()
  })

  test('does not commit again what is already there', async () => {
    const { onCommit, user, field } = setup({ value: 4.5 })
    await user.clear(field)
    await user.type(field, '4.50{Enter}')
    expect(onCommit).not.toHaveBeenCalled()
  })
})
