import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { ask } from '../bridge/client.ts'

/** What the shelves are asked about: one part or one location. */
export type Asked =
  | { readonly about: 'part'; readonly partNumber: string; readonly description: string }
  | { readonly about: 'location'; readonly location: string; readonly name: string }

/** What was typed, what it was found to be, and who signs. */
export function useShelves() {
  const [typed, setTyped] = useState('')
  const [asked, setAsked] = useState<Asked | null>(null)
  const [initials, setInitials] = useState('')
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const show = (found: Asked) => {
    setAsked(found)
    setTyped(found.about === 'part' ? found.partNumber : found.location)
  }
  return {
    ...{ typed, setTyped, asked, show, initials, setInitials },
    signed: initials.trim() === '' ? {} : { initials },
    locations: summary.data?.locations ?? [],
  }
}

export type Shelves = ReturnType<typeof useShelves>
