import { coldAndFloorKinds } from './cold-and-floor-kinds.ts'
import { cookingKinds } from './cooking-kinds.ts'
import type { FamilyKind } from './family-kind.ts'
import { sharedKinds } from './shared-kinds.ts'
import { wetKinds } from './wet-kinds.ts'

export const familyKinds: readonly FamilyKind[] = [
  ...sharedKinds,
  ...wetKinds,
  ...cookingKinds,
  ...coldAndFloorKinds,
]
