import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decodeText } from '#geo/file/encoding'
import { latin1, utf8, utf16 } from '../../support/bytes'

const seed = 20261125
const codes = (bytes: Uint8Array) => decodeText(bytes).problems.map(({ code }) => code)

describe('text whose encoding nobody told', () => {
  const text = 'row;cultivar\r\n1;Schöner von Boskoop € 日本 😀\r\n'

  it.each([
    ['utf-8', utf8(text), []],
    ['utf-8', utf8(text, true), []],
    ['utf-16le', utf16(text, 'le', true), []],
    ['utf-16be', utf16(text, 'be', true), []],
    ['utf-16le', utf16(text, 'le', false), ['text-encoding']],
    ['utf-16be', utf16(text, 'be', false), ['text-encoding']],
  ])('%s is told and read', (encoding, bytes, problems) => {
    expect(decodeText(bytes)).toMatchObject({ text, encoding })
    expect(codes(bytes)).toEqual(problems)
  })

  it('Windows-1252 is what is neither, the euro sign in it', () => {
    const bytes = latin1('Schöner Apfel, Krämer \x80 5')
    expect(decodeText(bytes)).toMatchObject({ text: 'Schöner Apfel, Krämer € 5', encoding: 'windows-1252' })
    expect(codes(bytes)).toEqual(['text-encoding'])
  })

  it('the letters in which Windows-1252 differs from ISO 8859-1 are those of the WHATWG Encoding Standard', () => {
    const standard =
      '20ac 81 201a 192 201e 2026 2020 2021 2c6 2030 160 2039 152 8d 17d 8f 90 2018 2019 201c 201d 2022 2013 2014 2dc 2122 161 203a 153 9d 17e 178'
    const bytes = Uint8Array.from({ length: 32 }, (_, i) => 0x80 + i)
    expect([...decodeText(bytes).text].map(letter => letter.codePointAt(0)!.toString(16)).join(' ')).toBe(standard)
  })

  it('UTF-8 that is damaged in few places stays UTF-8, and they are counted', () => {
    const bytes = utf8('äöüäöüäöü x')
    bytes[0] = 0xff
    expect(decodeText(bytes)).toMatchObject({
      text: '\uFFFD\uFFFDöüäöüäöü x',
      encoding: 'utf-8',
      problems: [{ code: 'text-broken', values: { count: 2 } }],
    })
  })

  it('UTF-16 that breaks off within a sign is told', () => {
    const bytes = utf16('ab\ud83d', 'le', true)
    expect(decodeText(bytes)).toMatchObject({
      text: 'ab\uFFFD',
      problems: [{ code: 'text-broken', values: { count: 1 } }],
    })
    expect(codes(bytes.subarray(0, -1))).toEqual(['text-broken'])
  })

  it('what is no text is refused', () => {
    expect(codes(Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 7, 7]))).toContain('text-binary')
    expect(decodeText(new Uint8Array()).text).toBe('')
  })

  it('UTF-8 is read as the platform reads it, whatever it holds', () => {
    const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), words => {
        const bytes = utf8(words)
        if (words.includes('\u0000') || words.startsWith('\uFEFF')) return
        expect(decodeText(bytes).text).toBe(decoder.decode(bytes))
      }),
      { seed, numRuns: 500 },
    )
    // Neither shortened forms of a letter (overlong) nor halves of pairs nor too large ones are letters.
    for (const wrong of [
      [0xc0, 0xaf],
      [0xe0, 0x80, 0xaf],
      [0xed, 0xa0, 0x80],
      [0xf4, 0x90, 0x80, 0x80],
    ]) {
      expect(decodeText(Uint8Array.from(wrong)).encoding).toBe('windows-1252')
    }
  })
})
