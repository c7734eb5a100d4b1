/**
 * What is usually said before work of each kind; common practice, and never more than a reminder. Work for which a
 * licence or certificate is needed is named first and left to those who hold it.
 */
export const hazardWords: Readonly<Record<string, string>> = {
  gas: 'Leave gas work to a person licensed or certified for it where you are; local codes decide.',
  'sealed-refrigerant':
    'Leave the sealed refrigeration circuit to a person licensed or certified for it where you are; local codes decide.',
  'microwave-hv':
    'Leave microwave high-voltage parts to a person licensed or certified for it where you are; local codes decide. The capacitor holds a lethal charge after the plug is out.',
  'fixed-wiring':
    'Leave fixed wiring to a person licensed or certified for it where you are; local codes decide.',
  mains:
    'Isolate from the supply and prove it dead before opening. Restore earth continuity and test it before use.',
  'stored-charge':
    'Discharge capacitors by a proper tool and prove it: they hold charge after the plug is out.',
  water: 'Turn the water off, and test for leaks before leaving: water and electricity stand close here.',
  hot: 'Let it cool before touching.',
  sharp: 'Wear gloves: panel edges cut.',
  moving: 'Keep hands and clothing clear of moving parts, and never run it open.',
}

/** Said of a part that keeps people safe, whatever its work is. */
export const safetyDeviceWords =
  'Fit only the part listed for this model: this is a safety device. Never bridge it, and test that it acts.'
