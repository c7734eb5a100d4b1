import { readScannerSettings } from './scanner-settings.ts'

export type ScanSound = 'taken' | 'undone' | 'refused'

/** One short high tone for a code that was taken, a falling pair for one taken back, two low ones for one to look at. */
export function playScanSound(sound: ScanSound): void {
  if (!readScannerSettings().hasSound) return
  context ??= new AudioContext()
  const start = context.currentTime
  for (const [at, hertz] of tones[sound].entries()) playTone(hertz, start + at * 0.11)
}

const tones: Readonly<Record<ScanSound, readonly number[]>> = {
  taken: [1320],
  undone: [880, 660],
  refused: [220, 220],
}

let context: AudioContext | undefined

function playTone(hertz: number, start: number): void {
  if (context === undefined) return
  const [tone, volume] = [context.createOscillator(), context.createGain()]
  tone.frequency.value = hertz
  // Swells and fades within a hundredth of a second: a tone cut off short clicks.
  volume.gain.setValueAtTime(0, start)
  volume.gain.linearRampToValueAtTime(0.15, start + 0.01)
  volume.gain.setValueAtTime(0.15, start + 0.07)
  volume.gain.linearRampToValueAtTime(0, start + 0.09)
  tone.connect(volume).connect(context.destination)
  tone.start(start)
  tone.stop(start + 0.1)
}
