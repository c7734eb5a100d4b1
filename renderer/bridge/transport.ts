import type { Reply } from '../../shared-schemas/request.ts'

/** How a request reaches the engine. Answers with a reply in every case, a closed door included; it never rejects. */
export type Transport = (name: string, input: unknown) => Promise<Reply>
