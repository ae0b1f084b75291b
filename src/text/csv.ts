/**
 * Rows as CSV (RFC 4180) that spreadsheets open as it is meant. Text that a spreadsheet would take for a formula gets an
 * apostrophe before it: names come from files that others may have made.
 */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
  return `${rows.map(row => row.map(cell).join(',')).join('\r\n')}\r\n`
}

function cell(value: string | number): string {
  if (typeof value === 'number') return String(value)
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
