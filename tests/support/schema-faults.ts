import { readFileSync } from 'node:fs'
import { validateXML } from 'xmllint-wasm'

function schemaFile(fileName: string) {
  return { fileName, contents: readFileSync(new URL(`../outside/schemas/${fileName}`, import.meta.url), 'utf8') }
}

const schemas = {
  gpx: { schema: [schemaFile('gpx.xsd')], preload: [] },
  kml: { schema: [schemaFile('ogckml22.xsd')], preload: [schemaFile('atom-author-link.xsd'), schemaFile('xAL.xsd')] },
}

/**
 * What the published schema of GPX 1.1 or of KML 2.2 has against each text, as libxml2 words it; an empty list for one
 * that is valid. All of them in one call, since most of its time goes into starting.
 */
export async function schemaFaults(
  format: keyof typeof schemas,
  texts: readonly string[],
): Promise<readonly (readonly string[])[]> {
  const xml = texts.map((contents, i) => ({ fileName: `${i}.xml`, contents }))
  const { errors, rawOutput } = await validateXML({ ...schemas[format], xml, maxMemoryPages: 8192 })
  return xml.map(({ fileName }) => {
    const told = errors.filter(({ rawMessage }) => rawMessage.startsWith(`${fileName}:`))
    // What was not said to be valid is not, even where no fault was told.
    if (told.length === 0 && !rawOutput.includes(`\n${fileName} validates\n`) && !rawOutput.startsWith(`${fileName} v`))
      return [`${fileName} was not checked`]
    return told.map(({ message }) => message)
  })
}
