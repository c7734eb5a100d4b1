import type { CatalogueTexts } from './catalogue-folder.ts'
import { smallCatalogue } from './small-catalogue.ts'

/**
 * The small catalogue with a guide in which every kind of ending is reached in a few answers: a washer that does not
 * drain (a pump, a filter, or as it should be) and one that trips the supply (fixed wiring). Likelihoods are invented.
 */
export const faultCatalogue: CatalogueTexts = {
  ...smallCatalogue,
  'faults.csv': `appliance_type,symptom,also_said,cause,ends_in,licensed_for,families,weight,advice,source
washer,does not drain,water stays in|keeps humming,pump worn,part,,drain-pump,30,Turn the wheel by hand: it should catch.,common practice
washer,does not drain,,filter blocked,no-part,,,50,Clean the filter and show how.,common practice
washer,does not drain,,waits with water on purpose,normal,,,20,Turn the spin on again.,common practice
washer,trips the supply,fuse goes|no power after it starts,supply wiring at fault,licensed,fixed-wiring,,50,,common practice
washer,trips the supply,,door lock shorted,part,,door-lock,50,Measure from each terminal to earth.,common practice
`,
  'fault_checks.csv': `appliance_type,check,symptoms,how,measure,expected,tolerance,outcomes,minutes,tools,hazards,competence,source
washer,coil of the pump,does not drain,Measure across the coil.,resistance,160..220 Ω,,within=0.96|low=0.01|high=0.01|open=0.02,8,meter,mains,repairer,common practice
washer,filter,does not drain,Open the filter and look.,,,,clear=0.9|blocked=0.1,6,tray|towel,water|sharp,anyone,common practice
washer,rinse hold,does not drain,Ask which programme was chosen.,,,,with hold=0.05|without hold=0.95,1,,,anyone,common practice
washer,other appliances,trips the supply,Ask whether another appliance on the same socket trips it too.,,,,yes=0.05|no=0.95,2,,,anyone,common practice
`,
  'fault_outcomes.csv': `appliance_type,check,cause,outcomes
washer,coil of the pump,pump worn,within=0.03|low=0.02|high=0.25|open=0.7
washer,filter,filter blocked,clear=0.04|blocked=0.96
washer,rinse hold,waits with water on purpose,with hold=0.97|without hold=0.03
washer,other appliances,supply wiring at fault,yes=0.95|no=0.05
`,
}
