import { DOMParser, type Element } from '@xmldom/xmldom'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mostElements, readXml, type XmlElement } from '#geo/file/xml'
import { xmlText } from '#geo/file/xml-text'

const seed = 20261125

function root(text: string): XmlElement {
  const outcome = readXml(text)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const problem = (text: string) => readXml(text).problems[0]

describe('an XML text', () => {
  it('is read with its attributes, texts, CDATA and references, without prefixes, comments and instructions', () => {
    const text = `\uFEFF<?xml version="1.0"?><!-- <a> --><k:a b='1 "2"' c = "&lt;&#228;&#xe4;&amp;lt;"
    ><b/>x<![CDATA[<y>&amp;]]>z<?go <b>?></k:a> <!-- end -->`
    const { name, attributes, children, text: words } = root(text)
    expect(name).toBe('a')
    expect([...attributes]).toEqual([
      ['b', '1 "2"'],
      ['c', '<ää&lt;'],
    ])
    expect(children.map(child => child.name)).toEqual(['b'])
    expect(words).toBe('x<y>&amp;z')
  })

  it.each([
    ['', 1],
    ['words', 1],
    ['<a>', 1],
    ['<a>\n</b>', 2],
    ['<a/>\n<b/>', 2],
    ['<a/>\nwords', 2],
    ['</a>', 1],
    ['<a b></a>', 1],
    ['<a b=c/>', 1],
    ['<a b="1" b="2"/>', 1],
    ['<a b="<"/>', 1],
    ['<a\n\n<b/>', 1],
    ['<a><!-- </a>', 1],
    ['<a><![CDATA[ </a>', 1],
    ['<a b="', 1],
    ['< a/>', 1],
  ])('%j breaks the rules at line %i', (text, line) => {
    expect(problem(text)).toMatchObject({ code: 'import-not-xml', severity: 'error', values: { line } })
  })

  it('with a document type is refused before any entity could grow', () => {
    const laughs = Array.from({ length: 10 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`)
    expect(
      problem(`<?xml version="1.0"?>\n<!DOCTYPE gpx [<!ENTITY l0 "ha">${laughs.join('')}]><gpx>&l9;</gpx>`),
    ).toMatchObject({
      code: 'import-doctype',
      values: { line: 2 },
    })
    expect(problem('<!DOCTYPE gpx SYSTEM "file:///etc/hostname"><gpx/>')?.code).toBe('import-doctype')
    expect(problem('<gpx><!ENTITY x "y"></gpx>')?.code).toBe('import-doctype')
  })

  it('that is too deep is refused; an unknown reference stays as it is written', () => {
    expect(readXml('<a>'.repeat(64) + '</a>'.repeat(64)).ok).toBe(true)
    expect(problem('<a>'.repeat(65) + '</a>'.repeat(65))?.code).toBe('import-too-deep')
    expect(problem('<a>'.repeat(1_000_000))?.code).toBe('import-too-deep')
    expect(root('<a>fish & chips &nbsp; &x; &#0; &#xD800;</a>').text).toBe('fish & chips &nbsp; &x; \uFFFD \uFFFD')
  })

  it('with more elements than any map needs is refused', () => {
    expect(problem(`<a>${'<b/>'.repeat(mostElements)}</a>`)).toMatchObject({
      code: 'import-too-many',
      values: { most: mostElements },
    })
  })

  it('is what another parser makes of it', () => {
    const word = fc.stringMatching(/^[a-z]{1,6}$/)
    const { tree } = fc.letrec<{ tree: string }>(tie => ({
      tree: fc
        .tuple(
          word,
          fc.dictionary(word, fc.string({ unit: 'grapheme-ascii', maxLength: 6 }), {
            maxKeys: 3,
            noNullPrototype: true,
          }),
          fc.array(fc.oneof({ maxDepth: 3 }, fc.string({ unit: 'grapheme', maxLength: 6 }).map(xmlText), tie('tree')), {
            maxLength: 3,
          }),
        )
        .map(([name, attributes, content]) => {
          const members = Object.entries(attributes).map(([key, value]) => ` ${key}="${xmlText(value)}"`)
          return `<${name}${members.join('')}>${content.join('')}</${name}>`
        }),
    }))
    fc.assert(
      fc.property(tree, text => {
        const document = new DOMParser({ onError: () => {} }).parseFromString(text, 'text/xml')
        expect(plain(root(text))).toEqual(fromDom(document.documentElement!))
      }),
      { seed, numRuns: 300 },
    )
  })
})

type Plain = { name: string; attributes: Record<string, string>; text: string; children: Plain[] }

function plain({ name, attributes, text, children }: XmlElement): Plain {
  return { name, attributes: Object.fromEntries(attributes), text, children: children.map(plain) }
}

function fromDom(element: Element): Plain {
  const nodes = [...element.childNodes]
  return {
    name: element.localName ?? '',
    attributes: Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value])),
    text: nodes
      .filter(({ nodeType }) => nodeType === 3 || nodeType === 4)
      .map(({ nodeValue }) => nodeValue)
      .join(''),
    children: nodes.filter((node): node is Element => node.nodeType === 1).map(fromDom),
  }
}
