import { useSettled } from '../components/use-settled.ts'

/** What a screen reader is told, once the typing rests: every keystroke's answer would drown the last. */
export function useAnnouncement(sentence: string): string {
  return useSettled(sentence, restMilliseconds)
}

const restMilliseconds = 500
