import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { XmlDocument, XsdValidator } from 'libxml2-wasm'
import { xmlRegisterFsInputProviders } from 'libxml2-wasm/lib/nodejs.mjs'

/**
 * The schema of an Order as OASIS publishes it (Universal Business Language 2.1, OASIS Standard of 4 November 2013, also
 * ISO/IEC 19845:2015): `xsdrt/` holds its runtime schemas unmodified, `NOTICES-UBL-2.1.txt` goes with every copy.
 */
const schemaFile = path.join(import.meta.dirname, 'xsdrt/maindoc/UBL-Order-2.1.xsd')

let schema: XsdValidator | undefined

/** What libxml2 finds in an Order against the schema; nothing where it is valid. */
export function findSchemaFaults(xml: string): string[] {
  schema ??= readSchema()
  const order = XmlDocument.fromString(xml)
  try {
    schema.validate(order)
    return []
  } catch (thrown) {
    return [thrown instanceof Error ? thrown.message : String(thrown)]
  } finally {
    order.dispose()
  }
}

function readSchema(): XsdValidator {
  if (!existsSync(schemaFile)) throw new Error(`the schemas of UBL 2.1 are not there: ${schemaFile}`)
  xmlRegisterFsInputProviders()
  const document = XmlDocument.fromBuffer(readFileSync(schemaFile), { url: schemaFile })
  return XsdValidator.fromDoc(document)
}
