import { expect, test } from 'vitest'
import { csvText, withoutGuard } from '#geo/file/csv-text'

test('rows end in CRLF; commas, quotes and line ends are quoted', () => {
  expect(
    csvText([
      ['a', 1.5],
      ['b, c', 'say "d"'],
      ['e\nf', ''],
    ]),
  ).toBe('a,1.5\r\n"b, c","say ""d"""\r\n"e\nf",\r\n')
})

test('what a spreadsheet would take for a formula is text', () => {
  expect(csvText([['=1+1', '+2', '-3', '@x', '\ty', -4]])).toBe("'=1+1,'+2,'-3,'@x,'\ty,-4\r\n")
})

test.each(['=1', "'=1", "''@x", "'plain", "don't", '-', ''])(
  'the guard of %j comes off again, and nothing else',
  text => {
    const written = csvText([[text]]).slice(0, -2)
    expect(withoutGuard(written)).toBe(text)
  },
)
