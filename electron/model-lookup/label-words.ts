/**
 * Words that rating plates print beside their numbers, in the languages that the trade's plates come in: *common
 * practice*, no one maker's list. Keys, as `normaliseNumber` makes them, without accents. A shop that meets another word adds it here.
 */

/** Stand before, after or around the model number and mean nothing by themselves. */
const labelWords: ReadonlySet<string> = new Set(
  `MODEL MODELL MODELLE MODELLO MODELO MODELE MODELNO MODELNR MODELNUMBER MODELCODE MOD MODNO MODNR MDL
  TYPE TYP TYPNR TYPENR TYPENO TIPO TIP TYYPPI TYPBEZEICHNUNG
  NO NR NUM NUMBER NUMMER NUMERO NUMER NUMRO N NDEG
  PROD PRODNO PRODNR PRODUCT PRODUCTNO PRODUKT PRODUKTNR PRODUIT PRODUCTO PRODOTTO PRODUTO TUOTE
  SERVICE SERVICENO SERVICENR SERVICENUMBER SVC
  ART ARTNO ARTNR ARTICLE ARTIKEL ARTIKELNR ARTICOLO ARTICULO
  REF REFERENCE REFERENZ REFERENCIA RIF CODE COD CODICE CODIGO KOD KODE ITEM ITEMNO VARIANT VERSION VERS
  MADE IN BY EU PLATE RATING APPLIANCE GERAT APPAREIL APPARECCHIO APARATO APPARAT
  WASHER DRYER DISHWASHER OVEN HOB COOKER FRIDGE FREEZER REFRIGERATOR MICROWAVE VACUUM CLEANER WASHING MACHINE TUMBLE
  WASCHMASCHINE TROCKNER GESCHIRRSPULER BACKOFEN KOCHFELD KUHLSCHRANK STAUBSAUGER
  LAVATRICE ASCIUGATRICE LAVASTOVIGLIE FORNO FRIGORIFERO LAVADORA SECADORA LAVAVAJILLAS HORNO FRIGORIFICO
  LAVELINGE LAVEVAISSELLE SECHELINGE FOUR REFRIGERATEUR ASPIRATEUR`.split(/\s+/),
)

/** The number after one of these is the machine's own, not its model's. */
const serialLabelWords: ReadonlySet<string> = new Set(
  `SN SNO SER SERNO SERNR SERIAL SERIALNO SERIALNR SERIALNUMBER SERIE SERIENNR SERIENNUMMER SERIENUMMER SERIENR
  NSERIE NUMEROSERIE NODESERIE MATRICOLA MATR FABNR FABRNR FABRIKATIONSNR FABRIKATIONSNUMMER`.split(/\s+/),
)

/** Whether a word's key is a label, accents or not. */
export function isLabelWord(key: string): boolean {
  return labelWords.has(withoutAccents(key))
}

/** Whether a word's key announces the machine's own number. */
export function isSerialLabelWord(key: string): boolean {
  return serialLabelWords.has(withoutAccents(key))
}

function withoutAccents(key: string): string {
  return key.normalize('NFD').replace(/\p{M}/gu, '')
}

/** What is never a model number: volts, hertz, watts, amperes, protection, weight, pressure, contents. As whole words in upper case. */
export const ratingPatterns: readonly RegExp[] = [
  /^\d{2,3}(?:[-/.]+\d{2,3})?V(?:AC|DC)?[~=∿]*$/,
  /^\d{2}(?:[-/.]+\d{2})?HZ$/,
  /^\d{2,3}(?:-\d{2,3})?V~?[-/]?\d{2}(?:[-/]\d{2})?HZ$/,
  /^\d+(?:[.,]\d+)?(?:-\d+(?:[.,]\d+)?)?(?:KW|MA|KG|KPA|MPA|PA|BAR|RPM|KWH|LB|LBS|CFM|BTU|DB|ML)$/,
  /^\d{2,4}(?:-\d{2,4})?W$/,
  /^\d{1,2}(?:[.,]\d+)?A$/,
  /^(?:IPX?\d{1,2}|IP[\dX]{2})$/,
  /^(?:AC|DC|~|∿|≈|CE|UKCA|1N|1PH|IPX)$/,
]

/** Units that may stand apart from their figure. A single letter does so only on a text that has another rating: it might be a suffix. */
export const unitWords: ReadonlySet<string> = new Set(
  'V~ VAC HZ KW KG MA BAR MPA RPM KWH VOLT VOLTS WATT WATTS AMP AMPS HERTZ'.split(' '),
)
export const singleLetterUnits: ReadonlySet<string> = new Set(['V', 'W', 'A'])
