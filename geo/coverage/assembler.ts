/*
 * The little of WebAssembly (core specification 2.0) that the engine's inner loops need, written as expressions: every
 * function gives the bytes of one instruction after those of its operands, in stack order.
 */

export type Code = readonly number[]
export type Kind = 'i32' | 'f64' | 'v128'

const kindCode = { i32: 0x7f, f64: 0x7c, v128: 0x7b } as const satisfies Record<Kind, number>

/** LEB128. */
function unsigned(value: number): number[] {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)]
}

function signed(value: number): number[] {
  const isLast = value >= -64 && value < 64
  return isLast ? [value & 0x7f] : [(value & 0x7f) | 0x80, ...signed(value >> 7)]
}

function double(value: number): number[] {
  return [...new Uint8Array(Float64Array.of(value).buffer)]
}

function plain(code: number): (...operands: Code[]) => Code {
  return (...operands) => [...operands.flat(), code]
}

function vector(code: number): (...operands: Code[]) => Code {
  return (...operands) => [...operands.flat(), 0xfd, ...unsigned(code)]
}

/** An access of 2^`align` bytes at the address that the first operand gives, `offset` bytes on. */
function access(codes: Code, align: number): (offset: number, ...operands: Code[]) => Code {
  return (offset, ...operands) => [...operands.flat(), ...codes, align, ...unsigned(offset)]
}

export const i32 = {
  of: (value: number): Code => [0x41, ...signed(value)],
  load: access([0x28], 2),
  load8: access([0x2d], 0),
  store8: access([0x3a], 0),
  isLess: plain(0x49),
  isAtLeast: plain(0x4f),
  add: plain(0x6a),
  sub: plain(0x6b),
  mul: plain(0x6c),
  and: plain(0x71),
  shiftLeft: plain(0x74),
}

export const f64 = {
  of: (value: number): Code => [0x44, ...double(value)],
  load: access([0x2b], 3),
  store: access([0x39], 3),
  /** 1 where the two differ, else 0; as i32. */
  isOther: plain(0x62),
  add: plain(0xa0),
  min: plain(0xa4),
  fromI32: plain(0xb7),
}

/** Two doubles side by side. */
export const f64x2 = {
  of: (a: number, b: number): Code => [0xfd, 0x0c, ...double(a), ...double(b)],
  load: access([0xfd, 0x00], 3),
  store: access([0xfd, 0x0b], 3),
  /** One double to both places. */
  loadTwice: access([0xfd, 0x0a], 3),
  loadFirst: access([0xfd, 0x5d], 3),
  loadSecond: (address: Code, into: Code): Code => [...address, ...into, 0xfd, 0x57, 3, 0, 1],
  splat: vector(0x14),
  lane: (index: 0 | 1, value: Code): Code => [...value, 0xfd, 0x21, index],
  /** The low 32 bits of one of the doubles. */
  lowBits: (index: 0 | 1, value: Code): Code => [...value, 0xfd, 0x1b, 2 * index],
  isLess: vector(0x49),
  isAtMost: vector(0x4b),
  and: vector(0x4e),
  sqrt: vector(0xef),
  add: vector(0xf0),
  sub: vector(0xf1),
  mul: vector(0xf2),
  /** The second where it is less than the first, else (also where it is not a number) the first. */
  lesser: vector(0xf6),
}

/** Repeats `body` for as long as `condition` holds, seen before each round. */
export function loopWhile(condition: Code, body: readonly Code[]): Code {
  return [0x02, 0x40, 0x03, 0x40, ...condition, 0x45, 0x0d, 1, ...body.flat(), 0x0c, 0, 0x0b, 0x0b]
}

export function when(condition: Code, body: readonly Code[]): Code {
  return [...condition, 0x04, 0x40, ...body.flat(), 0x0b]
}

export type Definition = {
  readonly params: readonly Kind[]
  readonly locals: readonly Kind[]
  readonly result: Kind | null
  readonly body: Code
}

/** The reads and writes that a function's body is written with. */
export type Names<Name extends string> = {
  get(name: Name): Code
  set(name: Name, value: Code): Code
  /** Writes and gives the value on. */
  keep(name: Name, value: Code): Code
}

/** A function with named parameters and locals. */
export function define<Param extends string, Local extends string>(
  params: Readonly<Record<Param, Kind>>,
  locals: Readonly<Record<Local, Kind>>,
  result: Kind | null,
  body: (names: Names<Param | Local>) => readonly Code[],
): Definition {
  const order = [...Object.keys(params), ...Object.keys(locals)]
  const index = (name: string): number[] => unsigned(order.indexOf(name))
  const names: Names<Param | Local> = {
    get: name => [0x20, ...index(name)],
    set: (name, value) => [...value, 0x21, ...index(name)],
    keep: (name, value) => [...value, 0x22, ...index(name)],
  }
  return { params: Object.values(params), locals: Object.values(locals), result, body: body(names).flat() }
}

/** A module that works in the memory it is handed as `host.memory` and exports the functions under their names. */
export function moduleOf(functions: Readonly<Record<string, Definition>>): Uint8Array<ArrayBuffer> {
  const definitions = Object.values(functions)
  const types = definitions.map(({ params, result }) => [
    0x60,
    ...list(params.map(kind => [kindCode[kind]])),
    ...list(result === null ? [] : [[kindCode[result]]]),
  ])
  const memory = [...text('host'), ...text('memory'), 0x02, 0x00, 0x00]
  const exported = Object.keys(functions).map((name, i) => [...text(name), 0x00, ...unsigned(i)])
  const bodies = definitions.map(({ locals, body }) => {
    const code = [...list(locals.map(kind => [1, kindCode[kind]])), ...body, 0x0b]
    return [...unsigned(code.length), ...code]
  })
  return Uint8Array.from([
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, types),
    ...section(2, [memory]),
    ...section(
      3,
      definitions.map((_, i) => unsigned(i)),
    ),
    ...section(7, exported),
    ...section(10, bodies),
  ])
}

function section(id: number, entries: readonly Code[]): number[] {
  const bytes = list(entries)
  return [id, ...unsigned(bytes.length), ...bytes]
}

function list(entries: readonly Code[]): number[] {
  return [...unsigned(entries.length), ...entries.flat()]
}

/** Names are plain ASCII. */
function text(name: string): number[] {
  return [name.length, ...Array.from(name, letter => letter.charCodeAt(0))]
}
