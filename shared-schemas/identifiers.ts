import { z } from 'zod'

/** Words that identify a thing in the shop. Branded, so that a part number cannot stand where a location belongs. */
const word = (longest: number) => z.string().trim().min(1).max(longest)

export const brandName = word(60).brand<'BrandName'>()
export const modelNumber = word(60).brand<'ModelNumber'>()
export const partNumber = word(60).brand<'PartNumber'>()
export const familyCode = word(60).brand<'FamilyCode'>()
export const locationCode = word(40).brand<'LocationCode'>()

/** Row ids of the database: whole numbers that mean nothing outside one file. */
export const modelId = z.int().positive().brand<'ModelId'>()
export const partId = z.int().positive().brand<'PartId'>()
export const familyId = z.int().positive().brand<'FamilyId'>()

export type BrandName = z.infer<typeof brandName>
export type ModelNumber = z.infer<typeof modelNumber>
export type PartNumber = z.infer<typeof partNumber>
export type FamilyCode = z.infer<typeof familyCode>
export type LocationCode = z.infer<typeof locationCode>
export type ModelId = z.infer<typeof modelId>
export type PartId = z.infer<typeof partId>
export type FamilyId = z.infer<typeof familyId>
