import { workerData } from 'node:worker_threads'
import { keepModelIndex } from '../application.ts'

/** A thread of its own: laying out a large catalogue takes seconds, in which the engine goes on answering. */
keepModelIndex(workerData as string)
