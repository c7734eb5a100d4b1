/** The facts of a job as somebody wrote them down. What is not known is null. */
export interface JobSheet {
  readonly job: string
  readonly date: string
  readonly van: string | null
  /** As it was read off the plate, whole or not; empty while nobody has read it. */
  readonly model: string
  readonly brand: string | null
  readonly made: string | null
  readonly serial: string | null
  readonly volts: string | null
  readonly hertz: string | null
  readonly watts: string | null
  readonly customer: string | null
  readonly symptom: string
}

/** What the plate of a job says, in the shape in which the look-up and the fit check are asked. */
export function plateOf({ model, brand, made, serial, volts, hertz, watts }: JobSheet) {
  const read = Object.entries({ brand, made, serial, volts, hertz, watts }).filter(
    ([, value]) => value !== null,
  )
  return { model, ...(Object.fromEntries(read) as { [Name in PlateField]?: string }) }
}

type PlateField = 'brand' | 'made' | 'serial' | 'volts' | 'hertz' | 'watts'
