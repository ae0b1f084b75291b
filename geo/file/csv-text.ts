/** What a spreadsheet takes for a formula (=, +, -, @), or cuts off before it looks for one (tab, carriage return). */
const formula = /^'*[=+\-@\t\r]/

/**
 * Rows as CSV (RFC 4180) that spreadsheets open as it is meant. Text that a spreadsheet would take for a formula gets an
 * apostrophe before it: names come from files that others may have made. Numbers stay numbers.
 */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
  return `${rows.map(row => row.map(cell).join(',')).join('\r\n')}\r\n`
}

function cell(value: string | number): string {
  if (typeof value === 'number') return numberText(value)
  const safe = formula.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/** Without an exponent where the number is small: many readers of tables take those for text. */
function numberText(value: number): string {
  const text = String(value)
  return text.includes('e-') ? value.toFixed(15).replace(/\.?0+$/, '') : text
}

/** A cell's text without the apostrophe that kept it from being a formula. */
export function withoutGuard(text: string): string {
  return text.startsWith("'") && formula.test(text) ? text.slice(1) : text
}
