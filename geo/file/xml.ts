import type { Outcome, Problem } from '../problem'

/** An element of an XML text; names without their prefix. */
export type XmlElement = {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly XmlElement[]
  /** All text that stands directly in it. */
  readonly text: string
}

/** An element whose end has not come yet; `tag` is its name with the prefix. */
type Open = {
  readonly tag: string
  readonly element: { -readonly [K in keyof XmlElement]: XmlElement[K] }
  readonly children: XmlElement[]
}

/** Two hundred thousand points of a walked track, each with height and time, have 600,000. */
export const mostElements = 700_000
/** Levels; the deepest files in use have about ten. */
const deepest = 64

/** What ends a name. Blanks are told by their code: asking a pattern at every step takes five times as long. */
const ends = new Set([...'/>=<"\'&'].map(sign => sign.charCodeAt(0)))

/**
 * Reads XML 1.0 as far as map files go: elements, attributes, text, CDATA. Comments and instructions are passed over. A
 * document type is refused, since it is only good for making short files into endless ones. Passes over the text once,
 * whatever it holds, and keeps a list of what is open instead of calling itself.
 */
export function readXml(text: string): Outcome<XmlElement> {
  const source = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text
  const open: Open[] = []
  let root: XmlElement | null = null
  let count = 0
  let at = 0
  const fault = (where: number): Outcome<never> =>
    failed('import-not-xml', { line: lineAt(source, Math.min(where, source.length)) })
  const upTo = (end: string, from: number): number => source.indexOf(end, from)
  for (;;) {
    const start = upTo('<', at)
    const between = source.slice(at, start < 0 ? source.length : start)
    const inside = open.at(-1)
    if (between === '') {
      // Nothing stands there, as between most tags.
    } else if (inside !== undefined) inside.element.text += plain(between)
    else if (between.replace('\uFEFF', '').trim() !== '')
      return fault(source.length - source.slice(at).trimStart().length)
    if (start < 0) break
    const mark = source[start + 1]
    if (mark === '!' && source.startsWith('<!--', start)) {
      const end = upTo('-->', start + 4)
      if (end < 0) return fault(start)
      at = end + 3
    } else if (mark === '!' && source.startsWith('<![CDATA[', start)) {
      const end = upTo(']]>', start + 9)
      if (end < 0 || inside === undefined) return fault(start)
      inside.element.text += source.slice(start + 9, end)
      at = end + 3
    } else if (mark === '!') {
      return failed('import-doctype', { line: lineAt(source, start) })
    } else if (mark === '?') {
      const end = upTo('?>', start + 2)
      if (end < 0) return fault(start)
      at = end + 2
    } else if (mark === '/') {
      const end = upTo('>', start + 2)
      if (end < 0 || inside === undefined || source.slice(start + 2, end).trim() !== inside.tag) return fault(start)
      open.pop()
      at = end + 1
    } else {
      if (inside === undefined && root !== null) return fault(start)
      count += 1
      if (count > mostElements) return failed('import-too-many', { what: 'elements', most: mostElements })
      if (open.length >= deepest) return failed('import-too-deep', { limit: deepest, line: lineAt(source, start) })
      const tag = startTag(source, start + 1)
      if (tag === null) return fault(start)
      const children: XmlElement[] = []
      const element = { name: local(tag.name), attributes: tag.attributes, children, text: '' }
      if (inside === undefined) root = element
      else inside.children.push(element)
      if (!tag.isEmpty) open.push({ tag: tag.name, element, children })
      at = tag.end
    }
  }
  if (root === null || open.length > 0) return fault(source.length)
  return { ok: true, value: root, problems: [] }
}

type Tag = {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly isEmpty: boolean
  readonly end: number
}

const noAttributes: ReadonlyMap<string, string> = new Map()

/** The tag whose name begins at `from`; null where it breaks the rules. */
function startTag(source: string, from: number): Tag | null {
  const tagName = nameAt(source, from)
  if (tagName === '') return null
  let attributes: Map<string, string> | null = null
  let at = from + tagName.length
  for (;;) {
    const start = at
    at = afterBlanks(source, at)
    if (source[at] === '/' && source[at + 1] === '>')
      return { name: tagName, attributes: attributes ?? noAttributes, isEmpty: true, end: at + 2 }
    if (source[at] === '>')
      return { name: tagName, attributes: attributes ?? noAttributes, isEmpty: false, end: at + 1 }
    const key = at > start ? nameAt(source, at) : ''
    if (key === '') return null
    at += key.length
    at = afterBlanks(source, at)
    if (source[at] !== '=') return null
    at += 1
    at = afterBlanks(source, at)
    const quote = source[at]
    const end = quote === '"' || quote === "'" ? source.indexOf(quote, at + 1) : -1
    if (end < 0) return null
    const value = source.slice(at + 1, end)
    attributes ??= new Map()
    if (value.includes('<') || attributes.has(key)) return null
    attributes.set(key, plain(value.replace(/[\n\t]/g, ' ')))
    at = end + 1
  }
}

function isBlank(code: number): boolean {
  return code === 32 || code === 10 || code === 9 || code === 13 || (code > 127 && /\s/.test(String.fromCharCode(code)))
}

/** The first place from `at` on that is no blank. */
function afterBlanks(source: string, at: number): number {
  let end = at
  while (end < source.length && isBlank(source.charCodeAt(end))) end += 1
  return end
}

function nameAt(source: string, at: number): string {
  let end = at
  for (; end < source.length; end += 1) {
    const code = source.charCodeAt(end)
    if (ends.has(code) || isBlank(code)) break
  }
  return source.slice(at, end)
}

function local(qualified: string): string {
  return qualified.slice(qualified.indexOf(':') + 1)
}

const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" }

/** Text with its references replaced once; what is no known reference stays as it is written. */
function plain(text: string): string {
  if (!text.includes('&')) return text
  return text.replace(/&(?:#(\d{1,7})|#x([0-9a-fA-F]{1,6})|([a-z]{2,4}));/g, (whole, decimal, hex, entity) => {
    if (entity !== undefined) return Object.hasOwn(entities, entity) ? entities[entity]! : whole
    const point = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal)
    const isFit = point > 0 && point <= 0x10ffff && !(point >= 0xd800 && point <= 0xdfff)
    return isFit ? String.fromCodePoint(point) : '\uFFFD'
  })
}

function lineAt(source: string, at: number): number {
  let line = 1
  for (let i = source.indexOf('\n'); i >= 0 && i < at; i = source.indexOf('\n', i + 1)) line += 1
  return line
}

function failed(code: Problem['code'], values: Problem['values']): Outcome<never> {
  return { ok: false, problems: [{ code, severity: 'error', at: '', values }] }
}

/** The first child of a name; undefined where there is none. */
export function childOf(element: XmlElement, wanted: string): XmlElement | undefined {
  return element.children.find(child => child.name === wanted)
}

export function childrenOf(element: XmlElement, wanted: string): readonly XmlElement[] {
  return element.children.filter(child => child.name === wanted)
}

/** The text of the first child of a name; empty where there is none. */
export function textOf(element: XmlElement, wanted: string): string {
  return childOf(element, wanted)?.text ?? ''
}
