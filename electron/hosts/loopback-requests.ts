import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { pipeline } from 'node:stream/promises'
import type { Problem } from '../../shared-schemas/problem.ts'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'
import type { Reply } from '../../shared-schemas/request.ts'
import { pageHeaders } from './content-security-policy.ts'
import type { Engine } from './engine-client.ts'
import { instancePath } from './instance-file.ts'
import { readJsonBody } from './json-body.ts'
import { statusOf } from './reply-status.ts'
import type { SessionDoor, Turned } from './session-door.ts'
import { findStaticFile } from './static-files.ts'

export interface Loopback {
  readonly door: SessionDoor
  readonly engine: Engine
  readonly pageFolder: string
  /** By which a second host recognises this one. */
  readonly secret: string
}

/** Answers whatever reaches the port: the one-time address, questions, the page's files, or why not. */
export function answerRequest(loopback: Loopback) {
  return (request: IncomingMessage, response: ServerResponse): void => {
    for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value)
    answer(loopback, request, response).catch(() => {
      // The line broke while the answer was on its way; there is nobody left to tell.
      response.destroy()
    })
  }
}

const askPath = '/ask/'

async function answer(loopback: Loopback, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const { door } = loopback
  const { pathname, searchParams } = new URL(request.url ?? '/', 'http://127.0.0.1')
  const knock = {
    host: request.headers.host,
    origin: request.headers.origin,
    cookie: request.headers.cookie,
  }
  const isAsking = pathname.startsWith(askPath)

  const foreign = door.turnAwayForeign(knock)
  if (foreign !== undefined) return turnAway(response, foreign, isAsking)
  if (pathname === instancePath + loopback.secret) return sendEmpty(response, 204)

  const token = searchParams.get('token')
  const cookie = pathname === '/' && token !== null ? door.exchange(token) : undefined
  if (cookie !== undefined) return sendEmpty(response, 303, { location: '/', 'set-cookie': cookie })

  const turned = door.turnAway(knock)
  if (turned !== undefined) return turnAway(response, turned, isAsking)
  // A used address leads a browser that is in already to the clean one.
  if (token !== null) return sendEmpty(response, 303, { location: '/' })
  return isAsking
    ? answerQuestion(loopback.engine, pathname.slice(askPath.length), request, response)
    : sendFile(loopback.pageFolder, pathname, request, response)
}

async function answerQuestion(
  engine: Engine,
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  if (request.method !== 'POST') return sendEmpty(response, 405, { allow: 'POST' })
  const body = await readJsonBody(request)
  if (!body.ok) {
    // What is left of a body that was not read would be taken for the next request.
    response.setHeader('connection', 'close')
    const problem: Problem = { code: 'malformed', request: name, where: '', why: body.why }
    return sendReply(response, body.status, { ok: false, problem })
  }
  const reply = await engine.ask(name, body.value)
  return sendReply(response, statusOf(reply), reply)
}

async function sendFile(
  folder: string,
  pathname: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return sendEmpty(response, 405, { allow: 'GET, HEAD' })
  const found = findStaticFile(folder, pathname)
  const size = found === undefined ? undefined : await sizeOf(found.file)
  if (found === undefined || size === undefined)
    return sendText(response, 404, 'There is nothing at this address.')
  response.writeHead(200, {
    'content-type': found.contentType,
    'content-length': size,
    'cache-control': found.cacheControl,
  })
  if (request.method === 'HEAD') response.end()
  else await pipeline(createReadStream(found.file), response)
}

async function sizeOf(file: string): Promise<number | undefined> {
  try {
    const found = await stat(file)
    return found.isFile() ? found.size : undefined
  } catch {
    return undefined
  }
}

const turnedStatus: Readonly<Record<Turned, number>> = { misdirected: 421, foreign: 403, stranger: 401 }

function turnAway(response: ServerResponse, turned: Turned, isAsking: boolean): void {
  const problem: Problem = { code: 'page-not-admitted' }
  if (isAsking) sendReply(response, turnedStatus[turned], { ok: false, problem })
  else sendText(response, turnedStatus[turned], wordProblem(problem))
}

function sendReply(response: ServerResponse, status: number, reply: Reply): void {
  response.writeHead(status, {
    'content-type': 'application/json; charset=utf-8',
    'cache-control': 'no-store',
  })
  response.end(JSON.stringify(reply))
}

function sendText(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' })
  response.end(`${sentence}\n`)
}

function sendEmpty(
  response: ServerResponse,
  status: number,
  headers: Readonly<Record<string, string>> = {},
): void {
  response.writeHead(status, { 'cache-control': 'no-store', ...headers })
  response.end()
}
