import { expect, test } from 'vitest'
import { connectEngine, type EngineLink } from '../../../electron/hosts/engine-client.ts'
import type { EngineAnswer, EngineQuestion } from '../../../electron/hosts/engine-protocol.ts'

/** An engine that does only what a test tells it to. */
function standInEngine() {
  const sent: unknown[] = []
  const deaths: string[] = []
  let answer: (given: EngineAnswer) => void = () => {}
  let end: (why: string) => void = () => {}
  const link: EngineLink = {
    send: message => sent.push(message),
    onAnswer: take => {
      answer = take
    },
    onEnd: take => {
      end = take
    },
  }
  const engine = connectEngine(link, {
    newReference: () => 'ref-1',
    onDeath: (why, reference) => deaths.push(`${why} ${reference}`),
  })
  const idOf = (at: number) => (sent[at] as EngineQuestion).id
  return {
    engine,
    sent,
    deaths,
    idOf,
    answer: (given: EngineAnswer) => answer(given),
    end: (why: string) => end(why),
  }
}

test('each question gets its own reply, whatever order they come in', async () => {
  const { engine, answer, idOf } = standInEngine()
  const first = engine.ask('a.b', { one: 1 })
  const second = engine.ask('a.c', {})
  answer({ id: idOf(1), reply: { ok: true, value: 'second' } })
  answer({ id: idOf(0), reply: { ok: true, value: 'first' } })
  expect(await first).toEqual({ ok: true, value: 'first' })
  expect(await second).toEqual({ ok: true, value: 'second' })
})

test('when the engine dies, whoever waits gets a reply, and so does whoever asks later', async () => {
  const { engine, end, deaths, sent } = standInEngine()
  const waiting = engine.ask('a.b', {})
  end('its thread ended with code 1')
  const dead = { ok: false, problem: { code: 'unexpected', reference: 'ref-1' } }
  expect(await waiting).toEqual(dead)
  expect(await engine.ask('a.b', {})).toEqual(dead)
  expect(sent).toHaveLength(1)
  expect(deaths).toEqual(['its thread ended with code 1 ref-1'])
})

test('an engine that was bidden to close has not died', async () => {
  const { engine, end, deaths, sent } = standInEngine()
  const closed = engine.close()
  expect(sent).toEqual([{ close: true }])
  end('its thread ended with code 0')
  await closed
  expect(deaths).toEqual([])
})
