/** Who says so, in the words a clerk would use. */
export const tarrowList = 'Tarrow supplier list'
export const brackwaterList = 'Brackwater supplier list'
export const veldkadeList = 'Veldkade supplier list'
export const shopRecord = 'Shop record'
export const makersList = (brand: string) => `${brand} parts list`
