import type { AsyncEngineApi, EnginePort, MakePort } from './protocol'

/** One call to a worker. Exactly one of `onAnswer` and `onFailure` is called, or neither where the job was withdrawn. */
export type LaneJob<T> = {
  readonly kind: string
  call(api: AsyncEngineApi): Promise<T>
  onAnswer(answer: T): void
  onFailure(reason: string): void
}

type Running = {
  readonly job: LaneJob<unknown>
  readonly timer: ReturnType<typeof setTimeout>
  isWanted: boolean
  isOverdue: boolean
}

/**
 * A worker and its queue: one job under way, and of each kind only the newest waiting. A job that is no longer wanted
 * is not answered; one that also runs longer than `patience` milliseconds is ended together with the worker, so that
 * what waits need not wait for it.
 */
export class Lane {
  readonly #makePort: MakePort
  readonly #patience: number
  #port: EnginePort | null = null
  #running: Running | null = null
  #waiting: LaneJob<unknown>[] = []

  constructor(makePort: MakePort, { patience }: { readonly patience: number }) {
    this.#makePort = makePort
    this.#patience = patience
  }

  /** Queues a job behind those of other kinds, in place of one of its own kind. */
  request<T>(job: LaneJob<T>): void {
    this.#waiting = [...this.#waiting.filter(({ kind }) => kind !== job.kind), job as LaneJob<unknown>]
    this.#next()
  }

  /** Has the worker loaded before anything is asked of it; where that fails, the first job tells why. */
  warm(): void {
    try {
      this.#port ??= this.#startWorker()
    } catch {
      // The first job tries again.
    }
  }

  /** Takes back what was asked of a kind, waiting or under way. */
  withdraw(kind: string): void {
    this.#waiting = this.#waiting.filter(job => job.kind !== kind)
    if (this.#running?.job.kind !== kind) return
    this.#running.isWanted = false
    if (this.#running.isOverdue) this.#restart()
  }

  /** Ends the worker and forgets all that was asked. */
  stop(): void {
    this.#waiting = []
    this.#endWorker()
  }

  #next(): void {
    if (this.#running !== null) return
    const job = this.#waiting.shift()
    if (job === undefined) return
    const timer = setTimeout(() => this.#overdue(), this.#patience)
    const running: Running = { job, timer, isWanted: true, isOverdue: false }
    this.#running = running
    const settle = (tell: () => void): void => {
      if (this.#running !== running) return
      clearTimeout(running.timer)
      this.#running = null
      try {
        if (running.isWanted) tell()
      } finally {
        this.#next()
      }
    }
    this.#call(job).then(
      answer => settle(() => job.onAnswer(answer)),
      (error: unknown) => settle(() => job.onFailure(error instanceof Error ? error.message : String(error))),
    )
  }

  #overdue(): void {
    if (this.#running === null) return
    this.#running.isOverdue = true
    if (!this.#running.isWanted) this.#restart()
  }

  async #call(job: LaneJob<unknown>): Promise<unknown> {
    this.#port ??= this.#startWorker()
    return job.call(this.#port.api)
  }

  #startWorker(): EnginePort {
    let early: string | null = null
    let port: EnginePort | null = null
    port = this.#makePort(reason => {
      // One that fails while it is being made is nobody's port yet.
      if (port === null) early = reason
      else if (this.#port === port) this.#workerDied(reason)
    })
    if (early === null) return port
    port.terminate()
    throw new Error(early)
  }

  #workerDied(reason: string): void {
    const running = this.#running
    this.#endWorker()
    try {
      if (running?.isWanted) running.job.onFailure(reason)
    } finally {
      this.#next()
    }
  }

  #restart(): void {
    this.#endWorker()
    this.#next()
  }

  #endWorker(): void {
    if (this.#running !== null) clearTimeout(this.#running.timer)
    this.#running = null
    this.#port?.terminate()
    this.#port = null
  }
}
