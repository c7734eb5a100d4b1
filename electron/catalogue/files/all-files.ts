import type { CatalogueFile } from '../loading/catalogue-file.ts'
import { attributesFile } from './attributes-file.ts'
import { brandsFile } from './brands-file.ts'
import { crossReferencesFile } from './cross-references-file.ts'
import { dateCodesFile } from './date-codes-file.ts'
import { familiesFile } from './families-file.ts'
import { faultChecksFile } from './fault-checks-file.ts'
import { faultOutcomesFile } from './fault-outcomes-file.ts'
import { faultsFile } from './faults-file.ts'
import { fitmentsFile } from './fitments-file.ts'
import { fittingNotesFile } from './fitting-notes-file.ts'
import { jobsFile } from './jobs-file.ts'
import { kitsFile } from './kits-file.ts'
import { locationsFile } from './locations-file.ts'
import { modelAttributesFile } from './model-attributes-file.ts'
import { modelsFile } from './models-file.ts'
import { offersFile } from './offers-file.ts'
import { openingStockFile } from './opening-stock-file.ts'
import { partsFile } from './parts-file.ts'
import { replacedTogetherFile } from './replaced-together-file.ts'
import { salesNamesFile } from './sales-names-file.ts'
import { supersessionsFile } from './supersessions-file.ts'
import { suppliersFile } from './suppliers-file.ts'
import { usageFile } from './usage-file.ts'
import { vanListsFile } from './van-lists-file.ts'

/** Every catalogue file, each after those that it refers to. */
export const catalogueFiles: readonly CatalogueFile[] = [
  brandsFile,
  modelsFile,
  salesNamesFile,
  familiesFile,
  attributesFile,
  partsFile,
  crossReferencesFile,
  modelAttributesFile,
  fitmentsFile,
  supersessionsFile,
  kitsFile,
  replacedTogetherFile,
  dateCodesFile,
  suppliersFile,
  offersFile,
  locationsFile,
  openingStockFile,
  usageFile,
  vanListsFile,
  jobsFile,
  faultsFile,
  faultChecksFile,
  faultOutcomesFile,
  fittingNotesFile,
]
