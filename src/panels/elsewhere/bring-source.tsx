import { TableSource } from '../../parts/table-source'

type Props = {
  readonly fault: string | null
  readonly onFile: (file: File) => void
  readonly onText: (text: string) => void
}

/** What other programs and spreadsheets give. */
export function ImportSource(props: Props) {
  return (
    <TableSource
      {...props}
      accept=".gpx,.kml,.kmz,.geojson,.json,.csv,.tsv,.txt"
      pasteLabel="Or paste cells here"
      placeholder={'row\ttree\tcultivar\n1\t1\t…'}
      note="With their line of headings. Ctrl and V (on a Mac, Command and V) does the same anywhere on the map."
    >
      Points, walked tracks, lines and outlines from GPX, KML, KMZ or GeoJSON; or a table (CSV, or cells copied from a
      spreadsheet) of trees, of rows or of stations. It is read on this device, and nothing is changed before you say
      so.
    </TableSource>
  )
}
