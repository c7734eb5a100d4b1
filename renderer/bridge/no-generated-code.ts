import { z } from 'zod'

/**
 * Imported before any schema is made. Zod would try whether it may write code while it runs; the page's policy forbids
 * that, and the browser reports even the try.
 */
z.config({ jitless: true })
