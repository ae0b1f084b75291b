import { Component, type ReactNode } from 'react'

type Props = { readonly children: ReactNode; readonly what: string }
type State = { readonly error: Error | null }

/** Keeps a fault in one part of the page from taking the rest with it. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { error: null }

  static getDerivedStateFromError(error: unknown): State {
    return { error: error instanceof Error ? error : new Error(String(error)) }
  }

  override render() {
    const { error } = this.state
    if (error === null) return this.props.children
    return (
      <div className="fault" role="alert">
        <h2>{this.props.what} stopped working</h2>
        <p>
          The plan and the map are untouched, and the plan is kept on this device. Try again; if it happens again, save
          the plan as a file and load the page anew.
        </p>
        <p className="fault-detail">{error.message}</p>
        <button type="button" onClick={() => this.setState({ error: null })}>
          Try again
        </button>
      </div>
    )
  }
}
