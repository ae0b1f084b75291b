import { describe, expect, it } from 'vitest'
import { jsonFault } from '#geo/file/json-fault'

describe('where a text stops being JSON', () => {
  it.each<[string, number, number]>([
    ['', 1, 1],
    ['nul', 1, 1],
    ['{"a":1,}', 1, 8],
    ['{"a":1\n "b":2}', 2, 2],
    ['{"a" 1}', 1, 6],
    ['{a:1}', 1, 2],
    ['[1,2', 1, 5],
    ['[1,,2]', 1, 4],
    ['[1,2}', 1, 5],
    ['[1]]', 1, 4],
    ['{"a":1} x', 1, 9],
    ['[01]', 1, 3],
    ['[NaN]', 1, 2],
    ['["a\\x"]', 1, 2],
    ['{\r\n  "a": "open\n}', 2, 8],
    ["{'a':1}", 1, 2],
    ['[1 // one\n]', 1, 4],
  ])('%j: line %i, column %i', (text, line, column) => {
    expect(() => JSON.parse(text)).toThrow()
    expect(jsonFault(text)).toEqual({ line, column })
  })

  it('is the end for any beginning of a sound text', () => {
    const text = '{"a":[1,-2.5e3,true,null,"x\\u00e9\\n"],"b":{}}'
    for (let end = 0; end < text.length; end += 1) {
      const { line, column } = jsonFault(text.slice(0, end))
      expect(line).toBe(1)
      // A word or text that is cut off is told of at its beginning, a number at what does not belong to it.
      expect(text.slice(column - 1, end)).toMatch(/^(|-|\.|e|t\w*|n\w*|".*)$/)
    }
  })
})
